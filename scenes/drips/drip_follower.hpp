#pragma once

#include "scenes/drips/drips.hpp"
#include "sim/simulator.hpp"

#include <optional>
#include <string>
#include <vector>

namespace scenes {

/// Which reading tells what comes out at a mouth of the ground.
struct DripMouth {
    std::string reading;  ///< "part.flow", m3/s of fuel
    double outward = 1.0; ///< sign it has when fuel leaves; 0: no reading tells it
};

/// Drops that follow a machine: its floor gains what they carry.
class DripFollower {
public:
    /// A rig without a floor has no drops.
    ///
    /// shape:   one entry per mouth of the ground
    DripFollower(const sim::Rig& rig, const DripGround& ground, std::vector<DripMouth> mouths);

    /// Another run: whatever leaked in it so far lies where its leaks of now make it lie.
    void begin(sim::Simulator& machine, std::span<const double> values);
    /// Goes on to where the machine is. A clock that goes back or leaps clears the drops.
    ///
    /// unit:    values in SI, in the order of the machine's readings
    void follow(sim::Simulator& machine, std::span<const double> values);

    /// Lets fuel that no machine lost run from every mouth: what the drops cost can be measured.
    ///
    /// unit:    kilograms, at each mouth
    void shed(double kg);
    [[nodiscard]] const std::optional<Drips>& drips() const { return drips_; }

private:
    void look_at_attitude(const sim::Simulator& machine);
    void look_at_flows(const sim::Simulator& machine, std::span<const double> values);
    void rebuild(double leaked);
    void share(double gained, double seconds);

    std::vector<DripMouth> mouths_;
    std::optional<Drips> drips_;
    std::vector<double> flows_;  ///< kg/s out of each mouth
    std::vector<double> masses_; ///< kg of this step
    double density_ = 745.0;     ///< kg/m3
    double shed_ = 0.0;          ///< kg that no machine lost
    double seconds_ = 0.0;
};

} // namespace scenes
