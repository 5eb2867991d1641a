#include "sim/simulator.hpp"
#include "sim/error.hpp"
#include "tests/reference/sheets.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>

using namespace sim;
using namespace tests;

namespace {

/// The mower with a fault of the test's own.
std::shared_ptr<const Rig> breakable()
{
    Fault fault;
    fault.id = "test_vent";
    fault.changes = {{"bowl_vent", "area", FaultChange::How::scale, 0.0}};
    return mower_with(fault);
}

/// The last tick of the replays.
constexpr Tick last = 60000;

/// A start that has every kind of command in it, some at one tick, some between any frames.
std::vector<TimedCommand> busy_run()
{
    return after_cold_start(
        {set(47.003, "load", 0.4), set(49.5, "tilt_side", 20.0), act(49.5, "press_primer"),
         act(50.011, "release_primer"), break_at(50.5, "test_vent", 1.0), set(51.0, "load", 1.0),
         set(51.001, "load", 0.0), set(52.0, "tilt_side", 0.0), act(53.0, "refuel", 0.95),
         break_at(54.0, "test_vent", 0.3), act(55.017, "stop")});
}

/// Everything seen of a run: state and readings, one row per tick of `looks`.
using Sight = std::vector<std::vector<double>>;

std::vector<double> look(Simulator& simulator)
{
    const auto state = simulator.state();
    std::vector<double> seen(state.begin(), state.end());
    std::vector<double> readings(simulator.readings().size());
    simulator.read(readings);
    seen.insert(seen.end(), readings.begin(), readings.end());
    return seen;
}

/// Runs to the ticks of `stops` in turn and looks at those that are in `looks` too.
Sight run(const std::vector<Tick>& stops, const std::vector<Tick>& looks, bool post_live)
{
    Simulator simulator(breakable());
    const auto commands = busy_run();
    auto next = commands.begin();
    while (!post_live && next != commands.end()) {
        simulator.post(next->command, next->at);
        ++next;
    }
    Sight sight;
    for (const Tick stop : stops) {
        while (next != commands.end() && next->at <= stop) {
            simulator.advance(next->at);
            simulator.post(next->command);
            ++next;
        }
        simulator.advance(stop);
        const auto seen = look(simulator);
        if (std::ranges::binary_search(looks, stop)) {
            sight.push_back(seen);
        }
    }
    return sight;
}

std::vector<Tick> every(Tick stride)
{
    std::vector<Tick> ticks;
    for (Tick at = stride; at < last; at += stride) {
        ticks.push_back(at);
    }
    ticks.push_back(last);
    return ticks;
}

std::vector<Tick> irregular()
{
    std::mt19937_64 random(7);
    std::vector<Tick> ticks;
    for (Tick at = 1; at < last; at += 1 + static_cast<Tick>(random() % 700)) {
        ticks.push_back(at);
    }
    ticks.push_back(last);
    return ticks;
}

} // namespace

TEST_SUITE_BEGIN("sim");

TEST_CASE("a run replays bit for bit however often it is looked at")
{
    const std::vector<Tick> frames = every(16);
    const Sight batch = run({last}, {last}, false);
    const Sight by_frame = run(frames, frames, false);
    CHECK(by_frame.back() == batch.back());
    CHECK(run(every(1), frames, false) == by_frame);
    CHECK(run(irregular(), {last}, false) == batch);
}

TEST_CASE("a command posted live does what it does when it was known beforehand")
{
    const std::vector<Tick> frames = every(16);
    const Sight known = run(frames, frames, false);
    const Sight live = run(frames, frames, true);
    REQUIRE(known.size() == live.size());
    for (std::size_t i = 0; i < known.size(); ++i) {
        CAPTURE(frames[i]);
        CHECK(known[i] == live[i]);
    }
    CHECK(run(irregular(), {last}, true) == run({last}, {last}, false));
}

TEST_CASE("a copy goes on as the original would, and neither disturbs the other")
{
    Simulator original(breakable());
    for (const TimedCommand& timed : busy_run()) {
        original.post(timed.command, timed.at);
    }
    original.advance(49000);
    Simulator copy = original;
    Simulator other = original;
    other.post(SetControl{"load", 1.0});
    other.advance(last);
    original.advance(last);
    copy.advance(last);
    CHECK(look(copy) == look(original));
    CHECK(look(other) != look(original));
}

