#pragma once

#include "sim/rig.hpp"

#include <memory>
#include <string>
#include <vector>

// Runs that several tests and benchmarks have in common.

namespace tests {

/// The mower as its files state it, loaded once.
std::shared_ptr<const sim::Rig> mower();

/// A copy of the mower whose faults are those of its files and `fault`.
std::shared_ptr<const sim::Rig> mower_with(sim::Fault fault);

/// Moves a control at a time in seconds.
sim::TimedCommand set(double seconds, std::string control, double to);
/// Does a doing at a time in seconds.
sim::TimedCommand act(double seconds, std::string doing, double to = 0.0);
/// Gives a fault a severity at a time in seconds.
sim::TimedCommand break_at(double seconds, std::string fault, double severity);

/// Tap open at 1 s, two pulls on the choke from 30 s on, choke fully open from 45 s on.
std::vector<sim::TimedCommand> cold_start();
/// `cold_start` and then `more`.
std::vector<sim::TimedCommand> after_cold_start(std::vector<sim::TimedCommand> more);

} // namespace tests
