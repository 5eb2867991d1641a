#pragma once

#include "sim/simulator.hpp"

#include <string>
#include <vector>

// How far one run's readings are from another's.

namespace tests {

/// Every reading of a run in SI, one row per look.
using Record = std::vector<std::vector<double>>;

/// Looks at a machine every `stride` ticks from `from` to `to`.
template <class Machine>
Record record_of(Machine& machine, std::size_t reading_count, sim::Tick from, sim::Tick to,
                 sim::Tick stride)
{
    Record rows;
    for (sim::Tick at = from; at <= to; at += stride) {
        machine.advance(at);
        rows.emplace_back(reading_count, 0.0);
        machine.read(rows.back());
    }
    return rows;
}

/// How far each reading moves in a run, in SI.
///
/// A reading that moves less than its display resolves (1 Pa or 0.1 mm of fuel in a gauge, 1
/// mL/min, 0.01 mL, ...) is at rest: its differences count against that resolution.
std::vector<double> ranges_of(const Record& run,
                              const std::vector<sim::Network::Reading>& readings);

/// One reading's largest difference, as a share of its range.
struct ReadingError {
    std::string reading;
    double share = 0.0;
    double range = 0.0;
    std::size_t row = 0; ///< where the difference is largest
};

/// The errors of all readings but the simulator's own audit, the worst first.
std::vector<ReadingError> reading_errors(const Record& run, const Record& reference,
                                         const std::vector<double>& ranges,
                                         const std::vector<sim::Network::Reading>& readings);

/// The first few as text, a line each; `row_seconds` is the time between looks.
std::string worst_of(const std::vector<ReadingError>& errors, double row_seconds);

} // namespace tests
