#include "scenes/present/bench_run.hpp"

#include "sim/error.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace scenes {
namespace {

/// How slowly gauges follow a pulse, s: over a dozen turns at full speed.
constexpr double gauge_seconds = 0.1;
/// Evaluations of the equations from one kept moment to the next: what going back may cost.
constexpr std::size_t work_between_moments = 3000;
/// Ticks from look to look while the engine may leap: each resolves a turn or two.
constexpr sim::Tick ticks_between_leap_looks = 200;

sim::Tick next_multiple(sim::Tick above, sim::Tick of)
{
    return (above / of + 1) * of;
}

bool is_fault(const sim::Command& command)
{
    return std::holds_alternative<sim::SetFault>(command);
}

} // namespace

BenchRun::BenchRun(const std::shared_ptr<const sim::Rig>& rig, const sim::Weather& weather,
                   const std::optional<sim::Tolerance>& tolerance)
    : machine_(rig, weather, tolerance),
      path_(find_fuel_path(machine_)),
      history_(machine_.readings().size()),
      twin_history_(machine_.readings().size()),
      values_(machine_.readings().size()),
      twin_values_(values_.size()),
      gauges_(values_.size()),
      twin_gauges_(values_.size()),
      gauges_before_(values_.size()),
      twin_gauges_before_(values_.size()),
      between_(values_.size())
{
    find_speed();
    read_values();
    settle_gauges(1.0);
    keep();
}

void BenchRun::post(const sim::Command& command, sim::Tick at)
{
    if (is_fault(command) && !twin_) {
        sim::Simulator healthy = machine_; // a fault that is refused parts nobody
        machine_.post(command, at);
        twin_ = std::move(healthy);
        return;
    }
    machine_.post(command, at);
    if (has_twin_ && twin_ && !is_fault(command)) {
        twin_->post(command, at);
    }
}

sim::Tick BenchRun::next_stop(sim::Tick to, bool is_coarse) const
{
    const sim::Tick now = machine_.now();
    if (now == unrecorded_ && now % History::fine_ticks == 0) {
        return now;
    }
    if (may_leap()) {
        return std::min(to, now + (is_coarse ? History::coarse_ticks : ticks_between_leap_looks));
    }
    if (path_->is_pulsing()) {
        return std::min(to, next_multiple(now, History::swift_ticks));
    }
    return std::min(to,
                    next_multiple(now, is_coarse ? History::coarse_ticks : History::fine_ticks));
}

void BenchRun::advance_machines(sim::Tick to)
{
    has_failed_ = true;
    machine_.advance(to);
    has_failed_ = false;
    if (has_twin_ && twin_) {
        try {
            twin_->advance(to);
        } catch (const sim::NumericsError&) {
            has_twin_ = false;
        }
    }
}

void BenchRun::advance_some(sim::Tick to, bool is_coarse)
{
    const sim::Tick target = next_stop(to, is_coarse);
    const sim::Tick from = machine_.now();
    if (may_leap() && target > from) {
        leap_to(target);
        record_between(from, is_coarse);
    } else {
        advance_machines(target);
        const bool is_sample = target % History::fine_ticks == 0 && target >= unrecorded_;
        if (path_->is_pulsing() || is_sample) {
            look();
        }
        if (target >= unrecorded_) {
            record(is_coarse && !path_->is_pulsing());
        }
    }
    if (target >= end_) {
        end_ = target;
        if (machine_.work().evaluations > kept_work_ + work_between_moments) {
            keep();
        }
    }
}

void BenchRun::record(bool is_coarse)
{
    const sim::Tick now = machine_.now();
    if (path_->is_pulsing() && now % History::swift_ticks == 0) {
        history_.record_swift(now, values_);
        if (has_twin_) {
            twin_history_.record_swift(now, twin_values_);
        }
        unrecorded_ = now + 1;
    }
    if (now % History::fine_ticks == 0) {
        history_.record(now, gauges_, is_coarse);
        if (has_twin_) {
            twin_history_.record(now, twin_gauges_, is_coarse);
        }
        unrecorded_ = now + 1;
    }
}

