#include "scenes/present/hand_moves.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

namespace {

using scenes::CordPull;
using Outcome = CordPull::Outcome;

/// Pulls evenly to a length in a time and gives how much cord was drawn.
double drawn(CordPull& cord, double length, double seconds)
{
    double sum = 0.0;
    for (int i = 1; i <= 20; ++i) {
        sum += cord.move(length * i / 20.0, seconds / 20.0);
    }
    return sum;
}

} // namespace

TEST_SUITE_BEGIN("present");

TEST_CASE("a hand draws as much cord as it goes out and none as it goes back")
{
    CordPull cord(0.75);
    CHECK(cord.move(0.75, 0.01) == 0.0); // nobody holds it
    cord.take_hold();
    CHECK(drawn(cord, 0.75, 0.4) == doctest::Approx(0.75));
    CHECK(cord.out() == doctest::Approx(0.75));
    CHECK(cord.move(0.5, 0.1) == 0.0);
    CHECK(cord.move(0.75, 0.1) == 0.0); // the drum has that much off already
    CHECK(cord.move(2.0, 0.1) == 0.0);  // longer than the cord is
    cord.move(0.0, 0.1);
    CHECK(drawn(cord, 0.75, 0.4) == doctest::Approx(0.75)); // again, without letting go
    CHECK(cord.let_go() == Outcome::pulled);
    CHECK(cord.out() == 0.0);
}

TEST_CASE("a short or a slow pull is told from a whole one")
{
    CordPull cord(0.75);
    cord.take_hold();
    drawn(cord, 0.3, 0.1);
    CHECK(cord.let_go() == Outcome::too_short);
    cord.take_hold();
    drawn(cord, 0.75, 5.0);
    CHECK(cord.let_go() == Outcome::too_slow);
    cord.take_hold();
    CHECK(cord.let_go() == Outcome::nothing); // a click only
    // A slow start does not spoil a fast pull after the cord has run back.
    cord.take_hold();
    drawn(cord, 0.2, 3.0);
    cord.move(0.0, 0.1);
    drawn(cord, 0.75, 0.4);
    cord.move(0.75, 2.0); // holding it there is no slowness
    CHECK(cord.let_go() == Outcome::pulled);
}

TEST_CASE("a tap follows its handle from down to right")
{
    CHECK(scenes::tap_open_at(0.0, -5.0) == 1.0);
    CHECK(scenes::tap_open_at(5.0, 0.0) == 0.0);
    CHECK(scenes::tap_open_at(3.0, -3.0) == doctest::Approx(0.5));
    CHECK(scenes::tap_open_at(-3.0, -3.0) == 1.0); // beyond its stops it stays at them
    CHECK(scenes::tap_open_at(3.0, 3.0) == 0.0);
    CHECK(scenes::tap_open_at(-3.0, 3.0) == 1.0);
}

TEST_CASE("a dial tips the machine by the angle it is turned, clockwise forwards")
{
    CHECK(scenes::turned_tilt(0.0, 0.0, 1.0, 1.0, 0.0, -90.0, 90.0) == 90.0);
    CHECK(scenes::turned_tilt(10.0, 0.0, 1.0, -1.0, 1.0, -90.0, 90.0) == -35.0);
    CHECK(scenes::turned_tilt(80.0, 0.0, 1.0, 1.0, 0.0, -90.0, 90.0) == 90.0);
    // Across the left, where angles jump by a turn.
    CHECK(scenes::turned_tilt(0.0, -1.0, 0.1, -1.0, -0.1, -90.0, 90.0) == -11.0);
}

TEST_SUITE_END();
