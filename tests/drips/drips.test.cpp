#include "scenes/drips/drips.hpp"

#include "scenes/present/leak_shares.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <limits>

namespace {

using scenes::DripGround;
using scenes::Drips;

constexpr double frame = 1.0 / 60.0;
constexpr double mg = 1e-6;

/// A casting with a slope above a floor: what leaks at its left end runs down to the right.
DripGround slope()
{
    return {.bodies = {{{-0.05, 0.06}, {-0.05, 0.05}, {0.03, 0.03}, {0.04, 0.03}, {0.04, 0.04}}},
            .mouths = {{-0.04, 0.0605}, {0.08, 0.05}},
            .floor_left = {-0.1, 0.0},
            .floor_right = {0.1, 0.0},
            .pool_middle = 0.02};
}

double sum(const Drips& drips)
{
    return drips.mass_in_drops() + drips.mass_in_pools() + drips.evaporated();
}

double fullest_pool(const Drips& drips)
{
    const auto most = std::ranges::max_element(drips.pools(), {}, &scenes::Pool::mass);
    REQUIRE(most != drips.pools().end());
    return most->middle;
}

} // namespace

TEST_SUITE_BEGIN("drips");

TEST_CASE("drops, pools and vapour together weigh what leaked")
{
    for (const double rate : {0.05 * mg, 5.0 * mg, 400.0 * mg, 2e4 * mg}) { // kg/s
        for (const double pace : {0.01, 1.0, 60.0}) {
            CAPTURE(rate);
            CAPTURE(pace);
            Drips drips(slope());
            double leaked = 0.0;
            for (int i = 0; i < 1500; ++i) {
                const double gained = rate * frame * pace * (1.0 + std::sin(0.01 * i));
                drips.leak(0, 0.7 * gained);
                drips.leak(1, gained - 0.7 * gained);
                leaked += gained;
                drips.go_on(frame * pace);
                REQUIRE(std::abs(sum(drips) - leaked) <= 1e-9 * leaked);
                REQUIRE(drips.drops().size() <= Drips::most_drops + 2);
            }
            CHECK(drips.leaked() == doctest::Approx(leaked).epsilon(1e-9));
            CHECK(drips.evaporated() > 0.0);
        }
    }
}

TEST_CASE("a wet spot is where the drops come down and not under the leak")
{
    Drips drips(slope());
    for (int i = 0; i < 60 * 40; ++i) {
        drips.leak(0, i < 60 * 20 ? 5.0 * mg * frame : 0.0);
        drips.go_on(frame);
    }
    // The leak is at x = -40 mm; the slope hands it on to its lower end.
    CHECK(fullest_pool(drips) > 0.02);
    CHECK(drips.mass_in_pools() > 0.5 * drips.leaked());

    Drips straight(slope());
    straight.leak(1, 5.0 * mg);
    for (int i = 0; i < 60 * 5; ++i) {
        straight.go_on(frame);
    }
    CHECK(fullest_pool(straight) == doctest::Approx(0.08).epsilon(0.03));
}

TEST_CASE("drops fall the way of gravity in a drawing that is not turned with the machine")
{
    struct Attitude {
        scenes::DripPoint down;
        double pool; ///< x where the drawing's middle stays put and is turned upright, metres
    };
    // The mouth is 80 mm to the right of the middle of all there is and 17 mm above it.
    for (const Attitude& attitude : {Attitude{{0.0, -1.0}, 0.08}, Attitude{{1.0, 0.0}, 0.017},
                                     Attitude{{0.0, 1.0}, -0.08}, Attitude{{0.1, 0.0}, 0.08}}) {
        CAPTURE(attitude.down.x);
        CAPTURE(attitude.down.y);
        Drips drips(slope());
        drips.set_down(attitude.down);
        drips.leak(1, 5.0 * mg);
        bool was_seen = false;
        for (int i = 0; i < 60 * 8; ++i) {
            drips.go_on(frame);
            for (const scenes::Drop& drop : drips.drops()) {
                const double along =
                    drop.speed.x * attitude.down.x + drop.speed.y * attitude.down.y;
                was_seen = was_seen || along > 0.03;
            }
        }
        const bool is_in_plane = std::hypot(attitude.down.x, attitude.down.y) > 0.5;
        CHECK(was_seen == is_in_plane);
        // A drop leaves with a push aside, of 13 mm/s.
        CHECK(std::abs(fullest_pool(drips) - attitude.pool) < 0.012);
        CHECK(std::abs(sum(drips) - 5.0 * mg) < 1e-9 * mg);
    }
}

