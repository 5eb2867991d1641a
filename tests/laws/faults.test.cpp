#include "sim/simulator.hpp"
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

using Record = std::vector<std::vector<double>>;

/// The rig's default run, and after it a start on the choke, with a fault from the first tick on.
Record run_with(const std::shared_ptr<const Rig>& rig, const std::string& fault, double severity)
{
    Simulator simulator(rig);
    if (!fault.empty()) {
        simulator.post(SetFault{fault, severity});
    }
    auto commands = rig->default_sheet.commands;
    const double end = rig->default_length;
    for (const TimedCommand& more : {act(end, "stop"), set(end + 20.0, "choke", 1.0),
                                     act(end + 21.0, "pull_cord"), set(end + 24.0, "choke", 0.0)}) {
        commands.push_back(more);
    }
    for (const TimedCommand& timed : commands) {
        simulator.post(timed.command, timed.at);
    }
    Record record;
    for (double at = 0.0; at <= end + 30.0; at += 0.5) {
        simulator.advance(std::llround(at / tick_length));
        record.emplace_back(simulator.readings().size());
        simulator.read(record.back());
    }
    return record;
}

/// The largest change of any reading, as a share of that reading's range in the healthy run.
double largest_change(const Record& healthy, const Record& faulty)
{
    double largest = 0.0;
    for (std::size_t r = 0; r + 2 < healthy[0].size(); ++r) { // the last two are the audit
        double low = healthy[0][r];
        double high = low;
        double most = 0.0;
        for (std::size_t k = 0; k < healthy.size(); ++k) {
            low = std::min(low, healthy[k][r]);
            high = std::max(high, healthy[k][r]);
            most = std::max(most, std::abs(healthy[k][r] - faulty[k][r]));
        }
        if (high > low) {
            largest = std::max(largest, most / (high - low));
        }
    }
    return largest;
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
    for (const std::string& id : rig_ids()) {
        const auto rig = std::make_shared<const Rig>(load_rig(id));
        const Record healthy = run_with(rig, "", 0.0);
        for (const Fault& fault : rig->faults) {
            CAPTURE(fault.id);
            CHECK(run_with(rig, fault.id, 0.0) == healthy);
            Record faulty = healthy;
            CHECK_NOTHROW(faulty = run_with(rig, fault.id, 1.0));
            CHECK(largest_change(healthy, faulty) > 0.02);
        }
    }
}

TEST_SUITE_END();
