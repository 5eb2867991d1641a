#include "scenes/present/bench_model.hpp"

#include "sim/error.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

// Time and what a person does. Undoing, branches and runs are in bench_undo.cpp, bench_branches.cpp
// and bench_replay.cpp.

namespace scenes {
namespace {

/// What a picture takes on the screen, s.
constexpr double frame_length = 1.0 / 60.0;
/// The shortest hold of a button that is held: a thumb is no faster.
constexpr sim::Tick shortest_hold = 150;
/// Where more than this is passed over, it is recorded coarsely.
constexpr sim::Tick passed_over = 600000;

bool always()
{
    return true;
}

} // namespace

BenchModel::BenchModel(std::shared_ptr<const sim::Rig> rig, sim::Weather weather,
                       std::optional<sim::Tolerance> tolerance)
    : rig_(std::move(rig)), weather_(weather), tolerance_(tolerance)
{
    Branch first;
    first.plan.rig = rig_;
    first.plan.weather = weather_;
    first.run = std::make_unique<BenchRun>(rig_, weather_, tolerance_);
    session_.branches.push_back(std::move(first));
}

void BenchModel::choose_strides()
{
    BenchRun& run = this->run();
    const sim::Simulator& machine = run.machine();
    const bool may_leap = machine.can_leap() && (is_going_ahead() || pace.speed() > 1.0);
    if (run.is_at_end() && may_leap != machine.may_leap()) {
        const sim::TimedCommand choice{machine.now(), sim::SetLeaps{may_leap}};
        run.post(choice.command, choice.at);
        session_.now().plan.own.push_back({choice, Gesture::aside, ++serial_});
    }
}

sim::Tick BenchModel::go_on(sim::Tick ticks, const Leave& has_leave)
{
    BenchRun& run = this->run();
    const sim::Tick from = run.machine().now();
    try {
        do { // once at least: commands posted for this very tick are done by it
            choose_strides();
            run.advance_some(from + ticks);
        } while (run.machine().now() < from + ticks && has_leave());
        run.look();
    } catch (const sim::NumericsError& error) {
        trouble_ = error.what();
    }
    return run.machine().now() - from;
}

void BenchModel::advance(double real_seconds, const Leave& has_leave)
{
    if (is_replaying()) {
        replay_->spent += real_seconds;
        work_at_replay(has_leave);
    } else if (is_going_ahead()) {
        ahead_->spent += real_seconds;
        work_ahead(has_leave);
    } else if (!is_frozen()) {
        const sim::Tick owed = pace.owe(real_seconds);
        pace.pay(owed, go_on(owed, has_leave));
    }
}

void BenchModel::pause_after(sim::Tick ticks)
{
    pace.is_paused = true;
    if (is_ready()) {
        go_on(ticks, always);
    }
}

void BenchModel::step_tick()
{
    pause_after(1);
}

void BenchModel::step_frame()
{
    const auto ticks = std::llround(frame_length * pace.speed() / sim::tick_length);
    pause_after(std::max<sim::Tick>(1, ticks));
}

double BenchModel::end_seconds() const
{
    return static_cast<double>(run().end()) * sim::tick_length;
}

void BenchModel::go_to(double seconds)
{
    if (is_busy()) {
        return;
    }
    pace.is_paused = true;
    const double ticks = std::clamp(seconds, 0.0, end_seconds()) / sim::tick_length;
    try {
        run().go_to(std::llround(ticks));
        trouble_.clear();
    } catch (const sim::NumericsError& error) {
        trouble_ = error.what();
    }
}

void BenchModel::go_ahead_to(double seconds)
{
    const sim::Tick to = std::llround(seconds / sim::tick_length);
    if (is_ready() && to > run().machine().now()) {
        ahead_ = Ahead{run().machine().now(), to, 0.0};
    }
}

void BenchModel::work_ahead(const Leave& has_leave)
{
    BenchRun& run = this->run();
    const sim::Tick to = ahead_->to;
    try {
        while (run.machine().now() < to && has_leave()) {
            choose_strides();
            run.advance_some(to, to - run.machine().now() > passed_over);
        }
        run.look();
    } catch (const sim::NumericsError& error) {
        trouble_ = error.what();
    }
    if (is_frozen() || run.machine().now() >= to) {
        pace.is_paused = true;
        ahead_.reset();
    }
}

void BenchModel::post_at(const sim::Command& command, sim::Tick at, Gesture gesture)
{
    const std::string reason = run().machine().check(command);
    if (!reason.empty()) {
        throw sim::RequestError(reason);
    }
    if (!is_at_end()) {
        fork(command);
    }
    run().post(command, at);
    std::vector<OwnCommand>& own = session_.now().plan.own;
    const bool is_first = session_.now().plan.last_of_person() == nullptr;
    own.push_back({{at, command}, is_first ? Gesture::begins : gesture, ++serial_});
    undone_.clear();
    if (at == run().machine().now()) {
        go_on(0, always);
    }
}

void BenchModel::post(const sim::Command& command, Gesture gesture)
{
    if (is_ready()) {
        post_at(command, run().machine().now(), gesture);
    }
}

void BenchModel::press(const Action& action)
{
    if (is_ready()) {
        pressed_at_ = run().machine().now();
        post_at(sim::Do{action.id, action.to}, pressed_at_, Gesture::begins);
    }
}

void BenchModel::release(const Action& action)
{
    if (is_ready() && !action.release.empty()) {
        const sim::Tick now = run().machine().now();
        const bool was_pressed_here = pressed_at_ <= now;
        const sim::Tick at = was_pressed_here ? std::max(now, pressed_at_ + shortest_hold) : now;
        post_at(sim::Do{action.release}, at, Gesture::continues);
    }
}

} // namespace scenes
