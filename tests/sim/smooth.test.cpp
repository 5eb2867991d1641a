#include "sim/smooth.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <functional>

using namespace sim;

namespace {

using Curve = std::function<Dual<1>(const Dual<1>&)>;

Dual<1> at(const Curve& curve, double x)
{
    Dual<1> u(x);
    u.slope[0] = 1.0;
    return curve(u);
}

/// The largest difference between a curve and the corner it stands in for, from -3 to 3.
double largest_error(const Curve& curve, const std::function<double(double)>& corner)
{
    double worst = 0.0;
    for (int i = -3000; i <= 3000; ++i) {
        const double x = i * 1e-3;
        worst = std::max(worst, std::abs(at(curve, x).value - corner(x)));
    }
    return worst;
}

/// True when neither the value nor the slope jumps at x.
bool is_smooth_at(const Curve& curve, double x)
{
    constexpr double step = 1e-9;
    const Dual<1> below = at(curve, x - step);
    const Dual<1> above = at(curve, x + step);
    return std::abs(above.value - below.value) < 1e-8 &&
           std::abs(above.slope[0] - below.slope[0]) < 1e-7;
}

bool never_falls(const Curve& curve)
{
    for (int i = -3000; i < 3000; ++i) {
        constexpr double rounding = 1e-15;
        if (at(curve, (i + 1) * 1e-3).value < at(curve, i * 1e-3).value - rounding ||
            at(curve, i * 1e-3).slope[0] < 0.0) {
            return false;
        }
    }
    return true;
}

} // namespace

// The references here are the corners themselves and closed forms of the quadratic and cubic joins.

TEST_SUITE_BEGIN("sim");

TEST_CASE("positive_part leaves the corner by a quarter of its width at most, at zero")
{
    constexpr double width = 0.4;
    const Curve curve = [](const auto& x) { return positive_part(x, width); };
    CHECK(at(curve, 0.0).value == doctest::Approx(width / 4.0).epsilon(1e-15));
    CHECK(largest_error(curve, [](double x) { return std::max(x, 0.0); }) <= width / 4.0 + 1e-15);
    CHECK(at(curve, -width).value == 0.0);
    CHECK(at(curve, -2.0).value == 0.0);
    CHECK(at(curve, width).value == width);
    CHECK(at(curve, 2.0).value == 2.0);
    CHECK(at(curve, 0.0).slope[0] == doctest::Approx(0.5).epsilon(1e-15));
    CHECK(is_smooth_at(curve, -width));
    CHECK(is_smooth_at(curve, width));
    CHECK(never_falls(curve));
}

TEST_CASE("smooth_step runs from nought to one with level ends")
{
    constexpr double low = -0.5;
    constexpr double high = 1.5;
    const Curve curve = [](const auto& x) { return smooth_step(x, low, high); };
    CHECK(at(curve, low).value == 0.0);
    CHECK(at(curve, -3.0).value == 0.0);
    CHECK(at(curve, high).value == 1.0);
    CHECK(at(curve, 3.0).value == 1.0);
    CHECK(at(curve, 0.5).value == doctest::Approx(0.5).epsilon(1e-15));
    CHECK(at(curve, 0.0).value == doctest::Approx(0.15625).epsilon(1e-15)); // 3/16 - 2/64
    CHECK(at(curve, 0.5).slope[0] == doctest::Approx(1.5 / (high - low)).epsilon(1e-15));
    CHECK(is_smooth_at(curve, low));
    CHECK(is_smooth_at(curve, high));
    CHECK(never_falls(curve));
}

TEST_CASE("smooth_min never exceeds the lesser and is a quarter of its width below it at most")
{
    constexpr double width = 0.3;
    const Curve curve = [](const auto& x) { return smooth_min(x, Dual<1>(1.0), width); };
    CHECK(largest_error(curve, [](double x) { return std::min(x, 1.0); }) <= width / 4.0 + 1e-15);
    CHECK(at(curve, 1.0).value == doctest::Approx(1.0 - width / 4.0).epsilon(1e-15));
    CHECK(at(curve, 1.0 - width).value == 1.0 - width);
    CHECK(at(curve, 1.0 + width).value == doctest::Approx(1.0).epsilon(1e-15));
    CHECK(at(curve, 1.0).value < 1.0);
    CHECK(is_smooth_at(curve, 1.0 - width));
    CHECK(is_smooth_at(curve, 1.0 + width));
}

