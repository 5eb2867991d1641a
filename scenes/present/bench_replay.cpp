#include "scenes/present/bench_model.hpp"

#include "sim/error.hpp"
#include "sim/run_sheet.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

// Runs that are begun, opened, saved, and worked at in the background.

namespace scenes {
namespace {

/// How long an opened run goes on after its last command.
constexpr sim::Tick aftermath = 5000;
/// Runs to go back to.
constexpr std::size_t most_past = 20;

} // namespace

std::unique_ptr<BenchRun> BenchModel::fresh_run(const Plan& plan) const
{
    auto run = std::make_unique<BenchRun>(plan.rig, plan.weather, tolerance_);
    for (const sim::TimedCommand& timed : plan.commands()) {
        run->post(timed.command, timed.at);
    }
    return run;
}

void BenchModel::replay(std::unique_ptr<BenchRun> run, sim::Tick to,
                        std::function<void(std::unique_ptr<BenchRun>)> finish)
{
    const sim::Tick from = run->machine().now();
    replay_ = Replay{std::move(run), from, to, 0.0, std::move(finish)};
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
            replay.run->advance_some(replay.to);
        } while (replay.run->machine().now() < replay.to);
        replay.run->look();
    } catch (const sim::NumericsError& error) {
        trouble = error.what();
    }
    Replay done = std::move(replay);
    replay_.reset();
    done.finish(std::move(done.run));
    trouble_ = std::move(trouble);
}

void BenchModel::finish_replay()
{
    while (is_busy()) {
        advance(0.0, [] { return true; });
    }
}

double BenchModel::work_share() const
{
    const auto share = [](sim::Tick now, sim::Tick from, sim::Tick to) {
        return to <= from ? 1.0 : static_cast<double>(now - from) / static_cast<double>(to - from);
    };
    if (replay_) {
        return share(replay_->run->machine().now(), replay_->from, replay_->to);
    }
    return ahead_ ? share(run().machine().now(), ahead_->from, ahead_->to) : 1.0;
}

std::optional<double> BenchModel::work_left() const
{
    constexpr double least_spent = 0.5; // s; before that it is guesswork
    const double spent = replay_ ? replay_->spent : ahead_ ? ahead_->spent : 0.0;
    const double share = work_share();
    if (spent < least_spent || share <= 0.0) {
        return {};
    }
    return spent * (1.0 - share) / share;
}

Session BenchModel::put_away()
{
    for (Branch& branch : session_.branches) {
        if (branch.run) {
            branch.plan.to = branch.run->end();
            branch.run.reset();
        }
    }
    removed_.clear(); // they belonged to it
    return std::move(session_);
}

void BenchModel::show_session(Session session)
{
    session_ = std::move(session);
    rig_ = session_.now().plan.rig;
    ++run_number_;
}

void BenchModel::begin(const sim::RunSheet& sheet, sim::Tick to)
{
    begin(rig_, weather_, sheet, to);
}

void BenchModel::begin(std::shared_ptr<const sim::Rig> rig, const sim::Weather& weather,
                       const sim::RunSheet& sheet, sim::Tick to)
{
    Plan plan{
        .rig = std::move(rig), .weather = weather, .sheet = sheet.commands, .own = {}, .to = to};
    std::unique_ptr<BenchRun> fresh = fresh_run(plan);
    ahead_.reset();
    replay(std::move(fresh), to, [this, plan](std::unique_ptr<BenchRun> run) {
        if (run_number_ > 0 || session_.now().plan.last_of_person() != nullptr) {
            past_.push_back(put_away());
            if (past_.size() > most_past) {
                past_.erase(past_.begin());
            }
        }
        Session session;
        Branch first;
        first.id = last_branch_ = 1;
        first.plan = plan;
        first.run = std::move(run);
        session.branches.push_back(std::move(first));
        show_session(std::move(session));
        undone_.clear();
    });
}

void BenchModel::begin_running()
{
    choose(rig_);
}

void BenchModel::choose(std::shared_ptr<const sim::Rig> rig)
{
    const sim::RunSheet& sheet = rig->default_sheet;
    const sim::Tick to = std::llround(rig->default_length / sim::tick_length);
    begin(std::move(rig), weather_, sheet, to);
}

void BenchModel::begin_cold()
{
    begin({rig_->id, {}}, 0);
}

std::vector<std::string> BenchModel::open(const std::string& path)
{
    const std::string id = sim::rig_of_run_sheet(path);
    auto rig = id == rig_->id ? rig_ : std::make_shared<const sim::Rig>(sim::load_rig(id));
    const sim::RunSheet sheet = sim::load_run_sheet(path, *rig);
    begin(std::move(rig), weather_, sheet,
          sheet.commands.empty() ? 0 : sheet.commands.back().at + aftermath);
    return sheet.hidden;
}

sim::RunSheet BenchModel::sheet() const
{
    return run().machine().sheet();
}

void BenchModel::save(const std::string& path, std::span<const std::string> hidden) const
{
    sim::save_run_sheet(sheet(), *rig_, path, hidden);
}

} // namespace scenes
