#include "tests/reference/cvode_machine.hpp"
#include "tests/reference/sheets.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <sstream>

using namespace sim;
using namespace tests;

namespace {

/// Every reading of a run, one row per look.
using Record = std::vector<std::vector<double>>;

template <class Machine>
Record record(Machine& machine, std::size_t reading_count, double until, Tick stride)
{
    Record rows;
    for (Tick at = 0; at <= std::llround(until / tick_length); at += stride) {
        machine.advance(at);
        rows.emplace_back(reading_count);
        machine.read(rows.back());
    }
    return rows;
}

/// One reading's largest difference as a share of its range over the run.
struct Difference {
    std::string reading;
    double share = 0.0;
    double at = 0.0;
    double range = 0.0;
};

/// All readings, worst first.
std::vector<Difference> differences(const Record& ours, const Record& reference,
                                    const std::vector<Network::Reading>& readings, double every)
{
    std::vector<Difference> all;
    for (std::size_t r = 0; r < readings.size(); ++r) {
        double low = reference[0][r];
        double high = low;
        double most = 0.0;
        double when = 0.0;
        for (std::size_t k = 0; k < reference.size(); ++k) {
            low = std::min(low, reference[k][r]);
            high = std::max(high, reference[k][r]);
            const double difference = std::abs(ours[k][r] - reference[k][r]);
            if (difference > most) {
                most = difference;
                when = static_cast<double>(k) * every;
            }
        }
        if (!readings[r].name.starts_with("audit.")) {
            const double share = most > 0.0 ? most / (high - low) : 0.0;
            all.push_back({readings[r].name, share, when, high - low});
        }
    }
    std::ranges::sort(all, std::greater<>{}, &Difference::share);
    return all;
}

std::string worst_of(const std::vector<Difference>& all)
{
    std::ostringstream text;
    for (std::size_t i = 0; i < std::min<std::size_t>(all.size(), 12); ++i) {
        text << all[i].reading << ": " << 100.0 * all[i].share << " % of " << all[i].range << " at "
             << all[i].at << " s\n";
    }
    return text.str();
}

Fault bowl_vent_shut()
{
    Fault fault;
    fault.id = "test_vent";
    fault.changes = {{"bowl_vent", "area", FaultChange::How::scale, 0.0}};
    return fault;
}

void compare(const std::vector<TimedCommand>& commands, double until)
{
    const auto rig = mower_with(bowl_vent_shut());
    Simulator simulator(rig);
    for (const TimedCommand& timed : commands) {
        simulator.post(timed.command, timed.at);
    }
    CvodeMachine reference(rig, commands, {1e-9, 1e-9, CvodeMatrix::analytic_klu});
    constexpr Tick stride = 50;
    const auto& readings = simulator.readings();
    const Record ours = record(simulator, readings.size(), until, stride);
    const Record theirs = record(reference, readings.size(), until, stride);
    const auto all = differences(ours, theirs, readings, tick_length * stride);
    CAPTURE(worst_of(all));
    CHECK(all.front().share < 1e-3);
}

} // namespace

TEST_SUITE_BEGIN("reference");

TEST_CASE("a cold start agrees with CVODE")
{
    compare(cold_start(), 60.0);
}

TEST_CASE("load steps agree with CVODE")
{
    compare(after_cold_start({set(60.0, "load", 0.5), set(70.0, "load", 1.0),
                              set(80.0, "load", 0.2)}),
            90.0);
}

TEST_CASE("a bowl vent that plugs under load agrees with CVODE")
{
    compare(after_cold_start({set(60.0, "load", 0.7), break_at(70.0, "test_vent", 1.0),
                              break_at(85.0, "test_vent", 0.0)}),
            95.0);
}

TEST_CASE("a hot soak agrees with CVODE")
{
    compare(after_cold_start({set(60.0, "load", 1.0), act(180.0, "stop")}), 900.0);
}

TEST_SUITE_END();
