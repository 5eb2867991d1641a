#include "scenes/present/engine_ear.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <string>

namespace scenes {
namespace {

struct EngineKind {
    std::string_view kind;
    double turns_per_firing;
};
constexpr std::array engine_kinds{EngineKind{"engine", 2.0}, EngineKind{"two_stroke", 1.0}};

constexpr double air_of_a_room = 1.2; ///< kg/m3
/// The engine that the exhaust's tones are given for.
constexpr double tuned_displacement = 190e-6;

} // namespace

EngineEar::EngineEar(const sim::Simulator& machine)
{
    for (const sim::PartSpec& part : machine.rig().parts) {
        const auto* const kind = std::ranges::find(engine_kinds, part.kind, &EngineKind::kind);
        if (kind == engine_kinds.end()) {
            continue;
        }
        const auto index = [&](const char* name) {
            return machine.reading_index(part.id + "." + name);
        };
        turns_per_firing_ = kind->turns_per_firing;
        speed_ = index("speed");
        ratio_ = index("air_fuel_ratio");
        fuel_rate_ = index("fuel_rate");
        excess_air_ = index("excess_air");
        burning_ = index("burning");
        const auto angle = std::ranges::find(machine.readings(), part.id + ".crank_angle",
                                             &sim::Network::Reading::name);
        if (angle != machine.readings().end()) {
            crank_angle_ = static_cast<std::size_t>(angle - machine.readings().begin());
        }
        const double displacement = part.parameters.at("displacement");
        full_charge_ = displacement * air_of_a_room;
        size_ = std::cbrt(tuned_displacement / displacement);
        rated_speed_ = part.parameters.at("rated_speed");
        return;
    }
}

EngineMoment EngineEar::hear(std::span<const double> values, double seconds, double pace) const
{
    EngineMoment moment{.seconds = seconds};
    if (!has_engine()) {
        return moment;
    }
    const double speed = values[speed_];
    const double charges = speed / (2.0 * std::numbers::pi * turns_per_firing_);
    const double air = values[ratio_] * values[fuel_rate_];
    moment.speed = speed * pace;
    moment.load = charges > 0.5 ? std::clamp(air / (charges * full_charge_), 0.0, 1.0) : 0.0;
    moment.burning = std::clamp(values[burning_], 0.0, 1.0);
    moment.richness = 1.0 / std::clamp(values[excess_air_], 0.2, 10.0);
    if (crank_angle_) {
        moment.crank_angle = values[*crank_angle_];
    }
    return moment;
}

} // namespace scenes
