#include "sim/geometry.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

using namespace sim;

namespace {

constexpr double degree = std::numbers::pi / 180.0;
constexpr Vector upright{0.0, 0.0, 1.0};

/// A box 60 x 40 x 30 mm about (10, 20, 100) mm.
Box small_box()
{
    Box box;
    box.centre = {0.010, 0.020, 0.100};
    box.size = {0.060, 0.040, 0.030};
    return box;
}

double surface_over(const Port& port, double fill)
{
    return port.rise * fill + port.offset;
}

/// Height of a half-full box's surface over a point, whichever way up is: that of its centre.
double centre_over(const Box& box, Vector point, Vector up)
{
    return dot(box.centre - point, up);
}

} // namespace

TEST_SUITE_BEGIN("sim");

TEST_CASE("upright, the surface stands over the floor by the fill's share of the height")
{
    const Box box = small_box();
    const Port port = find_port({box, {0.0, 0.0, 0.085}}, upright); // at the floor
    for (const double fill : {0.0, 0.25, 0.5, 1.0}) {
        CHECK(surface_over(port, fill) == doctest::Approx(0.030 * fill));
    }
    const Port top = find_port({box, {0.0, 0.0, 0.115}}, upright);
    CHECK(surface_over(top, 1.0) == doctest::Approx(0.0));
}

TEST_CASE("on its side, the surface runs from one side to the other")
{
    const Box box = small_box();
    const Vector left_down{0.0, -1.0, 0.0};
    const Port port = find_port({box, {0.0, 0.040, 0.1}}, left_down); // at the left wall
    CHECK(surface_over(port, 0.0) == doctest::Approx(0.0).epsilon(1e-12));
    CHECK(surface_over(port, 1.0) == doctest::Approx(0.040));
}

TEST_CASE("a half-full box has its surface through its centre, however it is held")
{
    const Box box = small_box();
    const Vector point{0.03, 0.01, 0.09};
    for (double forward = -90.0; forward <= 90.0; forward += 15.0) {
        for (double side = -90.0; side <= 90.0; side += 15.0) {
            const Vector up = tilted_up({forward * degree}, {side * degree});
            CHECK(surface_over(find_port({box, point}, up), 0.5) ==
                  doctest::Approx(centre_over(box, point, up)).epsilon(1e-12));
        }
    }
}

TEST_CASE("an empty box bares all its corners, a full one covers them all")
{
    const Box box = small_box();
    for (double forward = -90.0; forward <= 90.0; forward += 30.0) {
        for (double side = -90.0; side <= 90.0; side += 30.0) {
            const Vector up = tilted_up({forward * degree}, {side * degree});
            for (int corner = 0; corner < 8; ++corner) {
                const Vector point{box.centre.x + ((corner & 1) != 0 ? 0.5 : -0.5) * box.size.x,
                                   box.centre.y + ((corner & 2) != 0 ? 0.5 : -0.5) * box.size.y,
                                   box.centre.z + ((corner & 4) != 0 ? 0.5 : -0.5) * box.size.z};
                const Port port = find_port({box, point}, up);
                CHECK(surface_over(port, 0.0) <= 1e-12);
                CHECK(surface_over(port, 1.0) >= -1e-12);
            }
        }
    }
}

TEST_CASE("up is a direction, and tipping turns it the way the words say")
{
    const auto close = [](Vector a, Vector b) {
        return std::abs(a.x - b.x) + std::abs(a.y - b.y) + std::abs(a.z - b.z) < 1e-12;
    };
    CHECK(close(tilted_up({0.0}, {0.0}), upright));
    CHECK(close(tilted_up({90.0 * degree}, {0.0}), {-1.0, 0.0, 0.0})); // nose down: the tail is up
    CHECK(close(tilted_up({0.0}, {90.0 * degree}), {0.0, -1.0, 0.0})); // left down: the right is up
    for (double forward = -90.0; forward <= 90.0; forward += 17.0) {
        for (double side = -90.0; side <= 90.0; side += 17.0) {
            const Vector up = tilted_up({forward * degree}, {side * degree});
            CHECK(dot(up, up) == doctest::Approx(1.0).epsilon(1e-12));
        }
    }
}

TEST_CASE("a port of a hose sees the liquid spread along the bore")
{
    Box hose;
    hose.mixed = true;
    hose.end_a = {0.0, 0.0, 0.150};
    hose.end_b = {0.1, 0.0, 0.030};
    CHECK(hose.exists());
    const Port low = find_port({hose, hose.end_b}, upright);
    CHECK(low.mixed);
    CHECK(low.rise == doctest::Approx(0.120));
    CHECK(find_port({hose, hose.end_a}, upright).rise == doctest::Approx(0.0));
}

TEST_CASE("a place without a chamber is bare whatever the fill")
{
    const Port port = find_port({Box{}, {0.0, 0.0, 0.0}}, upright);
    CHECK(surface_over(port, 0.0) < 0.0);
    CHECK(surface_over(port, 1.0) < 0.0);
}

TEST_CASE("the tilt for a direction brings that direction up")
{
    for (const Vector up : {Vector{0.0, 0.0, 1.0}, Vector{0.0, 0.0, -1.0}, Vector{0.6, 0.0, 0.8},
                            Vector{0.0, 1.0, 0.0}, Vector{-0.6, 0.64, -0.48}}) {
        const Tilt tilt = tilt_for({3.0 * up.x, 3.0 * up.y, 3.0 * up.z});
        const Vector back = tilted_up(tilt.forward, tilt.side);
        CHECK(back.x == doctest::Approx(up.x));
        CHECK(back.y == doctest::Approx(up.y));
        CHECK(back.z == doctest::Approx(up.z));
    }
}

TEST_SUITE_END();
