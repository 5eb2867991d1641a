#pragma once

#include "scenes/present/bench_run.hpp"

#include <string>
#include <vector>

namespace scenes {

/// A command begins a gesture or continues one: a dragged slider posts many. A gesture is undone
/// as a whole. What the bench does aside, to go faster, is no gesture and stays.
enum class Gesture { begins, continues, aside };

/// A command that a person gave, or the bench aside.
struct OwnCommand {
    sim::TimedCommand timed;
    Gesture gesture = Gesture::begins;
    int serial = 0; ///< grows with everything a person does
};

/// What makes a run: a sheet it began with, and what a person did since.
struct Plan {
    std::shared_ptr<const sim::Rig> rig;
    sim::Weather weather;
    std::vector<sim::TimedCommand> sheet;
    std::vector<OwnCommand> own;
    sim::Tick to = 0;

    /// All commands in the order in which they are done.
    [[nodiscard]] std::vector<sim::TimedCommand> commands() const;
    /// Drops what is done after a tick.
    void truncate(sim::Tick at);
    /// The last command of a gesture; null when there is none.
    [[nodiscard]] const OwnCommand* last_of_person() const;
    /// Takes the last gesture out.
    ///
    /// valid:   there is one
    std::vector<OwnCommand> take_last_gesture();
};

/// One of the courses that a run has taken: going back and changing something begins another.
struct Branch {
    int id = 1;
    std::string name; ///< as a person named it; empty for none
    int parent = 0;   ///< id of the branch it left; 0 for the first
    sim::Tick left_at = 0;
    std::optional<sim::Command> change; ///< the first thing that was done differently
    Plan plan;
    std::unique_ptr<BenchRun> run; ///< null when it was let go of to save memory
    int used = 0;                  ///< serial of when it was shown last
};

/// A machine on the bench and all the courses its run has taken.
struct Session {
    std::vector<Branch> branches;
    std::size_t active = 0;

    [[nodiscard]] Branch& now() { return branches[active]; }
    [[nodiscard]] const Branch& now() const { return branches[active]; }
    /// Lets go of the runs of all but the `most` branches that were shown last, the active one
    /// always among the kept; what was let go of is replayed when it is wanted.
    void keep_runs(std::size_t most);
};

} // namespace scenes
