#include "sim/room.hpp"
#include "tests/deviation.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace sim;

namespace {

constexpr double outside = 101325.0;
constexpr double can_volume = 500e-6;

/// A closed can of gasoline, 740 kg/m3 and Reid 9 psi, and what is in it.
struct Can {
    Room room;
    double fuel_mass = 0.0;
    double air = 0.0;

    [[nodiscard]] RoomView<double> view(double vapour, double temperature) const
    {
        const double light = room.fuel.light_share.si * fuel_mass;
        return view_room(room, fuel_mass, light, 0.0, air, vapour, temperature, outside);
    }

    /// Pressure once evaporation has come to rest, found by bisection on the moles of vapour.
    [[nodiscard]] double pressure_at_rest(double temperature) const
    {
        double low = 0.0;
        double high = 1.0;
        for (int i = 0; i < 100; ++i) {
            const double middle = 0.5 * (low + high);
            (view(middle, temperature).evaporation > 0.0 ? low : high) = middle;
        }
        return view(low, temperature).pressure;
    }
};

/// A can holding 300 mL of liquid at 0 degC and air that fills the rest to 101.325 kPa less the
/// vapour's 17.76 kPa.
Can closed_at_freezing(double compliance)
{
    Can can;
    can.room.volume = can_volume;
    can.room.compliance = compliance;
    can.room.wetted_area = 50e-4;
    can.room.fuel.density = {740.0};
    can.room.fuel.reid_pressure = {9.0 * 6894.757};
    can.fuel_mass = 300e-6 * 753.5;
    can.air = (101325.0 - 17.76e3) * 200e-6 / (8.314463 * 273.15);
    return can;
}

} // namespace

// Published figures: vapour pressure 17.76 kPa at 0 degC and 70.64 kPa at 40 degC (US EPA AP-42
// ch. 7.1), density 753.5 and 717.1 kg/m3 (API MPMS 11.1 / ASTM D1250-80). Tolerance 0.2 %, that of
// the vapour pressure equation.

TEST_SUITE_BEGIN("reference");

TEST_CASE("a rigid sealed can of gasoline comes to rest at the sum of its air and vapour pressures")
{
    // Dalton's law by hand: the liquid swells from 300 to 300 x 753.5 / 717.1 = 315.23 mL, so
    // 83.565 kPa x 313.15 / 273.15 x 200.0 / 184.77 + 70.64 kPa = 174.34 kPa.
    const Can can = closed_at_freezing(1e-15);
    CHECK(deviation(can.pressure_at_rest(273.15), 101325.0) < 0.002);
    CHECK(deviation(can.pressure_at_rest(313.15), 174.34e3) < 0.002);
}

TEST_CASE("a soft sealed can comes to rest at the positive root of its closed form")
{
    // (p - p_v) (V0 - V_l + C (p - p_out)) = n_a R T, solved by hand for p - p_out with
    // V0 - V_l = 184.77 mL, n_a R T = 83.565 kPa x 200 mL x 313.15 / 273.15 and C = 1 mL/kPa.
    const double gas = can_volume - 300e-6 * 753.5 / 717.1;
    const double compliance = 1e-9;
    const double heat = 83.565e3 * 200e-6 * 313.15 / 273.15;
    const double partial = 101325.0 - 70.64e3; // air left at no stretch
    const double b = gas + compliance * partial;
    const double root = std::sqrt(b * b - 4.0 * compliance * (gas * partial - heat));
    const double wanted = 101325.0 + (root - b) / (2.0 * compliance);
    const Can can = closed_at_freezing(compliance);
    CHECK(deviation(can.pressure_at_rest(313.15), wanted) < 0.002);
    CHECK(wanted < 174.34e3);
}

TEST_CASE("a can without fuel holds its air by the gas law, and brim-full it is stiff")
{
    const Room room{can_volume, 1e-13, 0.0, 0.0, {}};
    // p = n R T / V, by hand: 0.02 mol at 300 K in 500 mL.
    CHECK(deviation(gas_pressure(room, 0.0, 0.02, 300.0, outside), 99773.6) < 1e-4);
    // A cubic millimetre more than there is room for stretches the wall by as much: dp = dV / C.
    const double pressed = gas_pressure(room, can_volume + 1e-9, 0.0, 300.0, outside) - outside;
    CHECK(deviation(pressed, 1e-9 / 1e-13) < 1e-6);
}

TEST_SUITE_END();
