#include "sim/run_sheet.hpp"
#include "sim/simulator.hpp"
#include "tests/reference/sheets.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <sstream>

using namespace sim;
using namespace tests;

namespace {

constexpr int sequence_count = 10000;

/// A machine somewhere in its life, from which random runs set out.
Simulator machine_after(const std::vector<TimedCommand>& commands, double until, Weather weather)
{
    Simulator simulator(mower(), weather);
    for (const TimedCommand& timed : commands) {
        simulator.post(timed.command, timed.at);
    }
    simulator.advance(std::llround(until / tick_length));
    return simulator;
}

/// From the shelf, filled, running light, under load, stopped hot; on a mild day, in frost, and in
/// the heat high up.
std::vector<Simulator> starting_points()
{
    const Weather mild;
    const Weather frost{{102000.0}, {263.15}};
    const Weather high{{75000.0}, {311.15}};
    std::vector<Simulator> points;
    for (const Weather& weather : {mild, frost, high}) {
        points.push_back(machine_after({}, 0.0, weather));
        points.push_back(machine_after({set(0.0, "tap", 1.0)}, 25.0, weather));
        points.push_back(machine_after(cold_start(), 60.0, weather));
        points.push_back(machine_after(after_cold_start({set(50.0, "load", 0.9)}), 200.0, weather));
        points.push_back(machine_after(
            after_cold_start({set(50.0, "load", 1.0), act(190.0, "stop")}), 200.0, weather));
    }
    return points;
}

/// Chooses commands; the same seed gives the same choice on every machine.
class Chooser {
public:
    explicit Chooser(std::uint64_t seed) : random_(seed) {}

    std::size_t below(std::size_t count) { return static_cast<std::size_t>(random_() % count); }
    double share() { return static_cast<double>(random_() >> 11U) * 0x1p-53; }
    /// Both ends and the middle as often as all between.
    double place(double low, double high)
    {
        const double t = below(2) == 0 ? 0.5 * static_cast<double>(below(3)) : share();
        return low + t * (high - low);
    }

    Command command(const Rig& rig)
    {
        switch (below(10)) {
        case 0:
        case 1:
        case 2:
        case 3: {
            const Control& control = rig.controls[below(rig.controls.size())];
            return SetControl{control.id, place(control.low, control.high)};
        }
        case 4:
        case 5:
        case 6:
            return Do{rig.doings[below(rig.doings.size())].id, share()};
        default:
            return SetFault{rig.faults[below(rig.faults.size())].id, place(0.0, 1.0)};
        }
    }

private:
    std::mt19937_64 random_;
};

/// What is wrong with a machine's state; empty when nothing is.
///
/// Inside a step the state is interpolated; it may pass a bound by a trace, a thousandth of the
/// bound and of the state's scale.
std::string trouble(Simulator& simulator, std::vector<double>& readings)
{
    std::ostringstream text;
    const auto state = simulator.state();
    double air_handled = 0.0;
    for (std::size_t i = 0; i < state.size(); ++i) {
        const StateInfo& info = simulator.network().states()[i];
        const auto slack = [&](double bound) { return 1e-3 * (info.scale + std::abs(bound)); };
        if (!(state[i] >= info.low - slack(info.low) && state[i] <= info.high + slack(info.high))) {
            text << info.name << " = " << state[i] << " out of bounds; ";
        }
        air_handled += info.air * std::max(state[i], 0.0);
    }
    simulator.read(readings);
    for (std::size_t r = 0; r < readings.size(); ++r) {
        if (!std::isfinite(readings[r])) {
            text << simulator.readings()[r].name << " is not finite; ";
        }
    }
    if (!(std::abs(simulator.fuel_error()) < 1e-9 * simulator.fuel_total())) {
        text << "fuel error " << simulator.fuel_error() << " kg; ";
    }
    if (!(std::abs(simulator.air_error()) < 1e-9 * air_handled)) {
        text << "air error " << simulator.air_error() << " mol; ";
    }
    return text.str();
}

/// Whether the liquid of every vessel stands between its floor and its roof.
std::string level_trouble(Simulator& simulator, const std::vector<double>& readings)
{
    for (const PartSpec& spec : simulator.rig().parts) {
        if (spec.kind != "chamber") {
            continue;
        }
        const double level = readings[simulator.reading_index(spec.id + ".level")];
        const double floor = -spec.parameters.at("zero_level");
        constexpr double slack = 1e-5; // m
        if (!(level >= floor - slack && level <= floor + spec.box.size.z + slack)) {
            return spec.id + ".level = " + std::to_string(level) + " out of bounds; ";
        }
    }
    return "";
}

/// Runs one sequence; what went wrong, with the run sheet that shows it, or nothing.
std::string run_sequence(const std::vector<Simulator>& points, std::uint64_t seed)
{
    Chooser chooser(seed);
    const std::size_t point = chooser.below(points.size());
    Simulator simulator = points[point];
    const Tick start = simulator.now();
    const auto length = static_cast<Tick>(5000.0 + 55000.0 * std::pow(chooser.share(), 6));
    const std::size_t count = 3 + chooser.below(8);
    for (std::size_t i = 0; i < count; ++i) {
        const auto at = start + static_cast<Tick>(chooser.below(static_cast<std::size_t>(length)));
        simulator.post(chooser.command(simulator.rig()), at);
    }
    std::string wrong;
    try {
        std::vector<double> readings(simulator.readings().size());
        for (Tick at = 250; at <= length && wrong.empty(); at += 250) {
            simulator.advance(start + at);
            wrong = trouble(simulator, readings) + level_trouble(simulator, readings);
        }
    } catch (const std::exception& error) {
        wrong = error.what();
    }
    if (wrong.empty()) {
        return wrong;
    }
    return "starting point " + std::to_string(point) + ": " + wrong + "\n" +
           write_run_sheet(simulator.sheet(), simulator.rig());
}

} // namespace

TEST_SUITE_BEGIN("long");

TEST_CASE("10,000 random runs keep finite states, levels in bounds and closed accounts")
{
    const auto points = starting_points();
    int failures = 0;
    for (int seed = 0; seed < sequence_count && failures < 5; ++seed) {
        const std::string wrong = run_sequence(points, static_cast<std::uint64_t>(seed));
        CAPTURE(seed);
        CHECK_MESSAGE(wrong.empty(), wrong);
        failures += wrong.empty() ? 0 : 1;
    }
}

TEST_SUITE_END();
