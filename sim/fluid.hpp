#pragma once

#include "smooth.hpp"
#include "units.hpp"

namespace sim {

/// Standard acceleration of free fall, m/s2.
/// source:  ISO 80000-3
inline constexpr double gravity = 9.80665;
/// Molar gas constant, J/(mol K).
/// source:  SI Brochure, 9th ed. 2019
inline constexpr double gas_constant = 8.31446261815324;
/// Molar mass of dry air, kg/mol.
/// source:  ISO 2533
inline constexpr double air_molar_mass = 28.9644e-3;
/// Molar mass of gasoline vapour near 60 degF and 9 psi Reid, kg/mol.
/// source:  US EPA AP-42 5th ed. ch. 7.1 table 7.1-2 (68 at Reid 7, 66 at 10, 62 at 13)
inline constexpr double vapour_molar_mass = 67e-3;
/// Density of water at 20 degC, kg/m3, taken constant: from 0 to 50 degC it is within 1.1 %.
/// source:  IAPWS-95, 999.8 at 0 degC, 988.0 at 50 degC (from memory)
inline constexpr double water_density = 998.2;
/// Surface tension between gasoline and air, N/m.
/// source:  within the isooctane to toluene bracket 18.8 to 28.5 mN/m, Mulero and Cachadina
inline constexpr double fuel_surface_tension = 0.022;
/// Heat of vaporisation of whole gasoline, J/kg. From memory, within 330 to 370 kJ/kg.
inline constexpr double heat_of_vaporisation = 350e3;
/// Surface tension between gasoline and water, N/m. From memory.
inline constexpr double water_bead_tension = 0.040;

/// A gasoline as bought, with what age has made of it.
struct FuelBlend {
    /// Reid vapour pressure at 37.8 degC; valid 1 to 110 kPa.
    Pressure reid_pressure{62.1e3};
    /// Density at 15 degC; valid 650 to 800 kg/m3.
    Density density{745.0};
    /// Viscosity at 20 degC.
    Viscosity viscosity{0.50e-3};
    /// Volume share of ethanol, 0 to 0.85.
    Ratio ethanol{0.0};
    /// Share of the mass that can leave as vapour before the Reid pressure is gone.
    Ratio light_share{0.30};
    /// Film of gum on every bore, as a length taken off the radius.
    Length gum{0.0};
};

/// Vapour pressure of a gasoline of Reid pressure `reid`, both in Pa.
///
/// unit:    temperature in K, result in Pa
/// valid:   250 to 340 K, Reid 5 to 110 kPa; the distillation slope is 3.0
/// source:  US EPA AP-42 5th ed. vol. I ch. 7.1, figures 7.1-14b and 7.1-15
template <class S>
S gasoline_vapour_pressure(const S& temperature, const S& reid)
{
    constexpr double psi = 6894.757293168;
    constexpr double root_slope = 1.7320508075688772;
    const S log_reid = log(reid * (1.0 / psi));
    const S a = 15.64 - 1.854 * root_slope - (0.8742 - 0.3280 * root_slope) * log_reid;
    const S b = 8742.0 - 1042.0 * root_slope - (1049.0 - 179.4 * root_slope) * log_reid;
    return psi * exp(a - b / (temperature * 1.8));
}

/// Density of a liquid fuel at a temperature, from its density at 15 degC.
///
/// unit:    kg/m3, K
/// valid:   653 to 770 kg/m3, 250 to 340 K
/// source:  API MPMS 11.1 / ASTM D1250-80, gasoline constants K0 346.4228, K1 0.4388
template <class S>
S fuel_density(Density at_15_celsius, const S& temperature)
{
    const double rho = at_15_celsius.si;
    const double alpha = 346.4228 / (rho * rho) + 0.4388 / rho;
    const S step = alpha * (temperature - 288.15);
    return rho * exp(-step * (1.0 + 0.8 * step));
}

/// Viscosity of a liquid fuel at a temperature, from its viscosity at 20 degC.
///
/// The slope of 1008 K gives the ratios 1.48 at -10 degC and 0.80 at 40 degC.
/// source:  Andrade's law fitted to isooctane and n-heptane, Perry 8th ed. table 2-313
template <class S>
S fuel_viscosity(Viscosity at_20_celsius, const S& temperature)
{
    return at_20_celsius.si * exp(1008.0 / temperature - 1008.0 / 293.15);
}

/// Viscosity of air near room temperature, Pa s, a straight line near Sutherland's law.
///
/// valid:   250 to 340 K within 0.5 %
/// source:  fitted to U.S. Standard Atmosphere 1976, eq. 51
template <class S>
S air_viscosity(const S& temperature)
{
    return 1.813e-5 + 4.8e-8 * (temperature - 293.15);
}

/// Density of dry air as an ideal gas, kg/m3.
template <class S>
S air_density(const S& pressure, const S& temperature)
{
    return pressure * (air_molar_mass / gas_constant) / temperature;
}

/// Air a kilogram of C(1) H(h) O(o) needs to burn completely, kg/kg.
///
/// source:  oxygen 20.946 mol % of dry air (ISO 2533); element masses IUPAC
double stoichiometric_ratio(double hydrogen_per_carbon, double oxygen_per_carbon);

/// The same for a blend of gasoline CH1.87 and ethanol C2H6O; the blend's own density turns the
/// volume share of ethanol (794 kg/m3) into a mass share.
double stoichiometric_ratio(const FuelBlend& fuel);

/// Heat a kilogram of the blend gives when it burns to vapour, J/kg.
///
/// source:  gasoline 43.4 MJ/kg (from memory, 42 to 44), ethanol 26.81 MJ/kg (CRC enthalpies)
double lower_heating_value(const FuelBlend& fuel);

/// Pressure and temperature of the standard atmosphere at a geopotential height.
///
/// valid:   0 to 11 km
/// source:  ISO 2533
struct StandardAir {
    AbsolutePressure pressure;
    Temperature temperature;
    Density density;
};
StandardAir standard_air(Length height);

/// Saturation pressure of water vapour over liquid water.
///
/// valid:   273 to 373 K
/// source:  W. Wagner, A. Pruss, J. Phys. Chem. Ref. Data 31 (2002) 387, eq. 2.5 (IAPWS-95)
AbsolutePressure water_vapour_pressure(Temperature temperature);

} // namespace sim