TEST_CASE("a machine put back to a moment of its run repeats what followed bit for bit")
{
    Simulator simulator(breakable());
    for (const TimedCommand& timed : busy_run()) {
        simulator.post(timed.command, timed.at);
    }
    std::vector<MachineMoment> moments;
    Sight first;
    for (const Tick at : irregular()) {
        simulator.advance(at);
        moments.push_back(simulator.keep());
        first.push_back(look(simulator));
    }
    std::mt19937_64 random(11);
    for (int i = 0; i < 200; ++i) {
        const std::size_t from = random() % moments.size();
        const std::size_t to = std::min(from + random() % 8, moments.size() - 1);
        CAPTURE(moments[from].at());
        CAPTURE(moments[to].at());
        simulator.restore(moments[from]);
        CHECK(simulator.now() == moments[from].at());
        CHECK(look(simulator) == first[from]);
        simulator.advance(moments[to].at());
        CHECK(look(simulator) == first[to]);
    }
    CHECK(simulator.sheet().commands == busy_run());
    simulator.restore(moments.front());
    simulator.clear_pending();
    CHECK(simulator.sheet().commands.empty());
}

TEST_CASE("the trimmer too goes on from a moment bit for bit")
{
    Simulator simulator(std::make_shared<const Rig>(load_rig("trimmer")));
    for (const TimedCommand& timed : simulator.rig().default_sheet.commands) {
        simulator.post(timed.command, timed.at);
    }
    const Tick middle = simulator.rig().default_sheet.commands.back().at;
    simulator.advance(middle);
    const MachineMoment moment = simulator.keep();
    CHECK(moment.size() < 8000);
    simulator.advance(middle + 203);
    const auto seen = look(simulator);
    simulator.restore(moment);
    simulator.advance(middle + 203);
    CHECK(look(simulator) == seen);
}

TEST_CASE("a machine that leaps over turns goes on from a moment bit for bit")
{
    Simulator simulator(std::make_shared<const Rig>(load_rig("trimmer")));
    for (const TimedCommand& timed : simulator.rig().default_sheet.commands) {
        simulator.post(timed.command, timed.at);
    }
    const Tick middle = simulator.rig().default_sheet.commands.back().at;
    simulator.post(SetLeaps{true}, middle);
    std::vector<MachineMoment> moments;
    Sight first;
    for (int i = 0; i < 60; ++i) {
        simulator.advance(middle - 100 + 331 * i);
        moments.push_back(simulator.keep());
        first.push_back(look(simulator));
    }
    const auto has_leap = [&](const MachineMoment& moment) {
        return moment.size() > moments.front().size();
    };
    REQUIRE(std::ranges::count_if(moments, has_leap) > 10);
    std::mt19937_64 random(5);
    for (int i = 0; i < 20; ++i) {
        const std::size_t from = random() % moments.size();
        const std::size_t to = std::min(from + random() % 20, moments.size() - 1);
        CAPTURE(moments[from].at());
        CAPTURE(moments[to].at());
        simulator.restore(moments[from]);
        CHECK(look(simulator) == first[from]);
        simulator.advance(moments[to].at());
        CHECK(look(simulator) == first[to]);
    }
}

TEST_CASE("looking at a run changes nothing in it")
{
    Simulator looked(mower());
    Simulator left(mower());
    for (Simulator* simulator : {&looked, &left}) {
        simulator->post(SetControl{"tap", 1.0}, 100);
    }
    for (Tick at = 0; at <= 5000; at += 37) {
        looked.advance(at);
        look(looked);
        looked.fuel_error();
        looked.air_error();
        looked.read("bowl.level");
    }
    looked.advance(5000);
    left.advance(5000);
    CHECK(look(looked) == look(left));
}

TEST_CASE("the run sheet of a run replays it")
{
    Simulator first(breakable());
    for (const TimedCommand& timed : busy_run()) {
        first.advance(timed.at);
        first.post(timed.command);
    }
    first.advance(last);
    const RunSheet sheet = first.sheet();
    CHECK(sheet.rig == "mower");
    CHECK(sheet.commands == busy_run());
    Simulator second(breakable());
    for (const TimedCommand& timed : sheet.commands) {
        second.post(timed.command, timed.at);
    }
    second.advance(last);
    CHECK(look(second) == look(first));
}

TEST_CASE("a machine from the shelf stays as it is")
{
    Simulator simulator(mower());
    const double level = simulator.read("tank.fuel");
    simulator.advance(600000);
    CHECK(simulator.read("engine.speed") == doctest::Approx(0.0).epsilon(1e-9));
    CHECK(std::abs(simulator.read("tank.fuel") - level) < 1e-8); // m3, a hundredth of a millilitre
    CHECK(std::abs(simulator.read("bowl.pressure")) < 0.1);      // Pa
}

