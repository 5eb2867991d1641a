#include "scenes/present/bench_model.hpp"

#include <algorithm>
#include <utility>

// Undoing what a person did, and doing it again.

namespace scenes {

std::unique_ptr<BenchRun> BenchModel::changed_run(const Plan& plan, sim::Tick from) const
{
    if (from == 0) {
        return fresh_run(plan);
    }
    auto changed = std::make_unique<BenchRun>(run());
    changed->rewrite(from, plan.commands());
    return changed;
}

void BenchModel::replay_plan(Plan plan, sim::Tick from, std::function<void()> finish)
{
    pace.choose(pace.chosen()); // what the clock owed is owed no more
    std::unique_ptr<BenchRun> changed = changed_run(plan, from);
    replay(std::move(changed), plan.to,
           [this, plan, finish = std::move(finish)](std::unique_ptr<BenchRun> run) {
               session_.now().plan = plan;
               session_.now().run = std::move(run);
               ++run_number_;
               finish();
           });
}

bool BenchModel::can_undo() const
{
    return !is_busy() &&
           (session_.now().plan.last_of_person() != nullptr || !removed_.empty() || !past_.empty());
}

void BenchModel::undo()
{
    if (!can_undo()) {
        return;
    }
    const OwnCommand* last = session_.now().plan.last_of_person();
    if (!removed_.empty() && (last == nullptr || removed_.back().serial > last->serial)) {
        bring_back();
        return;
    }
    if (last == nullptr) {
        undo_run();
        return;
    }
    Plan plan = session_.now().plan;
    plan.to = run().end();
    std::vector<OwnCommand> gesture = plan.take_last_gesture();
    const sim::Tick from = gesture.front().timed.at;
    replay_plan(std::move(plan), from,
                [this, gesture = std::move(gesture)] { undone_.emplace_back(gesture); });
}

void BenchModel::undo_run()
{
    Session& last = past_.back();
    Plan plan = last.now().plan;
    std::unique_ptr<BenchRun> fresh = fresh_run(plan);
    replay(std::move(fresh), plan.to, [this](std::unique_ptr<BenchRun> run) {
        Session session = std::move(past_.back());
        past_.pop_back();
        undone_.emplace_back(put_away());
        session.now().run = std::move(run);
        last_branch_ = std::ranges::max_element(session.branches, {}, &Branch::id)->id;
        show_session(std::move(session));
    });
}

void BenchModel::redo()
{
    if (!can_redo()) {
        return;
    }
    if (const auto* gesture = std::get_if<std::vector<OwnCommand>>(&undone_.back())) {
        Plan plan = session_.now().plan;
        plan.to = std::max(run().end(), gesture->back().timed.at);
        plan.own.insert(plan.own.end(), gesture->begin(), gesture->end());
        std::ranges::sort(plan.own, {}, &OwnCommand::serial);
        const sim::Tick from = gesture->front().timed.at;
        replay_plan(std::move(plan), from, [this] { undone_.pop_back(); });
        return;
    }
    const Plan plan = std::get<Session>(undone_.back()).now().plan;
    replay(fresh_run(plan), plan.to, [this](std::unique_ptr<BenchRun> run) {
        Session session = std::get<Session>(std::move(undone_.back()));
        undone_.pop_back();
        session.now().run = std::move(run);
        past_.push_back(put_away());
        last_branch_ = std::ranges::max_element(session.branches, {}, &Branch::id)->id;
        show_session(std::move(session));
    });
}

} // namespace scenes
