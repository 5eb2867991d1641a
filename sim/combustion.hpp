#pragma once

#include "room.hpp"

// What a spark-ignition cylinder makes of its charge, for engines of two and of four strokes.

namespace sim {

/// Share of mixtures of this equivalence ratio that a good spark lights.
/// source:  misfire at excess air 0.55 to 0.6 and 1.25 to 1.4 (from memory)
template <class S>
S flammable_share(const S& richness)
{
    return smooth_step(richness, 0.70, 0.82) * (1.0 - smooth_step(richness, 1.75, 2.5));
}

/// Share of the sparks that a wetted or sooted plug still gives.
template <class S>
S plug_share(const S& wetness, const S& soot)
{
    return (1.0 - smooth_step(wetness, 0.7, 1.2)) * (1.0 - 0.6 * smooth_step(soot, 0.8, 1.6));
}

/// Fuel that burns, as a share of the fuel there is: all of it up to what the air can take, less
/// when rich; near the turn some of both is left over.
template <class S>
S burnt_share(const S& richness)
{
    const S two = richness * richness;
    const S eight = two * two * two * two;
    return 1.0 / sqrt(sqrt(sqrt(1.0 + eight)));
}

/// Work from a charge of this richness over that from a stoichiometric one: lean charges burn
/// slowly and late.
template <class S>
S lean_slowness(const S& richness)
{
    return 1.0 - 0.25 * (1.0 - smooth_step(richness, 0.75, 1.0));
}

/// Share of the liquid fuel reaching a cylinder that evaporates on its metal in time to burn.
///
/// A cold cylinder evaporates little, one that has just fired, most of it. Stale fuel, its light
/// ends gone, evaporates less of itself.
///
/// fired:   0 before the first fire to 1 when firing
/// source:  shape after cold-start enrichment practice, coefficients chosen (no source)
template <class S>
S evaporated_share(const S& head_temperature, const S& fired, const S& reid)
{
    const S metal = 0.45 + 0.005 * (head_temperature - 293.15) + 0.25 * log(reid * (1.0 / 62.1e3));
    return smooth_clamp(metal + 0.5 * fired, 0.1, 1.0, 0.03);
}

/// Friction of a cold engine over that of a warm one.
template <class S>
S cold_friction(const S& head_temperature)
{
    return 1.0 + 0.008 * positive_part(333.0 - head_temperature, 5.0);
}

/// What people read of an engine.
struct EngineView {
    double speed;
    double least_speed; ///< under which no mixture is told
    double air;         ///< kg/s
    double fuel;        ///< kg/s
    double load_torque;
    double head_temperature;
    double richness;
};

/// Declares the seven readings that every engine has.
inline void give_engine_readings(Wiring& w)
{
    w.reading("speed", "rpm");
    w.reading("air_fuel_ratio", "");
    w.reading("power", "W");
    w.reading("head_temperature", "degC");
    w.reading("torque", "N m");
    w.reading("excess_air", "");
    w.reading("fuel_rate", "g/s");
}
inline constexpr std::size_t engine_readings = 7;

/// Puts them, in that order.
inline void show_engine(const EngineView& engine, double* shown)
{
    const bool turning = engine.speed > engine.least_speed;
    shown[0] = engine.speed;
    shown[1] = turning ? std::min(engine.air / (engine.fuel + 1e-9), 99.0) : 0.0;
    shown[2] = engine.load_torque * engine.speed;
    shown[3] = engine.head_temperature;
    shown[4] = engine.load_torque;
    shown[5] = turning ? std::min(1.0 / (engine.richness + 1e-3), 99.0) : 0.0;
    shown[6] = engine.fuel;
}

} // namespace sim
