#include "tests/reference/agreement.hpp"

#include "tests/reference/cvode_machine.hpp"

#include <cmath>

using namespace sim;

namespace tests {

std::vector<ReadingError> differences_from_cvode(const std::shared_ptr<const Rig>& rig,
                                                 const std::vector<TimedCommand>& commands,
                                                 double until, Tick stride, Tolerance tolerance)
{
    const Tick last = std::llround(until / tick_length);
    Simulator simulator(rig, {}, tolerance);
    for (const TimedCommand& timed : commands) {
        simulator.post(timed.command, timed.at);
    }
    CvodeMachine reference(rig, commands, {1e-11, 1e-11, CvodeMatrix::analytic_klu});
    const auto& readings = simulator.readings();
    const Record ours = record_of(simulator, readings.size(), 0, last, stride);
    const Record theirs = record_of(reference, readings.size(), 0, last, stride);
    return reading_errors(ours, theirs, ranges_of(theirs, readings), readings);
}

} // namespace tests
