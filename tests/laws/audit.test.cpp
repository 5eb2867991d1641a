#include "sim/simulator.hpp"
#include "tests/reference/sheets.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>

using namespace sim;
using namespace tests;

namespace {

/// Moles of air that are or have been somewhere: in chambers, and gone out at the exhaust.
double air_handled(Simulator& simulator)
{
    double sum = 0.0;
    const auto state = simulator.state();
    for (std::size_t i = 0; i < state.size(); ++i) {
        sum += simulator.network().states()[i].air * std::max(state[i], 0.0);
    }
    return sum;
}

/// An hour's run: started, loaded and unloaded, faults coming and going, tipped and set down.
std::vector<TimedCommand> eventful_hour(const Rig& rig)
{
    auto commands = cold_start();
    std::mt19937_64 random(11);
    const auto one_of = [&](std::size_t count) { return random() % count; };
    const auto share = [&] { return static_cast<double>(one_of(1001)) * 1e-3; };
    std::string broken;
    for (double at = 60.0; at < 3590.0; at += 30.0) {
        if (!broken.empty()) {
            commands.push_back(break_at(at, broken, 0.0));
        }
        broken = rig.faults[one_of(rig.faults.size())].id;
        commands.push_back(break_at(at + 1.0, broken, share()));
        commands.push_back(set(at + 5.0, "load", share()));
        commands.push_back(set(at + 10.0, "tilt_forward", 160.0 * share() - 80.0));
        commands.push_back(set(at + 12.0, "tilt_side", 160.0 * share() - 80.0));
        commands.push_back(set(at + 15.0, "tilt_forward", 0.0));
        commands.push_back(set(at + 15.0, "tilt_side", 0.0));
        commands.push_back(act(at + 20.0, "pull_cord"));
        commands.push_back(act(at + 25.0, one_of(8) == 0 ? "refuel" : "pull_cord", share()));
    }
    return commands;
}

} // namespace

TEST_SUITE_BEGIN("long");

TEST_CASE("through an hour of faults and tilts no fuel and no air is lost or made")
{
    const auto rig = mower();
    Simulator simulator(rig);
    for (const TimedCommand& timed : eventful_hour(*rig)) {
        simulator.post(timed.command, timed.at);
    }
    double worst_fuel = 0.0;
    double worst_air = 0.0;
    for (Tick at = 0; at <= 3600'000; at += 500) {
        simulator.advance(at);
        worst_fuel =
            std::max(worst_fuel, std::abs(simulator.fuel_error()) / simulator.fuel_total());
        worst_air = std::max(worst_air, std::abs(simulator.air_error()) / air_handled(simulator));
    }
    CHECK(air_handled(simulator) > 100.0); // it did run: some 0.1 mol of air each second
    CHECK(worst_fuel < 1e-9);
    CHECK(worst_air < 1e-9);
    MESSAGE("largest share of fuel " << worst_fuel << ", of air " << worst_air);
}

TEST_CASE("through an hour of cutting and idling the trimmer loses and makes no fuel and no air")
{
    const auto rig = std::make_shared<const Rig>(load_rig("trimmer"));
    Simulator simulator(rig);
    for (const TimedCommand& timed : rig->default_sheet.commands) {
        if (timed.at < 29'000) { // upright, at full throttle and load from here on
            simulator.post(timed.command, timed.at);
        }
    }
    simulator.post(SetLeaps{true}, 40'000);
    std::mt19937_64 random(12);
    for (Tick at = 300'000; at < 3600'000; at += 300'000) {
        simulator.post(SetControl{"load", static_cast<double>(random() % 101) * 0.01}, at);
        simulator.post(SetControl{"throttle", at % 1200'000 == 0 ? 0.0 : 1.0}, at + 1000);
        if (at % 1200'000 == 0) {
            simulator.post(Do{"refuel", 0.9}, at + 30'000);
        }
    }
    double worst_fuel = 0.0;
    double worst_air = 0.0;
    for (Tick at = 0; at <= 3600'000; at += 10'000) {
        simulator.advance(at);
        worst_fuel =
            std::max(worst_fuel, std::abs(simulator.fuel_error()) / simulator.fuel_total());
        worst_air = std::max(worst_air, std::abs(simulator.air_error()) / air_handled(simulator));
    }
    CHECK(air_handled(simulator) > 100.0);
    CHECK(worst_fuel < 1e-9);
    CHECK(worst_air < 1e-9);
    MESSAGE("largest share of fuel " << worst_fuel << ", of air " << worst_air);
}

TEST_SUITE_END();
