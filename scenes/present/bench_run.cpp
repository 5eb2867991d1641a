#include "scenes/present/bench_run.hpp"

#include "sim/error.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace scenes {
namespace {

/// How often gauges follow a pulse, and how slowly: over a dozen turns at full speed.
constexpr sim::Tick gauge_ticks = 2;
constexpr double gauge_seconds = 0.1;

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
      twin_gauges_(values_.size())
{
    read_values();
    settle_gauges(1.0);
}

void BenchRun::post(const sim::Command& command, sim::Tick at)
{
    const bool is_fault = std::holds_alternative<sim::SetFault>(command);
    if (is_fault && !twin_) {
        sim::Simulator healthy = machine_; // a fault that is refused parts nobody
        machine_.post(command, at);
        twin_ = std::move(healthy);
        return;
    }
    machine_.post(command, at);
    if (has_twin_ && twin_ && !is_fault) {
        twin_->post(command, at);
    }
}

void BenchRun::advance_some(sim::Tick to)
{
    sim::Tick target = std::min(to, next_sample_);
    if (path_->is_pulsing()) {
        target = std::min(target, machine_.now() + gauge_ticks);
    }
    machine_.advance(target);
    if (has_twin_ && twin_) {
        try {
            twin_->advance(target);
        } catch (const sim::NumericsError&) {
            has_twin_ = false;
        }
    }
    if (path_->is_pulsing() || target == next_sample_) {
        look();
    }
    if (target == next_sample_) {
        history_.record(target, values_);
        if (has_twin_) {
            twin_history_.record(target, twin_values_);
        }
        next_sample_ += History::fine_ticks;
    }
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
    for (std::size_t i = 0; i < gauges_.size(); ++i) {
        gauges_[i] += share * (values_[i] - gauges_[i]);
        twin_gauges_[i] += share * (twin_values_[i] - twin_gauges_[i]);
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
