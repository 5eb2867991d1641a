#include "run.hpp"

#include <doctest/doctest.h>

#include <algorithm>

// The cord in a hand: what it turns the engine over by is as far and as fast as the hand goes.

TEST_SUITE("behaviour")
{
    using tests::Run;

    /// A mower on the choke whose cord a hand draws evenly; gives the highest speed while it does.
    double highest_speed(Run & run, double length, double seconds)
    {
        constexpr double begin = 36.0;
        run.set(1.0, "tap", 1.0).set(1.0, "choke", 1.0);
        const int draws = std::max(1, static_cast<int>(std::lround(seconds * 60.0)));
        for (int i = 0; i < draws; ++i) {
            run.act(begin + i / 60.0, "draw_cord", length / draws);
        }
        double highest = 0.0;
        for (int i = 0; i <= 50; ++i) {
            run.to(begin + i * 0.02);
            highest = std::max(highest, run.speed());
        }
        return highest;
    }

    TEST_CASE("a hand that draws the cord slower or less far turns the engine over slower")
    {
        Run whole;
        Run slow;
        Run slower;
        Run shorter;
        const double most = highest_speed(whole, 0.75, 0.4);
        const double at_slow = highest_speed(slow, 0.75, 1.5);
        const double at_slower = highest_speed(slower, 0.75, 5.0);
        const double at_shorter = highest_speed(shorter, 0.2, 0.1);
        CHECK(at_slow < most);
        CHECK(at_slower < at_slow);
        CHECK(at_shorter < most);
        // It cannot turn the drum much faster than the cord comes: 0.15 m/s on 28 mm.
        constexpr double drum_rpm = 0.15 / 0.028 * 60.0 / 6.283185307;
        CHECK(at_slower < 1.5 * drum_rpm);
        // None of these starts it; the whole pull, as far and fast as the arm can, does.
        CHECK(whole.to(42.0).speed() > 600.0);
        CHECK(slow.to(42.0).speed() < 100.0);
        CHECK(slower.to(45.0).speed() < 100.0);
        CHECK(shorter.to(42.0).speed() < 100.0);
    }

    TEST_CASE("a pull faster than the arm is the whole pull of the key")
    {
        Run by_hand;
        Run by_key;
        by_key.set(1.0, "tap", 1.0).set(1.0, "choke", 1.0).act(36.0, "pull_cord");
        highest_speed(by_hand, 0.75, 0.1);
        by_key.to(37.0);
        CHECK(by_hand.speed() == doctest::Approx(by_key.speed()).epsilon(1e-3));
    }

    TEST_CASE("a pull by hand replays bit for bit")
    {
        Run first;
        Run again;
        highest_speed(first, 0.6, 0.5);
        highest_speed(again, 0.6, 0.5);
        CHECK(first.to(40.0).speed() == again.to(40.0).speed());
        CHECK(first.read("tank.fuel") == again.read("tank.fuel"));
    }
}
