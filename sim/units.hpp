#pragma once

#include <compare>
#include <string>
#include <string_view>

namespace sim {

/// A number in SI base units whose dimension (kilogram, metre, second, kelvin, mole) is checked by
/// the compiler. Raw doubles come out through `.si` only where the style guide allows it.
template <int Kg, int M, int S, int K = 0, int Mol = 0>
struct Quantity {
    double si = 0.0;
    constexpr auto operator<=>(const Quantity&) const = default;
};

template <int A, int B, int C, int D, int E>
constexpr Quantity<A, B, C, D, E> operator+(Quantity<A, B, C, D, E> x, Quantity<A, B, C, D, E> y)
{
    return {x.si + y.si};
}
template <int A, int B, int C, int D, int E>
constexpr Quantity<A, B, C, D, E> operator-(Quantity<A, B, C, D, E> x, Quantity<A, B, C, D, E> y)
{
    return {x.si - y.si};
}
template <int A, int B, int C, int D, int E>
constexpr Quantity<A, B, C, D, E> operator-(Quantity<A, B, C, D, E> x)
{
    return {-x.si};
}
template <int A, int B, int C, int D, int E, int F, int G, int H, int I, int J>
constexpr Quantity<A + F, B + G, C + H, D + I, E + J> operator*(Quantity<A, B, C, D, E> x,
                                                                Quantity<F, G, H, I, J> y)
{
    return {x.si * y.si};
}
template <int A, int B, int C, int D, int E, int F, int G, int H, int I, int J>
constexpr Quantity<A - F, B - G, C - H, D - I, E - J> operator/(Quantity<A, B, C, D, E> x,
                                                                Quantity<F, G, H, I, J> y)
{
    return {x.si / y.si};
}
template <int A, int B, int C, int D, int E>
constexpr Quantity<A, B, C, D, E> operator*(double k, Quantity<A, B, C, D, E> x)
{
    return {k * x.si};
}

using Ratio = Quantity<0, 0, 0>;
using Mass = Quantity<1, 0, 0>;
using Length = Quantity<0, 1, 0>;
using Area = Quantity<0, 2, 0>;
using Volume = Quantity<0, 3, 0>;
using Duration = Quantity<0, 0, 1>;
using Speed = Quantity<0, 1, -1>;
using VolumeFlow = Quantity<0, 3, -1>;
using MassFlow = Quantity<1, 0, -1>;
using Density = Quantity<1, -3, 0>;
using Viscosity = Quantity<1, -1, -1>;
using Force = Quantity<1, 1, -2>;
using Torque = Quantity<1, 2, -2>;
using Power = Quantity<1, 2, -3>;
/// A pressure difference. Absolute pressures are `AbsolutePressure`.
using Pressure = Quantity<1, -1, -2>;
using Stiffness = Quantity<1, 0, -2>;
/// Volume a soft wall gives per pressure.
using Compliance = Quantity<-1, 4, 2>;
using Inertia = Quantity<1, 2, 0>;
/// Angle per time; a turn is 2 pi.
using AngularSpeed = Quantity<0, 0, -1>;
using SurfaceTension = Quantity<1, 0, -2>;
using SpecificEnergy = Quantity<0, 2, -2>;
using HeatCapacity = Quantity<1, 2, -2, -1>;
using HeatConductance = Quantity<1, 2, -3, -1>;
/// A temperature difference. Temperatures on the absolute scale are `Temperature`.
using TemperatureStep = Quantity<0, 0, 0, 1>;
using Amount = Quantity<0, 0, 0, 0, 1>;
/// Plane angle in radians; its own type so that a table of parameters can read "5 deg".
struct Angle {
    double si = 0.0;
    constexpr auto operator<=>(const Angle&) const = default;
};

/// Pressure above vacuum. Two of them subtract to a `Pressure`; they do not add.
struct AbsolutePressure {
    double si = 0.0;
    constexpr auto operator<=>(const AbsolutePressure&) const = default;
};
constexpr Pressure operator-(AbsolutePressure a, AbsolutePressure b)
{
    return {a.si - b.si};
}
constexpr AbsolutePressure operator+(AbsolutePressure a, Pressure b)
{
    return {a.si + b.si};
}

/// Temperature above absolute zero, in kelvin. Two of them subtract to a `TemperatureStep`.
struct Temperature {
    double si = 0.0;
    constexpr auto operator<=>(const Temperature&) const = default;
};
constexpr TemperatureStep operator-(Temperature a, Temperature b)
{
    return {a.si - b.si};
}
constexpr Temperature operator+(Temperature a, TemperatureStep b)
{
    return {a.si + b.si};
}

namespace literals {
constexpr Length operator""_mm(long double v)
{
    return {static_cast<double>(v) * 1e-3};
}
constexpr Area operator""_mm2(long double v)
{
    return {static_cast<double>(v) * 1e-6};
}
constexpr Volume operator""_mL(long double v)
{
    return {static_cast<double>(v) * 1e-6};
}
constexpr Pressure operator""_kPa(long double v)
{
    return {static_cast<double>(v) * 1e3};
}
constexpr Pressure operator""_Pa(long double v)
{
    return {static_cast<double>(v)};
}
constexpr Duration operator""_s(long double v)
{
    return {static_cast<double>(v)};
}
constexpr Ratio operator""_ratio(long double v)
{
    return {static_cast<double>(v)};
}
} // namespace literals

/// What kind of quantity a text names; the key of the one table of unit names in units.cpp.
enum class Dimension {
    ratio,
    mass,
    length,
    area,
    volume,
    duration,
    speed,
    volume_flow,
    mass_flow,
    density,
    viscosity,
    force,
    torque,
    power,
    pressure,
    absolute_pressure,
    stiffness,
    compliance,
    inertia,
    angular_speed,
    specific_energy,
    heat_capacity,
    heat_conductance,
    temperature,
    temperature_step,
    amount,
    angle,
};

/// Maps a quantity type to its `Dimension`.
template <class Q>
inline constexpr Dimension dimension_of = Dimension::ratio;
template <>
inline constexpr Dimension dimension_of<Mass> = Dimension::mass;
template <>
inline constexpr Dimension dimension_of<Length> = Dimension::length;
template <>
inline constexpr Dimension dimension_of<Area> = Dimension::area;
template <>
inline constexpr Dimension dimension_of<Volume> = Dimension::volume;
template <>
inline constexpr Dimension dimension_of<Duration> = Dimension::duration;
template <>
inline constexpr Dimension dimension_of<Speed> = Dimension::speed;
template <>
inline constexpr Dimension dimension_of<VolumeFlow> = Dimension::volume_flow;
template <>
inline constexpr Dimension dimension_of<MassFlow> = Dimension::mass_flow;
template <>
inline constexpr Dimension dimension_of<Density> = Dimension::density;
template <>
inline constexpr Dimension dimension_of<Viscosity> = Dimension::viscosity;
template <>
inline constexpr Dimension dimension_of<Force> = Dimension::force;
template <>
inline constexpr Dimension dimension_of<Torque> = Dimension::torque;
template <>
inline constexpr Dimension dimension_of<Power> = Dimension::power;
template <>
inline constexpr Dimension dimension_of<Pressure> = Dimension::pressure;
template <>
inline constexpr Dimension dimension_of<AbsolutePressure> = Dimension::absolute_pressure;
template <>
inline constexpr Dimension dimension_of<Stiffness> = Dimension::stiffness;
template <>
inline constexpr Dimension dimension_of<Compliance> = Dimension::compliance;
template <>
inline constexpr Dimension dimension_of<Inertia> = Dimension::inertia;
template <>
inline constexpr Dimension dimension_of<AngularSpeed> = Dimension::angular_speed;
template <>
inline constexpr Dimension dimension_of<SpecificEnergy> = Dimension::specific_energy;
template <>
inline constexpr Dimension dimension_of<HeatCapacity> = Dimension::heat_capacity;
template <>
inline constexpr Dimension dimension_of<HeatConductance> = Dimension::heat_conductance;
template <>
inline constexpr Dimension dimension_of<Temperature> = Dimension::temperature;
template <>
inline constexpr Dimension dimension_of<TemperatureStep> = Dimension::temperature_step;
template <>
inline constexpr Dimension dimension_of<Amount> = Dimension::amount;
template <>
inline constexpr Dimension dimension_of<Angle> = Dimension::angle;

/// Torque and energy share a dimension; so do stiffness and surface tension. The table lists the
/// unit names of both.

/// Reads "1.2 mm" as metres, "-10 degC" as kelvin, "0.8" as a plain ratio.
///
/// throws:  std::invalid_argument whose text says what is wrong and what would be right
double parse_quantity(std::string_view text, Dimension wanted);

/// The word for a dimension in messages: "a length".
std::string_view dimension_name(Dimension dimension);

/// The unit names that `parse_quantity` takes for a dimension, separated by ", ".
std::string allowed_units(Dimension dimension);

/// A value of `unit` in SI: value * factor + offset. Every unit that is read or shown stands in the
/// one table behind this, so display code and readers agree.
struct Unit {
    std::string_view name;
    Dimension dimension = Dimension::ratio;
    double factor = 1.0;
    double offset = 0.0;
};

/// Finds a unit by its name, for instance "kPa"; null when there is none.
const Unit* find_unit(std::string_view name, Dimension dimension);
/// The same whatever its dimension: the first in the order of `Dimension`.
const Unit* find_unit(std::string_view name);

} // namespace sim