TEST_CASE("a command that cannot be done says why")
{
    Simulator simulator(mower());
    CHECK(simulator.check(SetControl{"choke", 0.5}).empty());
    CHECK(simulator.check(SetControl{"chock", 0.5})
              .starts_with("there is no control \"chock\"; did you mean \"choke\"?"));
    CHECK(simulator.check(SetControl{"choke", 1.5}) ==
          "control choke: 1.5 is out of range; allowed: 0 to 1");
    CHECK(simulator.check(SetControl{"tilt_side", -91.0}) ==
          "control tilt_side: -91 is out of range; allowed: -90 to 90 deg");
    CHECK(simulator.check(SetControl{"choke", std::nan("")}) ==
          "control choke: nan is out of range; allowed: 0 to 1");
    CHECK(simulator.check(Do{"pull_chord", 0.0})
              .starts_with("there is no doing \"pull_chord\"; did you mean \"pull_cord\"?"));
    CHECK(simulator.check(Do{"refuel", 1.1}) == "refuel: 1.1 is out of range; allowed: 0 to 1");
    CHECK(simulator.check(Do{"pull_cord", 7.0}).empty());
    CHECK(simulator.check(SetFault{"no_such_fault", 1.0})
              .starts_with("there is no fault \"no_such_fault\""));
    CHECK_THROWS_AS(simulator.post(SetControl{"choke", 2.0}), RequestError);
}

TEST_CASE("a fault's severity is kept between 0 and 1")
{
    Simulator simulator(breakable());
    CHECK(simulator.check(SetFault{"test_vent", 1.0}).empty());
    CHECK(simulator.check(SetFault{"test_vent", 1.01}) ==
          "severity of test_vent: 1.01 is out of range; allowed: 0 to 1");
    CHECK(simulator.check(SetFault{"test_vent", -0.01}) ==
          "severity of test_vent: -0.01 is out of range; allowed: 0 to 1");
}

TEST_CASE("a command for the past is refused")
{
    Simulator simulator(mower());
    simulator.advance(100);
    CHECK_THROWS_WITH_AS(simulator.post(SetControl{"tap", 1.0}, 99),
                         "tick 99 has passed; it is tick 100", RequestError);
    CHECK_NOTHROW(simulator.post(SetControl{"tap", 1.0}, 100));
}

TEST_CASE("commands of one tick are done in the order they were posted")
{
    Simulator simulator(mower());
    simulator.post(SetControl{"load", 0.2}, 10);
    simulator.post(SetControl{"tap", 1.0}, 5);
    simulator.post(SetControl{"load", 0.7}, 10);
    simulator.advance(9);
    CHECK(simulator.control("load") == 0.0);
    CHECK(simulator.control("tap") == 1.0);
    simulator.advance(10);
    CHECK(simulator.control("load") == 0.7);
}

TEST_CASE("faults and controls act on parameters and are taken back whole")
{
    Simulator simulator(breakable());
    const double healthy = simulator.parameter("bowl_vent", "area");
    CHECK(healthy == doctest::Approx(0.79e-6));
    simulator.post(SetFault{"test_vent", 0.25});
    simulator.advance(1);
    CHECK(simulator.parameter("bowl_vent", "area") == doctest::Approx(0.75 * healthy));
    CHECK(simulator.severity("test_vent") == 0.25);
    simulator.post(SetFault{"test_vent", 1.0});
    simulator.advance(2);
    CHECK(simulator.parameter("bowl_vent", "area") == 0.0);
    simulator.post(SetFault{"test_vent", 0.0});
    simulator.advance(3);
    CHECK(simulator.parameter("bowl_vent", "area") == healthy);
}

TEST_CASE("filling the tank is in the accounts and no error of theirs")
{
    Simulator simulator(mower());
    const double before = simulator.fuel_total();
    simulator.post(Do{"refuel", 0.2}, 1000);
    simulator.advance(1000);
    const double after = simulator.fuel_total();
    CHECK(after < before);
    simulator.post(Do{"refuel", 0.9}, 2000);
    simulator.advance(5000);
    CHECK(simulator.fuel_total() > before);
    CHECK(std::abs(simulator.fuel_error()) < 1e-9 * simulator.fuel_total());
    CHECK(std::abs(simulator.air_error()) < 1e-9);
}

TEST_CASE("an unknown name is an error that names the nearest")
{
    Simulator simulator(mower());
    try {
        static_cast<void>(simulator.reading_index("bowl.levle"));
        FAIL("no such reading");
    } catch (const RequestError& error) {
        CHECK(std::string(error.what())
                  .starts_with("there is no reading \"bowl.levle\"; did you mean \"bowl.level\"?"));
    }
    CHECK_THROWS_AS(static_cast<void>(simulator.control("x")), RequestError);
    CHECK_THROWS_AS(static_cast<void>(simulator.severity("x")), RequestError);
    CHECK_THROWS_AS(static_cast<void>(simulator.parameter("bowl", "x")), RequestError);
}

TEST_SUITE_END();
