#include "scenes/present/bench_model.hpp"

#include <algorithm>
#include <utility>

// The courses that a run has taken.

namespace scenes {
namespace {

/// Parked branches that keep their history; the others are replayed when wanted.
constexpr std::size_t parked_runs = 3;

} // namespace

void BenchModel::fork(const sim::Command& change)
{
    Branch& parent = session_.now();
    const sim::Tick now = parent.run->machine().now();
    Branch child;
    child.id = ++last_branch_;
    child.parent = parent.id;
    child.left_at = now;
    child.change = change;
    child.plan = parent.plan;
    child.plan.truncate(now);
    child.run = std::make_unique<BenchRun>(*parent.run);
    child.run->truncate();
    child.used = ++serial_;
    // It waits where it had come to.
    parent.run->go_to(parent.run->end());
    parent.plan.to = parent.run->end();
    session_.branches.push_back(std::move(child));
    session_.active = session_.branches.size() - 1;
    session_.keep_runs(parked_runs);
    ++run_number_;
}

void BenchModel::switch_to(std::size_t branch)
{
    if (is_busy() || branch >= session_.branches.size() || branch == session_.active) {
        return;
    }
    pace.is_paused = true;
    const auto show = [this, branch] {
        session_.now().plan.to = run().end();
        session_.active = branch;
        session_.now().used = ++serial_;
        session_.keep_runs(parked_runs);
        undone_.clear();
        trouble_.clear();
        ++run_number_;
    };
    Branch& wanted = session_.branches[branch];
    if (wanted.run) {
        show();
        return;
    }
    replay(fresh_run(wanted.plan), wanted.plan.to,
           [this, branch, show](std::unique_ptr<BenchRun> run) {
               session_.branches[branch].run = std::move(run);
               show();
           });
}

void BenchModel::rename_branch(std::size_t branch, const std::string& name)
{
    if (branch < session_.branches.size()) {
        session_.branches[branch].name = name;
    }
}

bool BenchModel::can_remove_branch() const
{
    return !is_busy() && session_.branches.size() > 1;
}

void BenchModel::remove_branch(std::size_t branch)
{
    if (!can_remove_branch() || branch >= session_.branches.size() || branch == session_.active) {
        return;
    }
    auto& branches = session_.branches;
    Branch gone = std::move(branches[branch]);
    if (gone.run) {
        gone.plan.to = gone.run->end();
        gone.run.reset();
    }
    branches.erase(branches.begin() + static_cast<std::ptrdiff_t>(branch));
    session_.active -= session_.active > branch ? 1 : 0;
    removed_.push_back({std::move(gone), branch, ++serial_});
    undone_.clear();
}

void BenchModel::bring_back()
{
    Removed back = std::move(removed_.back());
    removed_.pop_back();
    auto& branches = session_.branches;
    const std::size_t place = std::min(back.place, branches.size());
    branches.insert(branches.begin() + static_cast<std::ptrdiff_t>(place), std::move(back.branch));
    session_.active += session_.active >= place ? 1 : 0;
}

} // namespace scenes
