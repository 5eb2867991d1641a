#pragma once

#include "sim/simulator.hpp"

#include <array>
#include <span>
#include <string_view>

namespace scenes {

/// A point of the fuel's path with the total head before and behind it.
struct HeadStation {
    std::string_view name;
    double before = 0.0;
    double after = 0.0;
};

/// Total heads along the path of the fuel, p / (rho g) + height.
///
/// unit:    mm of fuel above the bowl's healthy shut-off level
struct FuelHeads {
    double tank_outlet = 0.0; ///< behind the screen
    double hose_end = 0.0;    ///< at the needle's seat
    double bowl = 0.0;
    double nozzle = 0.0; ///< at the foot of the well, as a slow gauge reads it: cycle's mean
    double lip = 0.0;    ///< height of the nozzle's lip
    std::array<HeadStation, 8> stations; ///< tank, screen, tap, filter, hose, needle, jet, lip
};

/// Where the fuel of a float-bowl machine goes, and which readings tell its head there.
///
/// The engine draws in a share of its cycle only; the nozzle's head is the mean over the cycle.
/// One density, that of the fuel in the bowl, serves the whole path: a hose a few degrees from the
/// tank would else show a step where nothing restricts.
/// source:  hydraulic grade line, textbook definition
class FuelPath {
public:
    /// throws:  RequestError when the machine has no such path
    explicit FuelPath(const sim::Simulator& machine);

    /// unit:    values in SI, in the order of the machine's readings
    [[nodiscard]] FuelHeads heads(std::span<const double> values, sim::Vector up) const;

private:
    struct Indices {
        std::size_t screen;
        std::size_t tap;
        std::size_t filter;
        std::size_t outlet;
        std::size_t inlet;
        std::size_t bowl_pressure;
        std::size_t bowl_level;
        std::size_t bowl_temperature;
        std::size_t column;
        std::size_t nozzle_pressure;
    };

    [[nodiscard]] double bowl_surface(double level, sim::Vector up) const;

    Indices at_;
    sim::Density density_;
    sim::Box bowl_;
    double zero_level_ = 0.0;
    sim::Vector datum_; ///< middle of the healthy shut-off level
    sim::Vector outlet_;
    sim::Vector seat_;
    sim::Vector jet_;
    double lip_ = 0.0;
    double duty_ = 1.0;
};

} // namespace scenes