TEST_CASE("a drop hangs until it has grown, then falls")
{
    // A level ceiling with its leak below: one small drop clings, more than hold on together fall.
    const DripGround ceiling{.bodies = {{{-0.05, 0.06}, {-0.05, 0.05}, {0.05, 0.05}, {0.05, 0.06}}},
                             .mouths = {{0.0, 0.0489}},
                             .floor_left = {-0.1, 0.0},
                             .floor_right = {0.1, 0.0}};
    Drips drips(ceiling);
    drips.leak(0, 2.4 * mg);
    for (int i = 0; i < 60 * 8; ++i) {
        drips.go_on(frame);
    }
    CHECK(drips.mass_in_pools() == 0.0);
    REQUIRE_FALSE(drips.drops().empty());
    CHECK(drips.drops()[0].at.y > 0.045);
    for (int k = 0; k < 5; ++k) {
        drips.leak(0, 2.4 * mg);
        for (int i = 0; i < 60 * 2; ++i) {
            drips.go_on(frame);
        }
    }
    CHECK(drips.mass_in_pools() > 2.0 * mg);
}

TEST_CASE("a pool grows with what lands in it and dries when nothing comes")
{
    Drips drips(slope());
    drips.set_leaked(1000.0 * mg);
    REQUIRE(drips.pools().size() == 1);
    const double narrow = drips.pools()[0].half;
    CHECK(drips.pools()[0].middle == doctest::Approx(0.02));
    drips.set_leaked(4000.0 * mg);
    CHECK(drips.pools()[0].half > 1.5 * narrow);
    for (int i = 0; i < 100; ++i) {
        drips.go_on(600.0);
    }
    CHECK(drips.pools().empty());
    CHECK(drips.evaporated() == doctest::Approx(4000.0 * mg).epsilon(1e-9));
}

TEST_CASE("pools stay on the floor and do not overlap")
{
    Drips drips(slope());
    for (int i = 0; i < 60 * 30; ++i) {
        drips.leak(static_cast<std::size_t>(i % 2), 3000.0 * mg * frame);
        drips.go_on(frame);
        for (std::size_t k = 0; k < drips.pools().size(); ++k) {
            const scenes::Pool& pool = drips.pools()[k];
            REQUIRE(pool.middle - pool.half >= -0.1 - 1e-9);
            REQUIRE(pool.middle + pool.half <= 0.1 + 1e-9);
            if (k > 0) {
                const scenes::Pool& left = drips.pools()[k - 1];
                REQUIRE(left.middle + left.half <= pool.middle - pool.half + 1e-9);
            }
        }
    }
}

TEST_CASE("turning the clock back leaves what had leaked by then")
{
    Drips drips(slope());
    for (int i = 0; i < 60 * 20; ++i) {
        drips.leak(0, 50.0 * mg * frame);
        drips.go_on(frame);
    }
    const double place = fullest_pool(drips);
    drips.set_leaked(300.0 * mg);
    CHECK(drips.drops().empty());
    CHECK(sum(drips) == doctest::Approx(300.0 * mg).epsilon(1e-12));
    CHECK(fullest_pool(drips) == doctest::Approx(place).epsilon(0.05));
    drips.set_leaked(0.0);
    CHECK(drips.pools().empty());
    CHECK(sum(drips) == 0.0);
}

TEST_CASE("no drop ends inside a casting, and the same leak makes the same drops")
{
    Drips once(slope());
    Drips again(slope());
    for (int i = 0; i < 60 * 20; ++i) {
        for (Drips* drips : {&once, &again}) {
            drips->leak(0, 100.0 * mg * frame);
            drips->go_on(frame);
        }
        REQUIRE(once.drops().size() == again.drops().size());
        for (std::size_t k = 0; k < once.drops().size(); ++k) {
            const scenes::Drop& drop = once.drops()[k];
            REQUIRE(drop.at.x == again.drops()[k].at.x);
            // Under the slope's top, over its bottom.
            const bool is_inside = drop.at.x > -0.049 && drop.at.x < 0.039 &&
                                   drop.at.y > 0.0425 - 0.25 * (drop.at.x + 0.02) &&
                                   drop.at.y < 0.06 - (drop.at.x + 0.05) * 0.02 / 0.09 - 0.001;
            REQUIRE_FALSE(is_inside);
        }
    }
}

