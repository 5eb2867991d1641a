#pragma once

#include "scenes/present/bench_run.hpp"
#include "scenes/present/pace.hpp"

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace scenes {

/// Something a person can do to the machine with one button.
struct Action {
    std::string id;
    std::string title;
    std::string release; ///< the doing that lets go again; empty when nothing is held
    double to = 0.0;     ///< the amount, where there is one
};

/// The buttons a rig needs. A doing "release_x" belongs to the one that takes hold of x, such as
/// "press_x" or "squeeze_x", and gets none of its own.
std::vector<Action> actions_of(const sim::Rig& rig);

/// The bench behind its window: a machine that runs at a chosen pace, and what was done to it.
///
/// Everything a person does goes through `Simulator::post`. What was done can be undone: the run is
/// replayed without it. Equations that cannot be carried on freeze the bench; undoing, opening or
/// starting anew thaws it.
class BenchModel {
public:
    /// Whether work may go on; asked between short pieces of it.
    using Leave = std::function<bool()>;

    explicit BenchModel(std::shared_ptr<const sim::Rig> rig, sim::Weather weather = {},
                        std::optional<sim::Tolerance> tolerance = {});

    // ---- time

    Pace pace;

    /// Goes on by real time at the chosen pace, or with a replay, as long as it has leave.
    void advance(double real_seconds, const Leave& has_leave);
    /// Goes on by a tick, or by what a frame takes at the chosen speed, and pauses.
    void step_tick();
    void step_frame();

    // ---- what a person does

    /// Whether commands are taken: not while frozen or replaying.
    [[nodiscard]] bool is_ready() const { return !is_frozen() && !is_replaying(); }

    /// A command begins a gesture or continues one: a dragged slider posts many. A gesture is
    /// undone as a whole.
    enum class Gesture { begins, continues };
    /// throws:  RequestError when it cannot be done
    void post(const sim::Command& command, Gesture gesture = Gesture::begins);
    /// Does what a button says, and lets go of what it holds.
    void press(const Action& action);
    void release(const Action& action);

    [[nodiscard]] bool can_undo() const;
    /// Replays the run without the last gesture, or goes back to the run before this one.
    void undo();

    // ---- runs

    /// Begins a run and goes on to a tick, with the replay that `advance` works at.
    void begin(const sim::RunSheet& sheet, sim::Tick to);
    /// The rig's own start, up to the end of its default run.
    void begin_running();
    /// The machine as it stands on the shelf.
    void begin_cold();
    /// Puts another machine on the bench, running; the run so far can be gone back to.
    void choose(std::shared_ptr<const sim::Rig> rig);
    /// A run sheet from a file, up to its end, on the machine that it is for.
    ///
    /// throws:  AssetError when the file is wrong
    void open(const std::string& path);
    /// throws:  RequestError when it cannot be written
    void save(const std::string& path) const;
    [[nodiscard]] sim::RunSheet sheet() const;

    [[nodiscard]] bool is_replaying() const { return replay_.has_value(); }
    [[nodiscard]] double replay_share() const;
    /// Leaves everything as it was before the replay.
    void cancel_replay() { replay_.reset(); }
    /// Works until the replay is done.
    void finish_replay();

    [[nodiscard]] bool is_frozen() const { return !trouble_.empty(); }
    /// Why the bench is frozen, in one line.
    [[nodiscard]] const std::string& trouble() const { return trouble_; }

    // ---- what there is to see

    [[nodiscard]] const sim::Rig& rig() const { return *rig_; }
    [[nodiscard]] BenchRun& run() { return *run_; }
    [[nodiscard]] const BenchRun& run() const { return *run_; }
    /// Counts the replacements of `run()`.
    [[nodiscard]] int run_number() const { return run_number_; }
    [[nodiscard]] double seconds() const { return run_->machine().seconds(); }

private:
    struct OwnCommand {
        sim::TimedCommand timed;
        Gesture gesture;
    };
    /// What makes a run: a sheet it began with, and what a person did since.
    struct Plan {
        std::shared_ptr<const sim::Rig> rig;
        std::vector<sim::TimedCommand> sheet;
        std::vector<OwnCommand> own;
        sim::Tick to = 0;
    };
    struct Replay {
        std::unique_ptr<BenchRun> run;
        Plan plan;
        std::vector<Plan> past;
    };

    void begin_on(std::shared_ptr<const sim::Rig> rig, const sim::RunSheet& sheet, sim::Tick to);
    void post_at(const sim::Command& command, sim::Tick at, Gesture gesture);
    void replay(Plan plan, std::vector<Plan> past);
    void work_at_replay(const Leave& has_leave);
    sim::Tick go_on(sim::Tick ticks, const Leave& has_leave);
    void pause_after(sim::Tick ticks);

    std::shared_ptr<const sim::Rig> rig_; ///< of the run that is shown
    sim::Weather weather_;
    std::optional<sim::Tolerance> tolerance_;
    std::unique_ptr<BenchRun> run_;
    int run_number_ = 0;
    Plan plan_;
    std::vector<Plan> past_;
    std::optional<Replay> replay_;
    std::string trouble_;
    sim::Tick pressed_at_ = 0;
};

} // namespace scenes
