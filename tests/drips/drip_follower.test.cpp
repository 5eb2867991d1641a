#include "scenes/drips/drip_follower.hpp"

#include <doctest/doctest.h>

#include <cmath>

namespace {

using scenes::DripFollower;

/// A mower whose hose is cracked and whose bowl floods, and drops that follow it.
struct Leaking {
    std::shared_ptr<const sim::Rig> rig = std::make_shared<const sim::Rig>(sim::load_rig("mower"));
    sim::Simulator machine{rig};
    std::vector<double> values = std::vector<double>(machine.readings().size());
    DripFollower follower{*rig,
                          {.bodies = {},
                           .mouths = {{-0.04, 0.03}, {0.0, 0.03}, {0.05, 0.03}},
                           .floor_left = {-0.1, 0.0},
                           .floor_right = {0.1, 0.0}},
                          {{"hose_wall.flow", 1.0}, {"bowl_gasket.flow", 1.0}, {"", 0.0}}};

    Leaking()
    {
        for (const char* fault : {"hose_cracked", "needle_dirt", "bowl_gasket_leak"}) {
            machine.post(sim::SetFault{fault, 1.0});
        }
        machine.post(sim::SetControl{"tap", 1.0});
    }
    double floor() { return machine.state()[machine.network().state_index("floor.fuel")]; }
    double sum() const
    {
        const scenes::Drips& drips = *follower.drips();
        return drips.mass_in_drops() + drips.mass_in_pools() + drips.evaporated();
    }
    void begin()
    {
        machine.read(values);
        follower.begin(machine, values);
    }
    void go_on(sim::Tick ticks)
    {
        machine.advance(machine.now() + ticks);
        machine.read(values);
        follower.follow(machine, values);
    }
};

} // namespace

TEST_SUITE_BEGIN("drips");

TEST_CASE("drops, pools and vapour weigh what the machine's floor has gained")
{
    Leaking mower;
    mower.begin();
    for (int i = 0; i < 3600; ++i) {
        mower.go_on(17);
        REQUIRE(std::abs(mower.sum() - mower.floor()) <= 1e-9 * mower.floor());
    }
    CHECK(mower.floor() > 5e-3); // kg
    CHECK(mower.follower.drips()->mass_in_pools() > 0.5 * mower.floor());
}

TEST_CASE("a run that is opened in the middle has its drops and pools under its leaks")
{
    Leaking mower;
    mower.machine.advance(30000);
    mower.begin();
    CHECK(std::abs(mower.sum() - mower.floor()) <= 1e-9 * mower.floor());
    CHECK_FALSE(mower.follower.drips()->drops().empty());
    REQUIRE_FALSE(mower.follower.drips()->pools().empty());
    CHECK(std::abs(mower.follower.drips()->pools().front().middle + 0.04) < 0.02);
}

TEST_CASE("a clock that leaps or goes back keeps the mass")
{
    Leaking mower;
    mower.begin();
    mower.go_on(60000);
    CHECK(std::abs(mower.sum() - mower.floor()) <= 1e-9 * mower.floor());
    CHECK(mower.floor() > 0.0);
    Leaking earlier;
    earlier.machine.advance(20000);
    earlier.machine.read(earlier.values);
    mower.follower.follow(earlier.machine, earlier.values);
    CHECK(std::abs(mower.sum() - earlier.floor()) <= 1e-9 * earlier.floor());
}

TEST_SUITE_END();