TEST_CASE("no drop goes through the wall of a casting, however thin, fast or crowded")
{
    // A thin cup under a high mouth: drops arrive at their fastest, pile up and run over its rim.
    const std::vector<scenes::DripPoint> cup{{-0.02, 0.03},     {-0.02, 0.015}, {0.02, 0.015},
                                             {0.02, 0.03},      {0.0195, 0.03}, {0.0195, 0.0155},
                                             {-0.0195, 0.0155}, {-0.0195, 0.03}};
    const DripGround ground{.bodies = {cup},
                            .mouths = {{-0.012, 0.13}, {0.0, 0.2}, {0.013, 0.16}},
                            .floor_left = {-0.1, 0.0},
                            .floor_right = {0.1, 0.0}};
    for (const double pace : {0.4, 1.0, 1.3, 5.0}) {
        CAPTURE(pace);
        Drips drips(ground);
        std::size_t most = 0;
        double fastest = 0.0;
        for (int i = 0; i < 60 * 20; ++i) {
            for (std::size_t k = 0; k < 3; ++k) {
                drips.leak(k, 60.0 * mg * frame);
            }
            drips.go_on(frame * pace);
            std::size_t inside = 0;
            for (const scenes::Drop& drop : drips.drops()) {
                const bool is_over_it = std::abs(drop.at.x) < 0.02;
                fastest = std::max(fastest, is_over_it ? -drop.speed.y : 0.0);
                // Only over the rim does a way lead out, and that way ends outside of the cup:
                // what clings under it has come down along its sides.
                REQUIRE_FALSE((is_over_it && drop.at.y > 0.015 && drop.at.y < 0.0155));
                const bool is_in_side = std::abs(drop.at.x) > 0.0195 && is_over_it;
                REQUIRE_FALSE((is_in_side && drop.at.y > 0.015 && drop.at.y < 0.03));
                inside += is_over_it && drop.at.y > 0.0155 && drop.at.y < 0.03 ? 1 : 0;
                const bool is_below = std::abs(drop.at.x) < 0.012 && drop.at.y < 0.015;
                REQUIRE_FALSE((is_below && drop.speed.y < -0.05));
            }
            most = std::max(most, inside);
        }
        CHECK(most > 20);
        CHECK(fastest > 0.08);
    }
}

TEST_CASE("three hundred drops take a small share of a frame")
{
    DripGround ground = slope();
    ground.floor_left.y = ground.floor_right.y = -1.0; // far below: drops stay in the air
    ground.mouths.clear();
    for (int i = 0; i < 12; ++i) {
        ground.mouths.push_back({-0.045 + 0.007 * i, 0.09 + 0.01 * (i % 3)});
    }
    Drips drips(ground);
    std::vector<double> spent;
    for (int i = 0; i < 600; ++i) {
        for (std::size_t k = 0; k < ground.mouths.size(); ++k) {
            drips.leak(k, 14.0 * mg / 0.05 * frame);
        }
        const auto begin = std::chrono::steady_clock::now();
        drips.go_on(frame);
        const std::chrono::duration<double> took = std::chrono::steady_clock::now() - begin;
        if (drips.drops().size() > 300) {
            spent.push_back(took.count() * 1e3);
        }
    }
    REQUIRE(spent.size() > 100);
    std::ranges::sort(spent);
    MESSAGE("300 drops and more: median ", spent[spent.size() / 2], " ms, 99 % ",
            spent[spent.size() * 99 / 100], " ms a frame");
    CHECK(spent[spent.size() / 2] < 20.0); // also under a sanitizer
}

TEST_CASE("what the floor gains is shared out among the mouths that run")
{
    constexpr double unknown = -std::numeric_limits<double>::infinity();
    std::vector<double> masses(3);
    scenes::share_leak(8e-6, 1.0, std::vector{3e-6, -5e-6, 1e-6}, masses);
    CHECK(masses[0] == doctest::Approx(6e-6));
    CHECK(masses[1] == 0.0);
    CHECK(masses[0] + masses[1] + masses[2] == 8e-6);
    // A mouth that no reading tells of gets what the others cannot have given.
    scenes::share_leak(8e-6, 1.0, std::vector{3e-6, unknown, 1e-6}, masses);
    CHECK(masses[1] == doctest::Approx(4e-6));
    // A little more than told is the time between two looks.
    scenes::share_leak(4.1e-6, 1.0, std::vector{3e-6, unknown, 1e-6}, masses);
    CHECK(masses[1] == 0.0);
    scenes::share_leak(5e-6, 1.0, std::vector{0.0, 0.0, 0.0}, masses);
    CHECK(masses[0] == 5e-6);
    scenes::share_leak(0.0, 1.0, std::vector{3e-6, 0.0, 0.0}, masses);
    CHECK(masses[0] == 0.0);
}

TEST_SUITE_END();
