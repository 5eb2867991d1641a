#include "sim/units.hpp"
#include "tests/deviation.hpp"

#include <doctest/doctest.h>

#include <set>
#include <stdexcept>
#include <type_traits>
#include <vector>

using namespace sim;

namespace {

template <class A, class B>
concept Adds = requires(A a, B b)
{
    a + b;
};
template <class A, class B>
concept Subtracts = requires(A a, B b)
{
    a - b;
};

static_assert(std::is_same_v<decltype(Pressure{} * Area{}), Force>);
static_assert(std::is_same_v<decltype(Mass{} / Volume{}), Density>);
static_assert(std::is_same_v<decltype(Torque{} / Duration{}), Power>);
static_assert(std::is_same_v<decltype(AbsolutePressure{} - AbsolutePressure{}), Pressure>);
static_assert(std::is_same_v<decltype(Temperature{} - Temperature{}), TemperatureStep>);
static_assert(!Adds<AbsolutePressure, AbsolutePressure>);
static_assert(!Adds<Temperature, Temperature>);
static_assert(!Adds<Pressure, Density>);
static_assert(!Subtracts<Length, Area>);
static_assert(!std::is_convertible_v<double, Length>);

std::vector<Dimension> all_dimensions()
{
    std::vector<Dimension> all;
    for (int i = 0; i <= static_cast<int>(Dimension::angle); ++i) {
        all.push_back(static_cast<Dimension>(i));
    }
    return all;
}

/// The names in `allowed_units`, the plain number left out.
std::vector<std::string> unit_names(Dimension dimension)
{
    std::vector<std::string> names;
    std::string rest = allowed_units(dimension) + ", ";
    for (std::size_t end = rest.find(", "); end != std::string::npos; end = rest.find(", ")) {
        if (rest.substr(0, end) != "a plain number") {
            names.push_back(rest.substr(0, end));
        }
        rest.erase(0, end + 2);
    }
    return names;
}

std::string refusal(std::string_view text, Dimension wanted)
{
    try {
        parse_quantity(text, wanted);
    } catch (const std::invalid_argument& error) {
        return error.what();
    }
    return "taken";
}

struct Example {
    std::string_view text;
    Dimension dimension;
    double si;
};

} // namespace

TEST_SUITE_BEGIN("sim");

TEST_CASE("a text with a unit is read in SI")
{
    using enum Dimension;
    const std::vector<Example> examples{
        {"0.8", ratio, 0.8},
        {"35 %", ratio, 0.35},
        {"2 g", mass, 2e-3},
        {"0.85 mm", length, 0.85e-3},
        {"3.1 mm2", area, 3.1e-6},
        {"60 mL", volume, 60e-6},
        {"2 min", duration, 120.0},
        {"36 km/h", speed, 10.0},
        {"18 mL/min", volume_flow, 3e-7},
        {"1.45 L/h", volume_flow, 1.45e-3 / 3600.0},
        {"7.2 kg/h", mass_flow, 2e-3},
        {"0.745 g/mL", density, 745.0},
        {"0.5 mPa s", viscosity, 5e-4},
        {"60 mN", force, 0.06},
        {"1.5 N m", torque, 1.5},
        {"30 J", torque, 30.0},
        {"3 kW", power, 3000.0},
        {"-2 kPa", pressure, -2000.0},
        {"1013.25 hPa", absolute_pressure, 101325.0},
        {"22 mN/m", stiffness, 0.022},
        {"0.2 mL/kPa", compliance, 2e-10},
        {"30 kg cm2", inertia, 3e-3},
        {"43.4 MJ/kg", specific_energy, 43.4e6},
        {"0.9 kJ/K", heat_capacity, 900.0},
        {"2 W/K", heat_conductance, 2.0},
        {"-10 degC", temperature, 263.15},
        {"25 K", temperature_step, 25.0},
        {"5 mmol", amount, 5e-3},
        {"180 deg", angle, 3.14159265358979},
    };
    for (const Example& example : examples) {
        CAPTURE(example.text);
        CHECK(deviation(parse_quantity(example.text, example.dimension), example.si) < 1e-14);
    }
}

TEST_CASE("units outside SI have their published factors")
{
    using enum Dimension;
    // A. Thompson, B. Taylor, NIST Special Publication 811, 2008, app. B.8 (from memory), seven
    // figures printed; the revolution per minute is 2 pi / 60.
    const std::vector<Example> published{
        {"1 in", length, 2.54e-2},
        {"1 gal", volume, 3.785412e-3},
        {"1 fl oz", volume, 2.957353e-5},
        {"1 psi", pressure, 6.894757e3},
        {"1 inH2O", pressure, 2.490889e2},
        {"1 mmH2O", pressure, 9.806650},
        {"1 inHg", pressure, 3.386389e3},
        {"1 hp", power, 7.456999e2},
        {"1 rpm", angular_speed, 1.047198e-1},
        {"1 deg", angle, 1.745329e-2},
    };
    for (const Example& example : published) {
        CAPTURE(example.text);
        CHECK(deviation(parse_quantity(example.text, example.dimension), example.si) < 5e-7);
    }
}

