#include "scenes/present/bench_run.hpp"

#include "sim/error.hpp"

#include <algorithm>

namespace scenes {

BenchRun::BenchRun(const std::shared_ptr<const sim::Rig>& rig, const sim::Weather& weather,
                   const sim::Tolerance& tolerance)
    : machine_(rig, weather, tolerance),
      twin_(machine_),
      path_(machine_),
      history_(machine_.readings().size()),
      twin_history_(machine_.readings().size()),
      values_(machine_.readings().size()),
      twin_values_(values_.size())
{
    look();
}

void BenchRun::post(const sim::Command& command, sim::Tick at)
{
    machine_.post(command, at);
    if (has_twin_ && !std::holds_alternative<sim::SetFault>(command)) {
        twin_.post(command, at);
    }
}

void BenchRun::advance_some(sim::Tick to)
{
    const sim::Tick target = std::min(to, next_sample_);
    machine_.advance(target);
    if (has_twin_) {
        try {
            twin_.advance(target);
        } catch (const sim::NumericsError&) {
            has_twin_ = false;
        }
    }
    if (target == next_sample_) {
        look();
        history_.record(target, values_);
        if (has_twin_) {
            twin_history_.record(target, twin_values_);
        }
        next_sample_ += History::fine_ticks;
    }
}

void BenchRun::look()
{
    machine_.read(values_);
    if (has_twin_) {
        twin_.read(twin_values_);
    }
}

FuelHeads BenchRun::heads() const
{
    return path_.heads(values_, machine_.surroundings().up);
}

FuelHeads BenchRun::twin_heads() const
{
    return path_.heads(twin_values_, machine_.surroundings().up);
}

} // namespace scenes
