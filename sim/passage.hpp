#pragma once

#include "flow_law.hpp"
#include "part.hpp"

// What every passage between two chambers has in common: it hands on what covers its upstream end.

namespace sim {

/// What a passage reads of the chamber at each end, in this order.
///
/// fill and water are volumes of liquid (water included) and of water as shares of the chamber;
/// air and vapour are the molar shares of its gas; light the mass share of the fuel that can
/// still leave as vapour.
template <class S>
struct Contents {
    S pressure;
    S fill;
    S water;
    S air;
    S vapour;
    S light;
    S temperature;
};
inline constexpr std::size_t contents_count = 7;
/// Where the temperature stands among them.
inline constexpr std::size_t contents_temperature = 6;

template <class S, std::size_t N>
Contents<S> contents_at(const std::array<S, N>& in, std::size_t first)
{
    return {in[first],     in[first + 1], in[first + 2], in[first + 3],
            in[first + 4], in[first + 5], in[first + 6]};
}

/// Adds the seven readings of the chamber under `role` to a part's inputs.
inline void read_contents(Wiring& w, std::string_view role)
{
    for (const char* name : {"pressure", "fill", "water_fill", "air_share", "vapour_share",
                             "light_share", "temperature"}) {
        w.read(w.of(role, name));
    }
}

/// Adds the five flows from role `a` to role `b` to what a part gives: fuel (light ends within it),
/// light ends, water in kg/s; air and vapour in mol/s.
inline void give_contents(Wiring& w, std::string_view a, std::string_view b)
{
    for (const char* name : {"fuel", "light", "water", "air", "vapour"}) {
        w.flow_between(name, a, b);
    }
}

/// The liquid at a port and the push it gives.
template <class S>
struct PortView {
    S cover; ///< share of the port under liquid
    S water; ///< share of that liquid which is water
    S fuel;  ///< and which is fuel
    S push;  ///< pressure at the port
};

/// Looks at a port of height `height` through the chamber's contents, the port `raised` by a height
/// over the place that `port` stands for.
template <class S>
PortView<S> view_moving_port(const Port& port, const S& raised, double height, const Contents<S>& c,
                             const S& density)
{
    // Whatever the port's place: an empty chamber has no liquid to give, a full one no gas, and
    // one layer is no more than there is of it.
    const S over = port.rise * c.fill + port.offset - raised;
    const S water_over = port.rise * c.water + port.offset - raised;
    const S wet = smooth_step(c.fill, 0.0, 2e-3);
    const S dry = smooth_step(1.0 - c.fill, 0.0, 1e-2);
    const S has_water = smooth_step(c.water, 0.0, 2e-3);
    const S has_fuel = smooth_step(c.fill - c.water, 0.0, 2e-3);
    const S lower = smooth_step(water_over, 0.0, height);
    const S fuel_weight = has_fuel * (1.0 - lower);
    const S water_weight = has_water * (lower + 1e-6);
    const S share = water_weight / (fuel_weight + water_weight + 1e-24);
    return {wet * (1.0 - dry * (1.0 - smooth_step(over, 0.0, height))), share, 1.0 - share,
            c.pressure + density * gravity * positive_part(over, 0.25 * height)};
}

/// Looks at a port of height `height` through the chamber's contents.
template <class S>
PortView<S> view_port(const Port& port, double height, const Contents<S>& c, const S& density)
{
    if (port.mixed) {
        const S share = c.water / (c.fill + 1e-6);
        return {c.fill, share, 1.0 - share, c.pressure + density * c.fill * (gravity * port.rise)};
    }
    const S still = c.fill * 0.0;
    return view_moving_port(port, still, height, c, density);
}

/// Puts a passage's five flows at the head of a part's numbers, in the order of `give_contents`.
template <class Flow, class S, std::size_t N>
void put_flow(const Flow& flow, std::array<S, N>& out)
{
    static_assert(N >= 5);
    out[0] = flow.fuel;
    out[1] = flow.light;
    out[2] = flow.water;
    out[3] = flow.air;
    out[4] = flow.vapour;
}

/// What is at the two ends of a passage.
template <class S>
struct PassageEnds {
    Contents<S> a;
    Contents<S> b;
    PortView<S> at_a;
    PortView<S> at_b;
};

/// What flows through a passage, positive from a to b.
template <class S>
struct PassageFlow {
    S fuel;
    S light;
    S water;
    S air;
    S vapour;
    S drop;   ///< pressure difference, ends' heads included
    S volume; ///< liquid volume flow
};

/// The numbers of a passage that do not change within a step.
struct PassageShape {
    double port_height = 2e-3;
    double capillary_bore = 1.0; ///< bore whose wetting holds off gas; 1 m means it does not matter
    double wetting = 1.0; ///< share of liquid at the far end from which on the bore is wet all over
    FuelBlend fuel;
};

/// Looks at a port of a passage.
template <class S>
PortView<S> look(const PassageShape& shape, const Port& port, const Contents<S>& c)
{
    return view_port(port, shape.port_height, c, fuel_density(shape.fuel.density, c.temperature));
}

/// The two ports of a passage whose part reads the contents under roles `a` and `b` before all else
/// and gives the flows between them before all else.
struct PortPair {
    void wire(Wiring& w, std::string_view point_a, std::string_view point_b)
    {
        place_a = w.port("a", point_a);
        place_b = w.port("b", point_b);
        read_contents(w, "a");
        read_contents(w, "b");
        give_contents(w, "a", "b");
    }