void BenchRun::keep()
{
    RunMoment moment{.machine = machine_.keep(),
                     .twin = {},
                     .has_twin = has_twin_,
                     .gauged = gauged_,
                     .gauges = {gauges_.begin(), gauges_.end()},
                     .twin_gauges = {twin_gauges_.begin(), twin_gauges_.end()}};
    if (has_twin_ && twin_) {
        moment.twin = twin_->keep();
    }
    moments_.keep(std::move(moment));
    kept_work_ = machine_.work().evaluations;
}

void BenchRun::restore(const RunMoment& moment)
{
    machine_.restore(moment.machine);
    has_failed_ = false;
    has_twin_ = moment.has_twin;
    if (twin_ && has_twin_) {
        twin_->restore(moment.twin ? *moment.twin : moment.machine);
    }
    gauged_ = moment.gauged;
    std::ranges::copy(moment.gauges, gauges_.begin());
    std::ranges::copy(moment.twin_gauges, twin_gauges_.begin());
}

void BenchRun::go_to(sim::Tick at)
{
    at = std::clamp<sim::Tick>(at, 0, end_);
    if (is_at_end() && !has_failed_) {
        keep();
    }
    const RunMoment& moment = moments_.before(at);
    if (has_failed_ || at < machine_.now() || moment.machine.at() > machine_.now()) {
        restore(moment);
    }
    do { // once at least: commands of this very tick are done by it
        advance_some(at);
    } while (machine_.now() < at);
    look();
}

void BenchRun::truncate()
{
    const sim::Tick now = machine_.now();
    machine_.clear_pending();
    if (twin_) {
        twin_->clear_pending();
    }
    history_.truncate(now);
    twin_history_.truncate(now);
    moments_.truncate(now);
    std::erase_if(loose_, [now](const LooseSpan& span) { return span.from >= now; });
    if (!loose_.empty()) {
        loose_.back().to = std::min(loose_.back().to, now);
    }
    end_ = now;
    unrecorded_ = std::min(unrecorded_, now + 1);
    kept_work_ = machine_.work().evaluations;
    ++edition_;
}

void BenchRun::rewrite(sim::Tick at, std::span<const sim::TimedCommand> commands)
{
    restore(moments_.before(at - 1));
    truncate();
    const std::vector<sim::TimedCommand> done = machine_.sheet().commands;
    const bool was_faulted = std::ranges::any_of(done, is_fault, &sim::TimedCommand::command);
    if (!was_faulted) {
        twin_.reset();
    }
    for (const sim::TimedCommand& timed :
         commands.subspan(std::min(done.size(), commands.size()))) {
        post(timed.command, timed.at);
    }
    look();
}

void BenchRun::look()
{
    read_values();
    const auto passed = static_cast<double>(machine_.now() - gauged_) * sim::tick_length;
    gauged_ = machine_.now();
    settle_gauges(path_->is_pulsing() ? 1.0 - std::exp(-passed / gauge_seconds) : 1.0);
}

void BenchRun::read_values()
{
    machine_.read(values_);
    if (!twin_) {
        twin_values_ = values_;
    } else if (has_twin_) {
        twin_->read(twin_values_);
    }
}

void BenchRun::settle_gauges(double share)
{
    const auto settle = [share](double& gauge, double value) {
        // A gauge that showed nothing takes up what there is at once.
        gauge = share < 1.0 && std::isfinite(gauge) ? gauge + share * (value - gauge) : value;
    };
    for (std::size_t i = 0; i < gauges_.size(); ++i) {
        settle(gauges_[i], values_[i]);
        settle(twin_gauges_[i], twin_values_[i]);
    }
}

FuelHeads BenchRun::heads() const
{
    return path_->heads(gauges_, machine_.surroundings().up);
}

FuelHeads BenchRun::twin_heads() const
{
    return path_->heads(twin_gauges_, machine_.surroundings().up);
}

} // namespace scenes
