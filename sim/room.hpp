#pragma once

#include "part.hpp"

// What every chamber has in common: five contents, and the pressure they come to.

namespace sim {

/// The order of a chamber's states: kg of fuel, of it light ends, water; mol of air, fuel vapour.
enum RoomState : std::size_t {
    room_fuel,
    room_light,
    room_water,
    room_air,
    room_vapour,
    room_states
};

/// The size and walls of a chamber.
struct Room {
    double volume = 1e-6;
    double compliance = 1e-13;
    double wetted_area = 0.0;    ///< liquid surface that evaporates, m2
    double evaporation = 2.5e-6; ///< mol/(s m2 Pa)
    FuelBlend fuel;
};

/// What a chamber publishes, in the order of `Contents`, and how fast its fuel evaporates, mol/s.
template <class S>
struct RoomView {
    S pressure;
    S fill;
    S water_fill;
    S air;
    S vapour;
    S light;
    S evaporation;
};

/// Gas pressure in a chamber whose wall gives `compliance` per pressure.
///
/// The positive root of C p^2 + (V0 - C p_out - V_l) p - n R T = 0: closed form from all gas to
/// brim-full. Written so that neither branch subtracts near-equal numbers.
template <class S>
S gas_pressure(const Room& room, const S& liquid, const S& moles, const S& temperature,
               const S& outside)
{
    const S b = room.volume - room.compliance * outside - liquid;
    const S heat = moles * temperature * gas_constant;
    const S root = sqrt(b * b + 4.0 * room.compliance * heat);
    if (value_of(b) > 0.0) {
        return 2.0 * heat / (b + root);
    }
    return (root - b) * (0.5 / room.compliance);
}

/// The Reid pressure that is left when the light ends are down to a share of the fuel.
///
/// Raoult's law for the light ends as one substance; 10 Pa keep the logarithm finite.
template <class S>
S reid_left(const FuelBlend& fuel, const S& light)
{
    return fuel.reid_pressure.si / fuel.light_share.si * positive_part(light, 1e-4) + 10.0;
}

/// Looks at a chamber's contents, in the order of `RoomState`.
template <class S>
RoomView<S> view_room(const Room& room, const S& fuel, const S& light, const S& water, const S& air,
                      const S& vapour, const S& temperature, const S& outside)
{
    // The stepper may leave a trace less than nothing in an empty chamber; shares must stay shares.
    const double trace = 2e-7 * room.volume;
    const S fuel_there = amount_there(fuel, trace * 745.0);
    const S light_there = amount_there(light, trace * 745.0);
    const S water_there = amount_there(water, trace * 745.0);
    const S air_there = amount_there(air, trace * 41.6);
    const S vapour_there = amount_there(vapour, trace * 41.6);
    const S moles = air_there + vapour_there;
    const S water_volume = water_there * (1.0 / water_density);
    const S liquid = fuel_there / fuel_density(room.fuel.density, temperature) + water_volume;
    const S pressure = gas_pressure(room, liquid, moles, temperature, outside);
    const S share = vapour_there / (moles + trace * 41.6);
    const S light_share = light_there / (fuel_there + trace * 745.0);
    const S gas = moles * temperature * gas_constant / (pressure + 1.0);
    const S whole = liquid + gas + trace;
    const S fill = liquid / whole;
    const S saturated = gasoline_vapour_pressure(temperature, reid_left(room.fuel, light_share));
    // It takes a free surface to evaporate from: liquid, and gas over it. Fuel that would boil
    // makes its own bubbles, slowly.
    const S wet = smooth_step(fill - water_volume / whole, 0.0, 0.03);
    const S free = smooth_step(1.0 - fill, 0.0, 0.02);
    const S boiling = 0.02 * smooth_step(saturated - pressure, 0.0, 5e3);
    const S evaporation = wet * (free + boiling * (1.0 - free)) * (saturated - share * pressure) *
                          (room.evaporation * room.wetted_area);
    return {pressure, fill,        water_volume / whole, air_there / (moles + trace * 41.6),
            share,    light_share, evaporation};
}

/// Declares the five states, named as passages expect them.
void wire_room(Wiring& wiring, Volume volume);
/// Adds the five states to a part's inputs, in the order of `RoomState`.
void read_room(Wiring& wiring);
/// Adds what passages read of a chamber, and its evaporation, to what a part gives: eight numbers
/// in the order of `put_room`.
void give_room(Wiring& wiring);

/// Puts a chamber's view at the head of a part's numbers.
template <class S, std::size_t N>
void put_room(const RoomView<S>& view, const S& temperature, std::array<S, N>& out)
{
    static_assert(N >= 8);
    out[0] = view.pressure;
    out[1] = view.fill;
    out[2] = view.water_fill;
    out[3] = view.air;
    out[4] = view.vapour;
    out[5] = view.light;
    out[6] = temperature;
    out[7] = view.evaporation;
}

/// Fills `states` with air at the surroundings' pressure and a share of liquid fuel.
void shelve_room(const Room& room, const Surroundings& surroundings, double share,
                 std::span<double> states);

} // namespace sim