    void find(const Vector& up)
    {
        a = find_port(place_a, up);
        b = find_port(place_b, up);
    }

    template <class S, std::size_t N>
    [[nodiscard]] PassageEnds<S> look(const PassageShape& shape, const std::array<S, N>& in) const
    {
        const Contents<S> in_a = contents_at(in, 0);
        const Contents<S> in_b = contents_at(in, contents_count);
        return {in_a, in_b, sim::look(shape, a, in_a), sim::look(shape, b, in_b)};
    }

    /// Pressure at the port of role `a`, for people.
    [[nodiscard]] double push_at_a(const PassageShape& shape, const double* in) const
    {
        std::array<double, contents_count> contents{};
        std::copy_n(in, contents_count, contents.begin());
        return sim::look(shape, a, contents_at(contents, 0)).push;
    }

    PortPlace place_a;
    PortPlace place_b;
    Port a;
    Port b;
};

/// Half width, Pa, of the turn from one upstream end to the other: within it the resistance is a
/// blend of both ends', so that the volume flow is smooth through zero.
inline constexpr double turn_width = 2.0;
/// Width, Pa, of the corner where a meniscus gives way.
inline constexpr double meniscus_width = 2.0;

/// Flow between two port views.
///
/// The flow is that of one mixture, made of what covers the upstream end; the volume flow law is
/// `series_flow`. Gas pushing at a wet far side must first open a meniscus of 4 sigma / bore, and a
/// bead of water in fuel (or fuel in water) another.
/// source:  homogeneous mixture law; Young-Laplace for the menisci
template <class S, class R>
PassageFlow<S> passage_flow(const PassageShape& shape, const Resistance<R>& resistance,
                            const Contents<S>& a, const PortView<S>& at_a, const Contents<S>& b,
                            const PortView<S>& at_b)
{
    const S drop = at_a.push - at_b.push;
    const bool forward = value_of(drop) >= 0.0;
    const Contents<S>& up = forward ? a : b;
    const PortView<S>& from = forward ? at_a : at_b;
    const S& far = forward ? at_b.cover : at_a.cover;
    const S& liquid = from.cover;
    const S& water = from.water;
    const S& temperature = up.temperature;
    const S gas = 1.0 - liquid;

    const S fuel_rho = fuel_density(shape.fuel.density, temperature);
    const S liquid_rho = fuel_rho + water * (water_density - fuel_rho);
    const S gas_rho = air_density(up.pressure, temperature);
    const S from_a = smooth_step(drop, -turn_width, turn_width);
    const S wet = at_b.cover + from_a * (at_a.cover - at_b.cover);
    const S rho = gas_rho + wet * (liquid_rho - gas_rho);
    const S liquid_mu = fuel_viscosity(shape.fuel.viscosity, temperature);
    const S gas_mu = air_viscosity(temperature);
    const S mu = gas_mu + wet * (liquid_mu - gas_mu);

    const S bead = 4.0 * water * (1.0 - water) * (4.0 * water_bead_tension / shape.capillary_bore);
    const S film = shape.wetting < 1.0 ? smooth_step(far, 0.0, shape.wetting) : far;
    const S meniscus = gas * film * (4.0 * fuel_surface_tension / shape.capillary_bore);
    const S band = bead * liquid + meniscus;
    const S driving = dead_band(drop, band, meniscus_width);
    const S flow = series_flow(resistance, driving, rho, mu);

    const S liquid_flow = flow * liquid;
    const S gas_moles = flow * gas * up.pressure / (gas_constant * temperature);
    const S fuel_flow = liquid_flow * from.fuel * fuel_rho;
    return {fuel_flow,          fuel_flow * up.light,  liquid_flow * water * water_density,
            gas_moles * up.air, gas_moles * up.vapour, drop,
            liquid_flow};
}

template <class S, class R>
PassageFlow<S> passage_flow(const PassageShape& shape, const Resistance<R>& resistance,
                            const PassageEnds<S>& ends)
{
    return passage_flow(shape, resistance, ends.a, ends.at_a, ends.b, ends.at_b);
}

} // namespace sim
