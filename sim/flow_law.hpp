#pragma once

#include "fluid.hpp"

namespace sim {

/// The two terms of a restriction, dp = a Q + b Q |Q|, written for an area that may be zero.
///
/// With `a = 8 pi mu L / A^2` (Hagen-Poiseuille in a round bore of area A) and
/// `b = rho / (2 (Cd A)^2)` (orifice), both carry 1/A^2; keeping A^2 apart lets A go to nothing.
struct Restriction {
    double length = 2e-3;
    double discharge = 0.62;
};

/// Volume flow through a hole of area `area` under a pressure difference `drop`.
///
/// Q = 2 A^2 dp / (8 pi mu L + sqrt((8 pi mu L)^2 + 2 rho A^2 |dp| / Cd^2)); odd in `drop`, finite
/// slope at zero, zero when the area is zero.
///
/// unit:    Pa, m2, kg/m3, Pa s -> m3/s
/// sign:    positive where `drop` is
/// valid:   length and viscosity above zero
/// source:  R. B. Bird, W. E. Stewart, E. N. Lightfoot, Transport Phenomena, eq. 2.3-21 for the
///          laminar term; orifice equation as in ISO 5167-2 for beta -> 0
template <class S>
S hole_flow(const Restriction& hole, const S& drop, const S& area, const S& density,
            const S& viscosity)
{
    constexpr double eight_pi = 25.132741228718345;
    const S laminar = viscosity * (eight_pi * hole.length);
    const S area_squared = area * area;
    const S inertial =
        area_squared * density * abs(drop) * (2.0 / (hole.discharge * hole.discharge));
    return 2.0 * area_squared * drop / (laminar + sqrt(laminar * laminar + inertial));
}

/// What a run of restrictions in series adds up to: drop = mu laminar Q + rho inertial Q |Q|.
///
/// unit:    1/m3 and 1/m4
template <class S>
struct Resistance {
    S laminar{};
    S inertial{};
};

/// Smallest area squared, m4, that a shut hole keeps: under 1e-9 mL/s at 1 kPa, and no division by
/// nothing.
inline constexpr double shut_area_squared = 1e-30;

/// One hole's resistance.
template <class S>
Resistance<S> hole_resistance(const Restriction& hole, const S& area)
{
    constexpr double eight_pi = 25.132741228718345;
    const S inverse = 1.0 / (area * area + shut_area_squared);
    return {inverse * (eight_pi * hole.length),
            inverse * (0.5 / (hole.discharge * hole.discharge))};
}

template <class S>
Resistance<S> operator+(const Resistance<S>& x, const Resistance<S>& y)
{
    return {x.laminar + y.laminar, x.inertial + y.inertial};
}

/// Volume flow through a resistance; `hole_flow` for any number of holes in a row.
template <class S, class R>
S series_flow(const Resistance<R>& r, const S& drop, const S& density, const S& viscosity)
{
    const S laminar = viscosity * r.laminar;
    return 2.0 * drop /
           (laminar + sqrt(laminar * laminar + 4.0 * density * r.inertial * abs(drop)));
}

/// Ratio of specific heats of air.
inline constexpr double air_gamma = 1.4;
/// Outlet to inlet pressure below which a hole passes no more air.
/// source:  isentropic flow, (2/(gamma+1))^(gamma/(gamma-1))
inline constexpr double critical_pressure_ratio = 0.5282817877171742;
/// Square of the flow function at and below the critical ratio, 1.4 (5/6)^6.
/// source:  isentropic flow, gamma (2/(gamma+1))^((gamma+1)/(gamma-1))
inline constexpr double choked_function_squared = 1.4 * 15625.0 / 46656.0;

/// Square of the isentropic flow function: (m sqrt(R T0) / (A p0))^2 at outlet/inlet ratio r.
///
/// Constant below the critical ratio (choked); close to 2 (1 - r) near r = 1.
///
/// valid:   r up to 1
/// source:  J. B. Heywood, Internal Combustion Engine Fundamentals, app. C (from memory)
template <class S>
S isentropic_function_squared(const S& ratio)
{
    constexpr double factor = 2.0 * air_gamma / (air_gamma - 1.0);
    if (value_of(ratio) <= critical_pressure_ratio) {
        const S zero = ratio * 0.0;
        return zero + choked_function_squared;
    }
    const S log_ratio = log(ratio);
    return factor *
           (exp(log_ratio * (2.0 / air_gamma)) - exp(log_ratio * ((air_gamma + 1.0) / air_gamma)));
}

/// Mass flow of air from pressure `inlet` to `outlet` through an effective area (Cd A).
///
/// The square root is rounded near equal pressures: the flow is 16 % low at a ratio of
/// 1 - `ratio_width`, under 1 % low from five widths on, and falls to zero with a finite slope.
/// Swapping the pressures mirrors the flow.
///
/// unit:    m2, Pa, K -> kg/s; the temperature is that of the side the air comes from
/// sign:    positive from inlet to outlet
template <class S>
S isentropic_flow(const S& effective_area, const S& inlet, const S& outlet, double temperature,
                  double ratio_width)
{
    constexpr double gas = gas_constant / air_molar_mass;
    const bool backward = value_of(outlet) > value_of(inlet);
    const S& high = backward ? outlet : inlet;
    const S& low = backward ? inlet : outlet;
    const S square = isentropic_function_squared(low / high);
    const S rooted = square / sqrt(sqrt(square * square + 4.0 * ratio_width * ratio_width));
    const double sign = backward ? -1.0 : 1.0;
    return effective_area * high * rooted * (sign / std::sqrt(gas * temperature));
}

/// Darcy friction factor of a pipe at every Reynolds number.
///
/// source:  S. W. Churchill, Chem. Eng. 84 (1977) 91
double pipe_friction_factor(double reynolds, double relative_roughness);

/// Discharge coefficient of a square-edged hole some diameters long; Reynolds number on the
/// diameter of the hole.
///
/// valid:   Reynolds 10 to 2e4, length over diameter 2 to 10, within 0.02
/// source:  Lichtarowicz, Duggins and Markland, J. Mech. Eng. Sci. 7 (1965) 210, eqs 7 and 12
double long_hole_discharge(double reynolds, double length_over_diameter);

} // namespace sim
