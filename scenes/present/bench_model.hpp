#pragma once

#include "scenes/present/actions.hpp"
#include "scenes/present/branches.hpp"
#include "scenes/present/pace.hpp"

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace scenes {

/// The bench behind its window: a machine that runs at a chosen pace, and what was done to it.
///
/// Everything a person does goes through `Simulator::post`. What was done can be undone and done
/// again. Any moment since the beginning can be shown again; doing something there begins another
/// branch and keeps the one so far. Equations that cannot be carried on freeze the bench; undoing,
/// going back, opening or starting anew thaws it.
class BenchModel {
public:
    /// Whether work may go on; asked between short pieces of it.
    using Leave = std::function<bool()>;

    explicit BenchModel(std::shared_ptr<const sim::Rig> rig, sim::Weather weather = {},
                        std::optional<sim::Tolerance> tolerance = {});

    // ---- time

    Pace pace;

    /// Goes on by real time at the chosen pace, or with the long work in hand, as long as it has
    /// leave.
    void advance(double real_seconds, const Leave& has_leave);
    /// Goes on by a tick, or by what a frame takes at the chosen speed, and pauses.
    void step_tick();
    void step_frame();

    /// How far the run has been, in seconds; `seconds()` may be before that.
    [[nodiscard]] double end_seconds() const;
    [[nodiscard]] bool is_at_end() const { return run().is_at_end(); }
    /// Pauses and shows a moment between the beginning and the end of the run.
    void go_to(double seconds);
    /// Goes on to a time as fast as this computer can, with the work that `advance` does, and
    /// pauses there. Cancelling keeps what was reached.
    void go_ahead_to(double seconds);
    [[nodiscard]] bool is_going_ahead() const { return ahead_.has_value(); }
    void cancel_ahead() { ahead_.reset(); }
    /// unit:    seconds on the machine's clock
    ///
    /// valid:   is_going_ahead()
    [[nodiscard]] double ahead_end_seconds() const
    {
        return ahead_ ? static_cast<double>(ahead_->to) * sim::tick_length : 0.0;
    }

    /// How much of the long work in hand, replay or going ahead, is done, and how many real
    /// seconds the rest may take; nothing while that cannot be told.
    [[nodiscard]] double work_share() const;
    [[nodiscard]] std::optional<double> work_left() const;

    // ---- what a person does

    /// Whether commands are taken: not while frozen or busy with long work.
    [[nodiscard]] bool is_ready() const { return !is_frozen() && !is_busy(); }
    [[nodiscard]] bool is_busy() const { return is_replaying() || is_going_ahead(); }

    using Gesture = scenes::Gesture;
    /// throws:  RequestError when it cannot be done
    void post(const sim::Command& command, Gesture gesture = Gesture::begins);
    /// Does what a button says, and lets go of what it holds.
    void press(const Action& action);
    void release(const Action& action);

    [[nodiscard]] bool can_undo() const;
    /// Replays what followed without the last gesture, brings back a branch that was removed last,
    /// or goes back to the run before this one.
    void undo();
    [[nodiscard]] bool can_redo() const { return !is_busy() && !undone_.empty(); }
    /// Does again what was undone last. Doing anything else forgets it.
    void redo();

    // ---- branches

    [[nodiscard]] const std::vector<Branch>& branches() const { return session_.branches; }
    [[nodiscard]] std::size_t active_branch() const { return session_.active; }
    /// Shows a branch where it was left; one that was let go of is replayed.
    void switch_to(std::size_t branch);
    void rename_branch(std::size_t branch, const std::string& name);
    [[nodiscard]] bool can_remove_branch() const;
    /// Removes a branch; undoing brings it back.
    void remove_branch(std::size_t branch);

    // ---- runs

    /// Begins a run and goes on to a tick, with the replay that `advance` works at.
    void begin(const sim::RunSheet& sheet, sim::Tick to);
    /// The same on another machine, in a weather of its own; the run so far can be gone back to.
    void begin(std::shared_ptr<const sim::Rig> rig, const sim::Weather& weather,
               const sim::RunSheet& sheet, sim::Tick to);
    /// The rig's own start, up to the end of its default run.
    void begin_running();
    /// The machine as it stands on the shelf.
    void begin_cold();
    /// Puts another machine on the bench, running; the run so far can be gone back to.
    void choose(std::shared_ptr<const sim::Rig> rig);
    /// A run sheet from a file, up to its end, on the machine that it is for.
    ///
    /// Gives the ids of the faults that the file does not name.
    ///
    /// throws:  AssetError when the file is wrong
    std::vector<std::string> open(const std::string& path);
    /// Faults whose ids are in `hidden` are not named in the file.
    ///
    /// throws:  RequestError when it cannot be written
    void save(const std::string& path, std::span<const std::string> hidden = {}) const;
    [[nodiscard]] sim::RunSheet sheet() const;

    [[nodiscard]] bool is_replaying() const { return replay_.has_value(); }
    [[nodiscard]] double replay_share() const { return work_share(); }
    /// Leaves everything as it was before the replay.
    void cancel_replay() { replay_.reset(); }
    /// Stops whatever long work is done.
    void cancel_work()
    {
        cancel_replay();
        cancel_ahead();
    }
    /// Works until the long work in hand is done.
    void finish_replay();

    [[nodiscard]] bool is_frozen() const { return !trouble_.empty(); }
    /// Why the bench is frozen, in one line.
    [[nodiscard]] const std::string& trouble() const { return trouble_; }

    // ---- what there is to see

    [[nodiscard]] const sim::Rig& rig() const { return *rig_; }
    [[nodiscard]] BenchRun& run() { return *session_.now().run; }
    [[nodiscard]] const BenchRun& run() const { return *session_.now().run; }
    /// Counts the replacements of `run()`.
    [[nodiscard]] int run_number() const { return run_number_; }
    [[nodiscard]] double seconds() const { return run().machine().seconds(); }

private:
    /// A run worked at, and what becomes of it: `finish` takes it over.
    struct Replay {
        std::unique_ptr<BenchRun> run;
        sim::Tick from = 0;
        sim::Tick to = 0;
        double spent = 0.0; ///< real seconds
        std::function<void(std::unique_ptr<BenchRun>)> finish;
    };
    struct Ahead {
        sim::Tick from = 0;
        sim::Tick to = 0;
        double spent = 0.0; ///< real seconds
    };
    struct Removed {
        Branch branch;
        std::size_t place = 0;
        int serial = 0;
    };
    using Undone = std::variant<std::vector<OwnCommand>, Session>;

    void post_at(const sim::Command& command, sim::Tick at, Gesture gesture);
    void fork(const sim::Command& change);
    [[nodiscard]] std::unique_ptr<BenchRun> fresh_run(const Plan& plan) const;
    [[nodiscard]] std::unique_ptr<BenchRun> changed_run(const Plan& plan, sim::Tick from) const;
    void replay(std::unique_ptr<BenchRun> run, sim::Tick to,
                std::function<void(std::unique_ptr<BenchRun>)> finish);
    void replay_plan(Plan plan, sim::Tick from, std::function<void()> finish);
    void show_session(Session session);
    /// The session in hand, ready to be put away.
    Session put_away();
    void undo_run();
    void bring_back();
    void work_at_replay(const Leave& has_leave);
    void work_ahead(const Leave& has_leave);
    sim::Tick go_on(sim::Tick ticks, const Leave& has_leave);
    void pause_after(sim::Tick ticks);
    /// Lets the engine leap when more than real time is wanted, and has it go turn by turn else.
    void choose_strides();

    std::shared_ptr<const sim::Rig> rig_; ///< of the run that is shown
    sim::Weather weather_;
    std::optional<sim::Tolerance> tolerance_;
    Session session_;
    int run_number_ = 0;
    int last_branch_ = 1;
    int serial_ = 0;
    std::vector<Session> past_; ///< without runs
    std::vector<Removed> removed_;
    std::vector<Undone> undone_;
    std::optional<Replay> replay_;
    std::optional<Ahead> ahead_;
    std::string trouble_;
    sim::Tick pressed_at_ = 0;
};

} // namespace scenes
