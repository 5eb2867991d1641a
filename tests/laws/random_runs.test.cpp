#include "sim/run_sheet.hpp"
#include "sim/simulator.hpp"
#include "tests/reference/sheets.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <random>
#include <sstream>

using namespace sim;
using namespace tests;

namespace {

/// A machine somewhere in its life, from which random runs set out.
Simulator machine_after(const std::shared_ptr<const Rig>& rig,
                        const std::vector<TimedCommand>& commands, double until, Weather weather)
{
    Simulator simulator(rig, weather);
    for (const TimedCommand& timed : commands) {
        simulator.post(timed.command, timed.at);
    }
    simulator.advance(std::llround(until / tick_length));
    return simulator;
}

/// A mild day, frost, and the heat high up.
const std::array<Weather, 3> weathers{Weather{}, Weather{{102000.0}, {263.15}},
                                      Weather{{75000.0}, {311.15}}};

/// From the shelf, filled, running light, under load, stopped hot.
std::vector<Simulator> mower_points()
{
    const auto rig = mower();
    std::vector<Simulator> points;
    for (const Weather& weather : weathers) {
        const auto add = [&](const std::vector<TimedCommand>& commands, double until) {
            points.push_back(machine_after(rig, commands, until, weather));
        };
        add({}, 0.0);
        add({set(0.0, "tap", 1.0)}, 25.0);
        add(cold_start(), 60.0);
        add(after_cold_start({set(50.0, "load", 0.9)}), 200.0);
        add(after_cold_start({set(50.0, "load", 1.0), act(190.0, "stop")}), 200.0);
    }
    return points;
}

/// From the shelf, and along the rig's own run: primed, on the choke, idling, pulling, slowing
/// down.
std::vector<Simulator> trimmer_points()
{
    const auto rig = std::make_shared<const Rig>(load_rig("trimmer"));
    std::vector<Simulator> points;
    for (const Weather& weather : weathers) {
        for (const double until : {0.0, 9.0, 17.0, 23.0, 29.0, 37.0}) {
            points.push_back(machine_after(rig, rig->default_sheet.commands, until, weather));
        }
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
        case 6: {
            // A workshop's tools are handled by procedures only; a hand pump without end bursts
            // anything.
            std::vector<Doing> doings = rig.doings;
            std::erase_if(doings, [](const Doing& doing) { return doing.is_workshop; });
            const Doing& doing = doings[below(doings.size())];
            return Do{doing.id, doing.most * share()};
        }
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

/// Runs one sequence of a length between two, in ticks, mostly near the shorter; what went wrong,
/// with the run sheet that shows it, or nothing.
std::string run_sequence(const std::vector<Simulator>& points, std::uint64_t seed, double shortest,
                         double longest)
{
    Chooser chooser(seed);
    const std::size_t point = chooser.below(points.size());
    Simulator simulator = points[point];
    const Tick start = simulator.now();
    const auto length =
        static_cast<Tick>(shortest + (longest - shortest) * std::pow(chooser.share(), 6));
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

/// STANDPIPE_RANDOM_RUNS in the environment asks for another number of them.
void run_sequences(const std::vector<Simulator>& points, int usual, double shortest, double longest)
{
    const char* const wanted = std::getenv("STANDPIPE_RANDOM_RUNS");
    const int count = wanted != nullptr ? std::atoi(wanted) : usual;
    int failures = 0;
    for (int seed = 0; seed < count && failures < 5; ++seed) {
        const std::string wrong =
            run_sequence(points, static_cast<std::uint64_t>(seed), shortest, longest);
        CAPTURE(seed);
        CHECK_MESSAGE(wrong.empty(), wrong);
        failures += wrong.empty() ? 0 : 1;
    }
}

} // namespace

TEST_SUITE_BEGIN("long");

TEST_CASE("ten thousand random runs keep finite states and levels in bounds and closed accounts")
{
    run_sequences(mower_points(), 10'000, 5000.0, 60'000.0);
}

// Resolved stroke by stroke the trimmer is slow; its runs are fewer and shorter.
TEST_CASE("a thousand random runs of the trimmer keep states and levels in bounds and accounts")
{
    run_sequences(trimmer_points(), 1000, 250.0, 4000.0);
}

TEST_CASE("random runs of the trimmer with leaps keep states and levels in bounds and accounts")
{
    auto points = trimmer_points();
    for (Simulator& point : points) {
        point.post(SetLeaps{true});
    }
    run_sequences(points, 20, 5000.0, 60'000.0);
}

TEST_SUITE_END();
