#pragma once

#include "sim/simulator.hpp"

#include <memory>
#include <span>
#include <string_view>
#include <vector>

namespace scenes {

/// A point of the fuel's path with the total head before and behind it.
struct HeadStation {
    std::string_view name;
    double before = 0.0;
    double after = 0.0;
};

/// A tap point with its head, and what the standpipe there is ruled for.
struct HeadGauge {
    std::string_view name;
    double head = 0.0;
    double low = 0.0;
    double high = 100.0;
};

/// Total heads along the path of the fuel, p / (rho g) + height.
///
/// unit:    mm of fuel above the path's datum
struct FuelHeads {
    std::vector<HeadGauge> gauges;     ///< from the tank on
    std::vector<HeadStation> stations; ///< from the tank on
    double lip = 0.0;                  ///< the height that tells whether fuel leaves by itself
    std::string_view lip_name;
    double low = 0.0; ///< what the grade line's sheet is ruled for
    double high = 100.0;

    /// The head at a tap point.
    ///
    /// throws:  RequestError when the path has no such point
    [[nodiscard]] double at(std::string_view gauge) const;
};

/// The heads as they are shown in the chosen units, whose readout is `readout_of("mm")`.
FuelHeads in_shown_units(FuelHeads heads);

/// Where the fuel of a machine goes, and which readings tell its head there.
///
/// One density serves the whole path: a hose a few degrees from the tank would else show a step
/// where nothing restricts.
/// source:  hydraulic grade line, textbook definition
class FuelPath {
public:
    FuelPath() = default;
    FuelPath(const FuelPath&) = delete;
    FuelPath& operator=(const FuelPath&) = delete;
    FuelPath(FuelPath&&) = delete;
    FuelPath& operator=(FuelPath&&) = delete;
    virtual ~FuelPath() = default;

    /// unit:    values in SI, in the order of the machine's readings
    [[nodiscard]] virtual FuelHeads heads(std::span<const double> values, sim::Vector up) const = 0;

    /// Whether the heads swing with every turn of the engine, so that a gauge shows their mean.
    [[nodiscard]] virtual bool is_pulsing() const = 0;
};

/// The path of a machine, by the kinds of its parts.
///
/// throws:  RequestError when the machine has no path that is known
std::unique_ptr<const FuelPath> find_fuel_path(const sim::Simulator& machine);

/// The path of a float-bowl machine: level zero is the bowl's healthy shut-off level.
///
/// The engine draws in a share of its cycle only; the nozzle's head is the mean over the cycle.
std::unique_ptr<const FuelPath> float_path(const sim::Simulator& machine);

/// The path of a machine with pump and metering diaphragm: level zero is the inlet's seat.
std::unique_ptr<const FuelPath> diaphragm_path(const sim::Simulator& machine);

} // namespace scenes