TEST_CASE("smooth_clamp stays inside its bounds and is a quarter of its width off at most")
{
    constexpr double width = 0.2;
    const Curve curve = [](const auto& x) { return smooth_clamp(x, -1.0, 1.0, width); };
    CHECK(largest_error(curve, [](double x) { return std::clamp(x, -1.0, 1.0); }) <=
          width / 4.0 + 1e-15);
    CHECK(at(curve, -1.0).value == doctest::Approx(-1.0 + width / 4.0).epsilon(1e-15));
    CHECK(at(curve, 1.0).value == doctest::Approx(1.0 - width / 4.0).epsilon(1e-15));
    CHECK(at(curve, -3.0).value == -1.0);
    CHECK(at(curve, 3.0).value == 1.0);
    CHECK(at(curve, 1e300).value == 1.0);
    CHECK(at(curve, -1e300).value == -1.0);
    CHECK(at(curve, 0.25).value == doctest::Approx(0.25).epsilon(1e-15));
    CHECK(never_falls(curve));
}

TEST_CASE("smooth_clamp between bounds closer than its corners still joins up")
{
    // A valve that a fault has left no lift: the bounds meet, and nothing but nought comes out.
    for (int i = -300; i <= 300; ++i) {
        REQUIRE(smooth_clamp(i * 0.01, 0.0, 0.0, 0.5) == 0.0);
    }
    const Curve curve = [](const auto& x) { return smooth_clamp(x, 0.0, 0.3, 0.5); };
    for (const double corner : {-0.5, -0.2, 0.5, 0.8}) {
        CAPTURE(corner);
        CHECK(is_smooth_at(curve, corner));
    }
    CHECK(never_falls(curve));
}

TEST_CASE("dead_band gives nothing inside, the excess outside, and mirrors")
{
    constexpr double width = 0.1;
    const Curve curve = [](const auto& x) { return dead_band(x, Dual<1>(1.0), width); };
    const auto corner = [](double x) { return x - std::clamp(x, -1.0, 1.0); };
    CHECK(largest_error(curve, corner) <= width / 4.0 + 1e-15);
    CHECK(at(curve, 0.0).value == 0.0);
    CHECK(at(curve, 0.89).value == 0.0);
    CHECK(at(curve, 2.5).value == doctest::Approx(1.5).epsilon(1e-15));
    for (const double x : {0.3, 0.95, 1.0, 1.07, 2.0}) {
        CAPTURE(x);
        CHECK(at(curve, -x).value == -at(curve, x).value);
    }
    CHECK(never_falls(curve));
}

TEST_CASE("smooth_abs lies above the absolute value by its width at most, at zero")
{
    constexpr double width = 0.05;
    const Curve curve = [](const auto& x) { return smooth_abs(x, width); };
    CHECK(at(curve, 0.0).value == doctest::Approx(width).epsilon(1e-15));
    CHECK(at(curve, 0.0).slope[0] == 0.0);
    CHECK(largest_error(curve, [](double x) { return std::abs(x); }) <= width + 1e-15);
    CHECK(at(curve, -2.0).value > 2.0);
    CHECK(at(curve, -2.0).value - 2.0 < width * width / 4.0); // width^2 / (2 |x|)
}

TEST_CASE("settling keeps within its trace of the straight line and dies away without tiny numbers")
{
    constexpr double trace = 0.05;
    const Curve curve = [](const auto& x) { return settling(x, trace); };
    CHECK(largest_error(curve, [](double x) { return x; }) <= trace);
    CHECK(at(curve, 0.0).value == 0.0);
    CHECK(at(curve, 0.0).slope[0] == 0.0);
    CHECK(at(curve, -2.0).value == -at(curve, 2.0).value);
    CHECK(never_falls(curve));
    double x = 1.0;
    for (int i = 0; i < 100'000; ++i) {
        x -= 0.1 * settling(x, 1e-9);
    }
    CHECK(x > 0.0);
    CHECK(x < 1e-12);
    CHECK(x > 1e-14); // trace / (0.1 i); halving would have gone below 1e-308
}

TEST_CASE("smooth laws on plain numbers equal those on dual numbers to the last bit")
{
    for (int i = -300; i <= 300; ++i) {
        const double x = i * 0.01;
        const Dual<1> u(x);
        REQUIRE(positive_part(x, 0.37) == positive_part(u, 0.37).value);
        REQUIRE(smooth_step(x, -0.7, 1.1) == smooth_step(u, -0.7, 1.1).value);
        REQUIRE(smooth_min(x, 0.3, 0.2) == smooth_min(u, Dual<1>(0.3), 0.2).value);
        REQUIRE(smooth_clamp(x, -1.0, 0.5, 0.2) == smooth_clamp(u, -1.0, 0.5, 0.2).value);
        REQUIRE(dead_band(x, 0.4, 0.1) == dead_band(u, Dual<1>(0.4), 0.1).value);
        REQUIRE(settling(x, 0.1) == settling(u, 0.1).value);
        REQUIRE(smooth_abs(x, 0.1) == smooth_abs(u, 0.1).value);
    }
}

TEST_SUITE_END();
