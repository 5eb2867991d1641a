#include "units.hpp"

#include "printable.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <numbers>
#include <stdexcept>
#include <system_error>

namespace sim {
namespace {

constexpr double turn = 2.0 * std::numbers::pi;
constexpr double inch = 25.4e-3;
constexpr double us_gallon = 231.0 * inch * inch * inch;
constexpr double pound = 0.45359237;
constexpr double pound_force = pound * 9.80665;

using enum Dimension;

/// Every unit that is read or shown, those of a dimension in the order in which people are told.
///
/// source:  BIPM, SI Brochure, 9th ed. 2019; A. Thompson, B. Taylor, NIST SP 811, 2008, app. B for
///          inch, US gallon, pound, psi, conventional water and mercury columns, horsepower
constexpr auto units = std::to_array<Unit>({
    {"", ratio},
    {"%", ratio, 1e-2},

    {"g", mass, 1e-3},
    {"kg", mass},
    {"mg", mass, 1e-6},

    {"mm", length, 1e-3},
    {"cm", length, 1e-2},
    {"m", length},
    {"um", length, 1e-6},
    {"in", length, inch},
    {"ft", length, 12.0 * inch},

    {"mm2", area, 1e-6},
    {"cm2", area, 1e-4},
    {"m2", area},

    {"mL", volume, 1e-6},
    {"L", volume, 1e-3},
    {"cm3", volume, 1e-6},
    {"cc", volume, 1e-6},
    {"mm3", volume, 1e-9},
    {"m3", volume},
    {"fl oz", volume, us_gallon / 128.0},
    {"gal", volume, us_gallon},

    {"s", duration},
    {"ms", duration, 1e-3},
    {"min", duration, 60.0},
    {"h", duration, 3600.0},
    {"day", duration, 86400.0},

    {"m/s", speed},
    {"mm/s", speed, 1e-3},
    {"km/h", speed, 1.0 / 3.6},

    {"mL/min", volume_flow, 1e-6 / 60.0},
    {"mL/s", volume_flow, 1e-6},
    {"L/h", volume_flow, 1e-3 / 3600.0},
    {"L/min", volume_flow, 1e-3 / 60.0},
    {"m3/s", volume_flow},
    {"fl oz/min", volume_flow, us_gallon / 128.0 / 60.0},

    {"g/min", mass_flow, 1e-3 / 60.0},
    {"g/s", mass_flow, 1e-3},
    {"mg/s", mass_flow, 1e-6},
    {"g/h", mass_flow, 1e-3 / 3600.0},
    {"kg/h", mass_flow, 1.0 / 3600.0},
    {"kg/s", mass_flow},
    {"lb/h", mass_flow, pound / 3600.0},

    {"kg/m3", density},
    {"g/mL", density, 1e3},
    {"kg/L", density, 1e3},

    {"mPa s", viscosity, 1e-3},
    {"Pa s", viscosity},

    {"N", force},
    {"mN", force, 1e-3},

    {"N m", torque},
    {"mN m", torque, 1e-3},
    {"J", torque},
    {"kJ", torque, 1e3},
    {"lbf ft", torque, 12.0 * inch* pound_force},

    {"W", power},
    {"kW", power, 1e3},
    {"hp", power, 550.0 * 12.0 * inch* pound_force},

    {"kPa", pressure, 1e3},
    {"Pa", pressure},
    {"hPa", pressure, 1e2},
    {"mbar", pressure, 1e2},
    {"bar", pressure, 1e5},
    {"psi", pressure, pound_force / (inch * inch)},
    {"mmH2O", pressure, 9.80665},
    {"inH2O", pressure, 25.4 * 9.80665},
    {"inHg", pressure, 25.4 * 13.5951 * 9.80665},

    {"N/m", stiffness},
    {"N/mm", stiffness, 1e3},
    {"mN/m", stiffness, 1e-3},

    {"mL/kPa", compliance, 1e-9},
    {"m3/Pa", compliance},

    {"kg m2", inertia},
    {"kg cm2", inertia, 1e-4},

    {"rpm", angular_speed, turn / 60.0},
    {"rad/s", angular_speed},

    {"MJ/kg", specific_energy, 1e6},
    {"kJ/kg", specific_energy, 1e3},
    {"J/kg", specific_energy},

    {"J/K", heat_capacity},
    {"kJ/K", heat_capacity, 1e3},

    {"W/K", heat_conductance},

    {"degC", temperature, 1.0, 273.15},
    {"degF", temperature, 5.0 / 9.0, 459.67 * 5.0 / 9.0},
    {"K", temperature},

    {"K", temperature_step},

    {"mol", amount},
    {"mmol", amount, 1e-3},

    {"deg", angle, turn / 360.0},
    {"rad", angle},
});

struct Name {
    Dimension dimension;
    std::string_view text;
};
constexpr auto names = std::to_array<Name>({
    {ratio, "a ratio"},
    {mass, "a mass"},
    {length, "a length"},
    {area, "an area"},
    {volume, "a volume"},
    {duration, "a duration"},
    {speed, "a speed"},
    {volume_flow, "a volume flow"},
    {mass_flow, "a mass flow"},
    {density, "a density"},
    {viscosity, "a viscosity"},
    {force, "a force"},
    {torque, "a torque or an energy"},
    {power, "a power"},
    {pressure, "a pressure"},
    {absolute_pressure, "an absolute pressure"},
    {stiffness, "a stiffness or a surface tension"},
    {compliance, "a compliance"},
    {inertia, "a moment of inertia"},
    {angular_speed, "a speed of rotation"},
    {specific_energy, "an energy per mass"},
    {heat_capacity, "a heat capacity"},
    {heat_conductance, "a heat conductance"},
    {temperature, "a temperature"},
    {temperature_step, "a temperature difference"},
    {amount, "an amount of substance"},
    {angle, "an angle"},
});

/// The dimension under which the table lists the units: pressures of both kinds share theirs.
constexpr Dimension listed_under(Dimension dimension)
{
    return dimension == absolute_pressure ? pressure : dimension;
}

[[noreturn]] void refuse(std::string_view text, Dimension wanted, std::string_view got)
{
    throw std::invalid_argument("wants " + std::string(dimension_name(wanted)) + ", got " +
                                in_quotes(text) + " (" + std::string(got) +
                                "); allowed: " + allowed_units(wanted));
}

/// What the unit of a refused text names, if it is anything.
std::string_view kind_of_unit(std::string_view name)
{
    const auto* const found = std::ranges::find(units, name, &Unit::name);
    if (name.empty()) {
        return "no unit";
    }
    return found == units.end() ? "no such unit" : dimension_name(found->dimension);
}

} // namespace

double parse_quantity(std::string_view text, Dimension wanted)
{
    double number = 0.0;
    const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (fault == std::errc::invalid_argument) {
        refuse(text, wanted, "no number");
    }
    std::string_view name = text.substr(static_cast<std::size_t>(end - text.data()));
    if (name.size() > 1 && name.front() == ' ') {
        name.remove_prefix(1);
    }
    const Unit* unit = find_unit(name, wanted);
    if (unit == nullptr) {
        refuse(text, wanted, kind_of_unit(name));
    }
    const double si = number * unit->factor + unit->offset;
    if (fault != std::errc{} || !std::isfinite(si)) {
        refuse(text, wanted, "not a usable number");
    }
    return si;
}

std::string_view dimension_name(Dimension dimension)
{
    return std::ranges::find(names, dimension, &Name::dimension)->text;
}

std::string allowed_units(Dimension dimension)
{
    std::string list;
    for (const Unit& unit : units) {
        if (unit.dimension == listed_under(dimension)) {
            list += list.empty() ? "" : ", ";
            list += unit.name.empty() ? "a plain number" : unit.name;
        }
    }
    return list;
}

const Unit* find_unit(std::string_view name, Dimension dimension)
{
    const auto* const found = std::ranges::find_if(units, [=](const Unit& unit) {
        return unit.name == name && unit.dimension == listed_under(dimension);
    });
    return found == units.end() ? nullptr : &*found;
}

const Unit* find_unit(std::string_view name)
{
    for (int i = 0; i <= static_cast<int>(Dimension::angle); ++i) {
        if (const Unit* unit = find_unit(name, static_cast<Dimension>(i))) {
            return unit;
        }
    }
    return nullptr;
}

} // namespace sim