TEST_CASE("temperature scales meet at their fixed points")
{
    // Definition of the scales: SI Brochure 9th ed. sect. 2.3.1; NIST SP 811 app. B.8.
    const auto kelvin = [](std::string_view text) {
        return parse_quantity(text, Dimension::temperature);
    };
    CHECK(deviation(kelvin("32 degF"), 273.15) < 1e-14);
    CHECK(deviation(kelvin("212 degF"), kelvin("100 degC")) < 1e-14);
    CHECK(deviation(kelvin("-40 degF"), kelvin("-40 degC")) < 1e-14);
    CHECK(kelvin("0 K") == 0.0);
}

TEST_CASE("one space before the unit may be left out")
{
    CHECK(parse_quantity("1.2mm", Dimension::length) ==
          parse_quantity("1.2 mm", Dimension::length));
    CHECK(parse_quantity("35%", Dimension::ratio) == parse_quantity("35 %", Dimension::ratio));
}

TEST_CASE("a refused text is answered with what is wanted, what was got and what is allowed")
{
    const std::string lengths = "; allowed: mm, cm, m, um, in, ft";
    CHECK(refusal("5 kPa", Dimension::length) ==
          "wants a length, got \"5 kPa\" (a pressure)" + lengths);
    CHECK(refusal("5", Dimension::length) == "wants a length, got \"5\" (no unit)" + lengths);
    CHECK(refusal("5 furlong", Dimension::length) ==
          "wants a length, got \"5 furlong\" (no such unit)" + lengths);
    CHECK(refusal("wide", Dimension::length) ==
          "wants a length, got \"wide\" (no number)" + lengths);
    CHECK(refusal("nan mm", Dimension::length) ==
          "wants a length, got \"nan mm\" (not a usable number)" + lengths);
    CHECK(refusal("5 mm", Dimension::ratio) ==
          "wants a ratio, got \"5 mm\" (a length); allowed: a plain number, %");
}

TEST_CASE("only one number, one space at most and one unit make a quantity")
{
    for (const std::string_view text :
         {"",           " ",        "mm",     " 5 mm",  "5 mm ",   "5  mm",        "5 mm mm",
          "5 mm, 6 mm", "+5 mm",    "- 5 mm", "5 MM",   "0x10 mm", "1,5 mm",       "5\tmm",
          "5\nmm",      "5.5.5 mm", "1e mm",  "nan mm", "inf mm",  "-infinity mm", "1e999 mm",
          "-1e999 mm"}) {
        CAPTURE(text);
        CHECK(refusal(text, Dimension::length) != "taken");
    }
    CHECK(refusal("1e308 kPa", Dimension::pressure) != "taken");
    CHECK(refusal("5 ", Dimension::ratio) != "taken");
    CHECK(refusal("nan", Dimension::ratio) != "taken");
}

TEST_CASE("a refusal stays one short printable line whatever the text holds")
{
    const std::string hostile = "5 \n\r\x1b[31m" + std::string(1000000, '\xff') + "\"";
    const std::string line = refusal(hostile, Dimension::length);
    CHECK(line.size() < 400);
    for (const char c : line) {
        REQUIRE(c >= ' ');
        REQUIRE(c <= '~');
    }
}

TEST_CASE("every dimension has a name of its own, an SI unit and only units that are read")
{
    std::set<std::string_view> names;
    for (const Dimension dimension : all_dimensions()) {
        CAPTURE(static_cast<int>(dimension));
        CHECK(names.insert(dimension_name(dimension)).second);
        bool has_si_unit = dimension == Dimension::ratio;
        std::set<std::string> units;
        for (const std::string& name : unit_names(dimension)) {
            CAPTURE(name);
            const Unit* unit = find_unit(name, dimension);
            REQUIRE(unit != nullptr);
            CHECK(units.insert(name).second);
            CHECK(parse_quantity("2 " + name, dimension) == 2.0 * unit->factor + unit->offset);
            has_si_unit = has_si_unit || (unit->factor == 1.0 && unit->offset == 0.0);
        }
        CHECK(has_si_unit);
    }
}

TEST_CASE("a unit is found only under its own dimension")
{
    REQUIRE(find_unit("kPa", Dimension::pressure) != nullptr);
    CHECK(find_unit("kPa", Dimension::pressure)->factor == 1000.0);
    CHECK(find_unit("kPa", Dimension::absolute_pressure)->factor == 1000.0);
    CHECK(find_unit("kPa", Dimension::length) == nullptr);
    CHECK(find_unit("degC", Dimension::temperature_step) == nullptr);
    CHECK(find_unit("parsec", Dimension::length) == nullptr);
}

TEST_CASE("literals are in SI")
{
    using namespace literals;
    CHECK((1.5_mm).si == 1.5e-3);
    CHECK((2.0_mm2).si == 2e-6);
    CHECK((3.0_mL).si == 3e-6);
    CHECK((4.0_kPa).si == 4e3);
    CHECK((AbsolutePressure{101325.0} + 675.0_Pa).si == 102000.0);
    CHECK((2.0 * 0.25_s).si == 0.5);
    CHECK((0.5_ratio).si == 0.5);
}

TEST_SUITE_END();
