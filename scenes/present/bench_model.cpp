#include "scenes/present/bench_model.hpp"

#include "sim/error.hpp"
#include "sim/run_sheet.hpp"

#include <algorithm>
#include <utility>

namespace scenes {
namespace {

/// How full "fill the tank" makes it: to the filler's neck, not the brim.
constexpr double full_tank = 0.9;
/// What a picture takes on the screen, s.
constexpr double frame_length = 1.0 / 60.0;
/// The shortest hold of a button that is held: a thumb is no faster.
constexpr sim::Tick shortest_hold = 150;
/// How long an opened run goes on after its last command.
constexpr sim::Tick aftermath = 5000;
/// Runs to go back to.
constexpr std::size_t most_past = 20;

constexpr std::string_view release_prefix = "release_";

/// The doing that takes hold of what a doing "release_x" lets go; null for any other doing.
const sim::Doing* held_by(const sim::Doing& release, const std::vector<sim::Doing>& doings)
{
    if (!release.id.starts_with(release_prefix)) {
        return nullptr;
    }
    const std::string_view thing = std::string_view(release.id).substr(release_prefix.size() - 1);
    const auto found = std::ranges::find_if(doings, [&](const sim::Doing& doing) {
        return doing.id != release.id && doing.id.ends_with(thing);
    });
    return found == doings.end() ? nullptr : &*found;
}

bool always()
{
    return true;
}

} // namespace

std::vector<Action> actions_of(const sim::Rig& rig)
{
    std::vector<Action> actions;
    for (const sim::Doing& doing : rig.doings) {
        if (held_by(doing, rig.doings) != nullptr) {
            continue;
        }
        Action action{doing.id, doing.title, "", doing.fills.empty() ? 0.0 : full_tank};
        for (const sim::Doing& release : rig.doings) {
            if (held_by(release, rig.doings) == &doing) {
                action.release = release.id;
            }
        }
        actions.push_back(std::move(action));
    }
    return actions;
}

BenchModel::BenchModel(std::shared_ptr<const sim::Rig> rig, sim::Weather weather,
                       std::optional<sim::Tolerance> tolerance)
    : rig_(std::move(rig)),
      weather_(weather),
      tolerance_(tolerance),
      run_(std::make_unique<BenchRun>(rig_, weather_, tolerance_)),
      plan_{.rig = rig_, .sheet = {}, .own = {}, .to = 0}
{
}

sim::Tick BenchModel::go_on(sim::Tick ticks, const Leave& has_leave)
{
    const sim::Tick from = run_->machine().now();
    try {
        do { // once at least: commands posted for this very tick are done by it
            run_->advance_some(from + ticks);
        } while (run_->machine().now() < from + ticks && has_leave());
        run_->look();
    } catch (const sim::NumericsError& error) {
        trouble_ = error.what();
    }
    return run_->machine().now() - from;
}

void BenchModel::advance(double real_seconds, const Leave& has_leave)
{
    if (is_replaying()) {
        work_at_replay(has_leave);
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

void BenchModel::post_at(const sim::Command& command, sim::Tick at, Gesture gesture)
{
    run_->post(command, at);
    plan_.own.push_back({{at, command}, plan_.own.empty() ? Gesture::begins : gesture});
    if (at == run_->machine().now()) {
        go_on(0, always);
    }
}

void BenchModel::post(const sim::Command& command, Gesture gesture)
{
    if (is_ready()) {
        post_at(command, run_->machine().now(), gesture);
    }
}

void BenchModel::press(const Action& action)
{
    if (is_ready()) {
        pressed_at_ = run_->machine().now();
        post_at(sim::Do{action.id, action.to}, pressed_at_, Gesture::begins);
    }
}

void BenchModel::release(const Action& action)
{
    if (is_ready() && !action.release.empty()) {
        const sim::Tick at = std::max(run_->machine().now(), pressed_at_ + shortest_hold);
        post_at(sim::Do{action.release}, at, Gesture::continues);
    }
}

bool BenchModel::can_undo() const
{
    return !is_replaying() && (!plan_.own.empty() || !past_.empty());
}

void BenchModel::undo()
{
    if (!can_undo()) {
        return;
    }
    if (plan_.own.empty()) {
        std::vector<Plan> past = past_;
        Plan plan = std::move(past.back());
        past.pop_back();
        replay(std::move(plan), std::move(past));
        return;
    }
    Plan plan = plan_;
    plan.to = run_->machine().now();
    while (plan.own.back().gesture == Gesture::continues) {
        plan.own.pop_back();
    }
    plan.own.pop_back();
    replay(std::move(plan), past_);
}

void BenchModel::begin(const sim::RunSheet& sheet, sim::Tick to)
{
    begin_on(rig_, sheet, to);
}

void BenchModel::begin_on(std::shared_ptr<const sim::Rig> rig, const sim::RunSheet& sheet,
                          sim::Tick to)
{
    std::vector<Plan> past = past_;
    if (run_number_ > 0) {
        past.push_back(plan_);
        past.back().to = run_->machine().now();
        if (past.size() > most_past) {
            past.erase(past.begin());
        }
    }
    replay({std::move(rig), sheet.commands, {}, to}, std::move(past));
}

void BenchModel::begin_running()
{
    choose(rig_);
}

void BenchModel::choose(std::shared_ptr<const sim::Rig> rig)
{
    const sim::RunSheet& sheet = rig->default_sheet;
    const sim::Tick to = std::llround(rig->default_length / sim::tick_length);
    begin_on(std::move(rig), sheet, to);
}

void BenchModel::begin_cold()
{
    begin({rig_->id, {}}, 0);
}

void BenchModel::open(const std::string& path)
{
    const std::string id = sim::rig_of_run_sheet(path);
    auto rig = id == rig_->id ? rig_ : std::make_shared<const sim::Rig>(sim::load_rig(id));
    const sim::RunSheet sheet = sim::load_run_sheet(path, *rig);
    begin_on(std::move(rig), sheet,
             sheet.commands.empty() ? 0 : sheet.commands.back().at + aftermath);
}

sim::RunSheet BenchModel::sheet() const
{
    return run_->machine().sheet();
}

void BenchModel::save(const std::string& path) const
{
    sim::save_run_sheet(sheet(), *rig_, path);
}

void BenchModel::replay(Plan plan, std::vector<Plan> past)
{
    auto run = std::make_unique<BenchRun>(plan.rig, weather_, tolerance_);
    for (const sim::TimedCommand& timed : plan.sheet) {
        run->post(timed.command, timed.at);
    }
    for (const OwnCommand& own : plan.own) {
        run->post(own.timed.command, own.timed.at);
    }
    replay_ = Replay{std::move(run), std::move(plan), std::move(past)};
}

double BenchModel::replay_share() const
{
    if (!replay_ || replay_->plan.to == 0) {
        return 1.0;
    }
    return static_cast<double>(replay_->run->machine().now()) /
           static_cast<double>(replay_->plan.to);
}

void BenchModel::work_at_replay(const Leave& has_leave)
{
    Replay& replay = *replay_;
    std::string trouble;
    try {
        do {
            if (!has_leave()) {
                return;
            }
            replay.run->advance_some(replay.plan.to);
        } while (replay.run->machine().now() < replay.plan.to);
        replay.run->look();
    } catch (const sim::NumericsError& error) {
        trouble = error.what();
    }
    trouble_ = std::move(trouble);
    run_ = std::move(replay.run);
    rig_ = replay.plan.rig;
    plan_ = std::move(replay.plan);
    past_ = std::move(replay.past);
    ++run_number_;
    replay_.reset();
}

void BenchModel::finish_replay()
{
    while (is_replaying()) {
        work_at_replay(always);
    }
}

} // namespace scenes
