#include "fluid.hpp"

#include <array>
#include <cmath>

namespace sim {
namespace {

// Molar masses in kg/mol. source: IUPAC standard atomic weights 2021, abridged
constexpr double carbon = 12.011e-3;
constexpr double hydrogen = 1.008e-3;
constexpr double oxygen = 15.999e-3;
/// Share of oxygen molecules in dry air. source: ISO 2533
constexpr double oxygen_share = 0.20946;

/// Density of ethanol at 15 degC, kg/m3. source: within 0.1 % of Perry 8th ed. table 2-32
constexpr double ethanol_density = 794.0;

double ethanol_mass_share(const FuelBlend& fuel)
{
    return fuel.ethanol.si * ethanol_density / fuel.density.si;
}

double mix(double gasoline, double ethanol, const FuelBlend& fuel)
{
    return gasoline + (ethanol - gasoline) * ethanol_mass_share(fuel);
}

} // namespace

double stoichiometric_ratio(double hydrogen_per_carbon, double oxygen_per_carbon)
{
    // C H(h) O(o) + (1 + h/4 - o/2) O2 -> CO2 + h/2 H2O
    const double oxygen_needed = 1.0 + hydrogen_per_carbon / 4.0 - oxygen_per_carbon / 2.0;
    const double fuel_mass = carbon + hydrogen * hydrogen_per_carbon + oxygen * oxygen_per_carbon;
    return oxygen_needed / oxygen_share * air_molar_mass / fuel_mass;
}

double stoichiometric_ratio(const FuelBlend& fuel)
{
    return mix(stoichiometric_ratio(1.87, 0.0), stoichiometric_ratio(3.0, 0.5), fuel);
}

double lower_heating_value(const FuelBlend& fuel)
{
    return mix(43.4e6, 26.81e6, fuel);
}

StandardAir standard_air(Length height)
{
    constexpr double ground_temperature = 288.15;
    constexpr double ground_pressure = 101325.0;
    constexpr double lapse = 6.5e-3;
    constexpr double specific_gas = 287.05287;
    const double temperature = ground_temperature - lapse * height.si;
    const double pressure = ground_pressure * std::pow(temperature / ground_temperature,
                                                       gravity / (specific_gas * lapse));
    return {{pressure}, {temperature}, {pressure / (specific_gas * temperature)}};
}

AbsolutePressure water_vapour_pressure(Temperature temperature)
{
    constexpr double critical_temperature = 647.096;
    constexpr double critical_pressure = 22.064e6;
    struct Term {
        double factor;
        double exponent;
    };
    constexpr std::array terms{Term{-7.85951783, 1.0}, Term{1.84408259, 1.5},
                               Term{-11.7866497, 3.0}, Term{22.6807411, 3.5},
                               Term{-15.9618719, 4.0}, Term{1.80122502, 7.5}};
    const double below = 1.0 - temperature.si / critical_temperature;
    double sum = 0.0;
    for (const Term& term : terms) {
        sum += term.factor * std::pow(below, term.exponent);
    }
    return {critical_pressure * std::exp(critical_temperature / temperature.si * sum)};
}

} // namespace sim
