#pragma once

#include "flow_law.hpp"
#include "passage.hpp"

// Mixture that goes one way through a port of a two-stroke: air, vapour, and the liquid it sweeps.

namespace sim {

/// What a port reads of the room it draws from: contents, and the kilograms of liquid in it.
template <class S>
struct Mixture {
    S pressure;
    S air;
    S vapour;
    S temperature;
    S fuel;
    S light;
    S water;
};
inline constexpr std::size_t mixture_count = 7;

template <class S, std::size_t N>
Mixture<S> mixture_at(const std::array<S, N>& in, std::size_t first)
{
    return {in[first],     in[first + 1], in[first + 2], in[first + 3],
            in[first + 4], in[first + 5], in[first + 6]};
}

/// Adds the seven numbers of the room under `role` to a part's inputs.
inline void read_mixture(Wiring& w, std::string_view role)
{
    for (const char* name :
         {"pressure", "air_share", "vapour_share", "temperature", "fuel", "light", "water"}) {
        w.read(w.of(role, name));
    }
}

/// Flows through a port, in kg/s and mol/s.
template <class S>
struct Breath {
    S fuel;
    S light;
    S water;
    S air;
    S vapour;
};

/// One-way flow from a room of mixture to a pressure behind it.
///
/// Fuel on the walls goes with the air in proportion to the volume that passes: `sweep` is the
/// volume of air that takes all but 1/e of it along.
///
/// area:    effective (Cd A); the caller brings it to nothing against the way of the port
template <class S>
Breath<S> breathe(const Mixture<S>& from, const S& to, const S& area, double sweep)
{
    const S mass = isentropic_flow(area, from.pressure, to, 320.0, 1e-4);
    const S moles = mass * (1.0 / air_molar_mass);
    const S pace = moles * from.temperature * gas_constant / (from.pressure + 1.0) * (1.0 / sweep);
    return {from.fuel * pace, from.light * pace, from.water * pace, moles * from.air,
            moles * from.vapour};
}

} // namespace sim
