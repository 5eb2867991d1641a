#pragma once

#include "sim/simulator.hpp"

#include <optional>
#include <string_view>
#include <vector>

namespace scenes {

/// The readings of a machine at one instant, by name, in SI (pressures gauge).
class MachineView {
public:
    explicit MachineView(const sim::Simulator& machine) : readings_(&machine.readings()) {}

    /// Takes all readings now, and the positions of the controls.
    void take(sim::Simulator& machine);

    /// The reading of a name, or nothing when the machine has none.
    [[nodiscard]] const sim::Network::Reading* find(std::string_view name) const;
    /// A parameter as it stands now, and as the healthy machine came.
    ///
    /// unit:    SI
    /// valid:   after `take`, for a part and parameter of the rig
    [[nodiscard]] bool has_parameter(std::string_view part, std::string_view name) const;
    [[nodiscard]] double parameter(std::string_view part, std::string_view name) const;
    [[nodiscard]] double healthy(std::string_view part, std::string_view name) const;
    /// The fuel in the machine as it stands now.
    ///
    /// valid:   after `take`
    [[nodiscard]] const sim::FuelBlend& fuel() const { return machine_->surroundings().fuel; }

    /// throws:  sim::RequestError when there is no such reading or control
    [[nodiscard]] double reading(std::string_view name) const;
    [[nodiscard]] double control(std::string_view name) const;
    /// How much of the pull cord is out: what a hand holds, else what a pull has brought out.
    ///
    /// unit:    metres, of a cord of this length
    [[nodiscard]] double cord_out(double length) const;
    void hold_cord(std::optional<double> out) { cord_in_hand_ = out; }
    [[nodiscard]] const std::vector<double>& values() const { return values_; }
    [[nodiscard]] double seconds() const { return seconds_; }

private:
    [[nodiscard]] const double* healthy_parameter(std::string_view part,
                                                  std::string_view name) const;

    const std::vector<sim::Network::Reading>* readings_;
    sim::Simulator* machine_ = nullptr; ///< last taken from
    std::vector<double> values_;
    std::vector<std::pair<std::string, double>> controls_;
    double seconds_ = 0.0;
    std::optional<double> cord_in_hand_;
};

} // namespace scenes
