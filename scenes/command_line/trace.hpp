#pragma once

#include "sim/simulator.hpp"

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace scenes {

/// Asks for a run of a machine as a table of all readings over time.
///
/// unit:    seconds; kelvin
struct TraceRequest {
    std::string rig;
    std::vector<sim::SetFault> faults; ///< there from the first tick, whatever the sheet says
    std::optional<std::string> sheet;  ///< the run sheet's file; absent for the rig's default run
    double ambient = 293.15;
    std::optional<double> length; ///< absent for the length of the rig's default run
    double every = 0.1;
    bool may_leap = false;           ///< over turns that resemble each other, from the first tick
    std::optional<std::string> file; ///< absent for the standard output
};

/// Takes the next piece of a text.
using Sink = std::function<void(std::string_view)>;

/// Runs a machine through a sheet and gives the table as RFC 4180 CSV, line by line.
///
/// Of `request` it takes the faults, the ambient temperature and the times. A row stands at the
/// tick nearest to its time and shows the tick's time, after that tick's commands.
/// throws:  RequestError before the first line when a command cannot be done or there would be too
///          many rows; NumericsError
void write_trace(std::shared_ptr<const sim::Rig> rig, const sim::RunSheet& sheet,
                 const TraceRequest& request, const Sink& sink);

/// The same from a rig's id and a sheet's file, into the request's own file or else `standard`.
///
/// throws:  also RequestError and AssetError of loading and writing; no file is left then
void trace(const TraceRequest& request, const Sink& standard);

} // namespace scenes
