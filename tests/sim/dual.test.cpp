#include "sim/dual.hpp"
#include "sim/flow_law.hpp"
#include "tests/deviation.hpp"

#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <vector>

using namespace sim;

namespace {

using One = Dual<1>;

One variable(double value)
{
    One x(value);
    x.slope[0] = 1.0;
    return x;
}

/// The inputs as dual numbers, each with a slope of one to itself.
template <std::size_t N>
std::array<Dual<N>, N> variables(const std::array<double, N>& values)
{
    std::array<Dual<N>, N> x;
    for (std::size_t i = 0; i < N; ++i) {
        x[i].value = values[i];
        x[i].slope[i] = 1.0;
    }
    return x;
}

/// Compares every slope of a law with the central difference of its plain form.
template <std::size_t N, class Law>
void check_slopes(const Law& law, const std::array<double, N>& at)
{
    const Dual<N> result = law(variables(at));
    CHECK(result.value == law(at));
    for (std::size_t i = 0; i < N; ++i) {
        CAPTURE(i);
        const double step = 1e-6 * std::abs(at[i]);
        std::array<double, N> above = at;
        std::array<double, N> below = at;
        above[i] += step;
        below[i] -= step;
        const double difference = (law(above) - law(below)) / (above[i] - below[i]);
        const double noise = 1e-9 * std::abs(law(at) / at[i]);
        CHECK(std::abs(result.slope[i] - difference) < 1e-7 * std::abs(difference) + noise);
    }
}

} // namespace

TEST_SUITE_BEGIN("sim");

TEST_CASE("arithmetic on dual numbers has the slopes of the rules of differentiation")
{
    // Closed forms: sum, product, quotient and chain rule.
    constexpr double x = 1.7;
    constexpr double y = -0.6;
    const auto [u, v] = variables<2>({x, y});
    struct Case {
        Dual<2> got;
        double value;
        double to_x;
        double to_y;
    };
    const std::vector<Case> cases{
        {u + v, x + y, 1.0, 1.0},
        {u - v, x - y, 1.0, -1.0},
        {u * v, x * y, y, x},
        {u / v, x / y, 1.0 / y, -x / (y * y)},
        {-u, -x, -1.0, 0.0},
        {u + 3.0, x + 3.0, 1.0, 0.0},
        {3.0 + u, 3.0 + x, 1.0, 0.0},
        {u - 3.0, x - 3.0, 1.0, 0.0},
        {3.0 - u, 3.0 - x, -1.0, 0.0},
        {u * 3.0, x * 3.0, 3.0, 0.0},
        {3.0 * u, 3.0 * x, 3.0, 0.0},
        {u / 3.0, x / 3.0, 1.0 / 3.0, 0.0},
        {3.0 / u, 3.0 / x, -3.0 / (x * x), 0.0},
        {abs(v), -y, 0.0, -1.0},
        {abs(u), x, 1.0, 0.0},
    };
    for (const Case& c : cases) {
        CHECK(c.got.value == c.value);
        CHECK(c.got.slope[0] == doctest::Approx(c.to_x).epsilon(1e-15));
        CHECK(c.got.slope[1] == doctest::Approx(c.to_y).epsilon(1e-15));
    }
}

TEST_CASE("functions of dual numbers have their textbook derivatives")
{
    for (const double x : {1e-6, 0.3, 1.0, 4.0, 250.0}) {
        CAPTURE(x);
        CHECK(deviation(sqrt(variable(x)).slope[0], 0.5 / std::sqrt(x)) < 1e-15);
        CHECK(deviation(exp(variable(x)).slope[0], std::exp(x)) < 1e-15);
        CHECK(deviation(log(variable(x)).slope[0], 1.0 / x) < 1e-15);
    }
}

TEST_CASE("a composed function has the slope of its closed form")
{
    // d/dx [ln(1 + x^2) / sqrt(x)] = 2 x^0.5 / (1 + x^2) - ln(1 + x^2) / (2 x^1.5)
    for (const double x : {0.2, 1.0, 3.0, 20.0}) {
        CAPTURE(x);
        const One u = variable(x);
        const One f = log(1.0 + u * u) / sqrt(u);
        const double slope =
            2.0 * std::sqrt(x) / (1.0 + x * x) - std::log(1.0 + x * x) / (2.0 * x * std::sqrt(x));
        CHECK(std::abs(f.slope[0] - slope) < 1e-14);
    }
}

TEST_CASE("a constant among dual numbers has no slope")
{
    const One constant = 2.5;
    CHECK(constant.slope[0] == 0.0);
    CHECK((constant * variable(3.0)).slope[0] == 2.5);
    CHECK(value_of(constant) == 2.5);
    CHECK(value_of(2.5) == 2.5);
}

TEST_CASE("the slopes of the flow through a hole are those of central differences")
{
    const Restriction hole{2.5e-3, 0.8};
    const auto law = [&](const auto& x) { return hole_flow(hole, x[0], x[1], x[2], x[3]); };
    for (const double drop : {-2000.0, -3.0, 0.5, 40.0, 1600.0}) {
        CAPTURE(drop);
        check_slopes<4>(law, {drop, 0.57e-6, 740.0, 0.5e-3});
    }
}

TEST_CASE("the slopes of a compressible flow are those of central differences, choked or not")
{
    const auto law = [](const auto& x) { return isentropic_flow(x[0], x[1], x[2], 293.15, 1e-2); };
    for (const double outlet : {20e3, 60e3, 90e3, 101e3, 101.32e3, 102e3, 250e3}) {
        CAPTURE(outlet);
        check_slopes<3>(law, {1.8e-4, 101325.0, outlet});
    }
}

TEST_CASE("the slopes of fluid properties are those of central differences")
{
    const auto pressure = [](const auto& x) { return gasoline_vapour_pressure(x[0], x[1]); };
    const auto density = [](const auto& x) { return fuel_density({740.0}, x[0]); };
    const auto viscosity = [](const auto& x) { return fuel_viscosity({0.5e-3}, x[0]); };
    const auto air_thickness = [](const auto& x) { return air_viscosity(x[0]); };
    const auto air_weight = [](const auto& x) { return air_density(x[0], x[1]); };
    for (const double t : {263.15, 288.15, 313.15}) {
        CAPTURE(t);
        check_slopes<2>(pressure, {t, 62.1e3});
        check_slopes<1>(density, {t});
        check_slopes<1>(viscosity, {t});
        check_slopes<1>(air_thickness, {t});
        check_slopes<2>(air_weight, {98e3, t});
    }
}

TEST_SUITE_END();
