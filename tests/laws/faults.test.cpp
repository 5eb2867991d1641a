#include "sim/simulator.hpp"
#include "tests/reference/reading_error.hpp"
#include "tests/reference/sheets.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

using namespace sim;
using namespace tests;

namespace {

/// Every parameter of a machine with the fuel's, as it stands.
std::vector<double> parameters_of(Simulator& simulator)
{
    std::vector<double> values;
    for (const PartSpec& spec : simulator.rig().parts) {
        for (const auto& [name, value] : spec.parameters) {
            values.push_back(simulator.parameter(spec.id, name));
        }
    }
    FuelBlend fuel = simulator.surroundings().fuel;
    for (const ParameterInfo& info : fuel_parameters()) {
        values.push_back(info.member(&fuel));
    }
    return values;
}

/// The rig's default run, and a mower after it stopped and started on the choke, with a fault from
/// the first tick on.
Record run_with(const std::shared_ptr<const Rig>& rig, const std::string& fault, double severity)
{
    Simulator simulator(rig);
    if (!fault.empty()) {
        simulator.post(SetFault{fault, severity});
    }
    auto commands = rig->default_sheet.commands;
    double end = rig->default_length;
    if (rig->find_doing("stop") != nullptr) {
        commands.insert(commands.end(),
                        {act(end, "stop"), set(end + 20.0, "choke", 1.0),
                         act(end + 21.0, "pull_cord"), set(end + 24.0, "choke", 0.0)});
        end += 30.0;
    }
    for (const TimedCommand& timed : commands) {
        simulator.post(timed.command, timed.at);
    }
    Record record;
    for (double at = 0.0; at <= end; at += 0.5) {
        simulator.advance(std::llround(at / tick_length));
        record.emplace_back(simulator.readings().size());
        simulator.read(record.back());
    }
    return record;
}

/// The largest change of any reading, as a share of that reading's range in the healthy run.
double largest_change(const std::shared_ptr<const Rig>& rig, const Record& healthy,
                      const Record& faulty)
{
    const auto readings = Simulator(rig).readings();
    return reading_errors(faulty, healthy, ranges_of(healthy, readings), readings).front().share;
}

} // namespace

TEST_SUITE_BEGIN("laws");

TEST_CASE("a fault of severity nothing changes no parameter, cured, it leaves none changed")
{
    for (const std::string& id : rig_ids()) {
        const auto rig = std::make_shared<const Rig>(load_rig(id));
        Simulator healthy(rig);
        const auto before = parameters_of(healthy);
        for (const Fault& fault : rig->faults) {
            CAPTURE(fault.id);
            Simulator simulator(rig);
            simulator.post(SetFault{fault.id, 0.0});
            simulator.advance(0);
            CHECK(parameters_of(simulator) == before);
            simulator.post(SetFault{fault.id, 1.0});
            simulator.advance(0);
            CHECK(parameters_of(simulator) != before);
            simulator.post(SetFault{fault.id, 0.0});
            simulator.advance(0);
            CHECK(parameters_of(simulator) == before);
        }
    }
}

TEST_CASE("a fault at any severity keeps every parameter in its range")
{
    for (const std::string& id : rig_ids()) {
        const auto rig = std::make_shared<const Rig>(load_rig(id));
        for (const Fault& fault : rig->faults) {
            CAPTURE(fault.id);
            for (const double severity : {0.1, 0.5, 1.0}) {
                Simulator simulator(rig);
                simulator.post(SetFault{fault.id, severity});
                simulator.advance(0);
                for (const FaultChange& change : fault.changes) {
                    if (change.part != "fuel") {
                        const ParameterInfo& info =
                            simulator.network().parameter_info(change.part, change.parameter);
                        const double value = simulator.parameter(change.part, change.parameter);
                        CHECK(value >= info.low);
                        CHECK(value <= info.high);
                    }
                }
            }
        }
    }
}

TEST_CASE("a fault of severity nothing changes no bit of a run, the whole of it some reading")
{
    const auto rig = mower();
    const Record healthy = run_with(rig, "", 0.0);
    for (const Fault& fault : rig->faults) {
        CAPTURE(fault.id);
        CHECK(run_with(rig, fault.id, 0.0) == healthy);
        Record faulty = healthy;
        CHECK_NOTHROW(faulty = run_with(rig, fault.id, 1.0));
        CHECK(largest_change(rig, healthy, faulty) > 0.02);
    }
}

TEST_SUITE_END();

// Resolved stroke by stroke these take minutes.
TEST_SUITE_BEGIN("long");

TEST_CASE("the whole of a fault of the trimmer changes some reading of its default run")
{
    const auto rig = std::make_shared<const Rig>(load_rig("trimmer"));
    const Record healthy = run_with(rig, "", 0.0);
    CHECK(run_with(rig, rig->faults.front().id, 0.0) == healthy);
    for (const Fault& fault : rig->faults) {
        CAPTURE(fault.id);
        Record faulty = healthy;
        CHECK_NOTHROW(faulty = run_with(rig, fault.id, 1.0));
        CHECK(largest_change(rig, healthy, faulty) > 0.02);
    }
}

TEST_SUITE_END();
