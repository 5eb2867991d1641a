#pragma once

#include "sim/simulator.hpp"
#include "tests/reference/reading_error.hpp"

namespace tests {

/// Runs a machine with its own stepper and with CVODE at 1e-11, looks at both every so many ticks,
/// and gives the differences of the readings, the worst first.
std::vector<ReadingError> differences_from_cvode(const std::shared_ptr<const sim::Rig>& rig,
                                                 const std::vector<sim::TimedCommand>& commands,
                                                 double until, sim::Tick stride,
                                                 sim::Tolerance tolerance);

} // namespace tests
