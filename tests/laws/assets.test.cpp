#include "sim/error.hpp"
#include "sim/simulator.hpp"
#include "tests/laws/source_files.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <set>

using namespace sim;

TEST_SUITE_BEGIN("laws");

TEST_CASE("every rig loads, names itself as its file does and runs its default sheet")
{
    REQUIRE_FALSE(rig_ids().empty());
    for (const std::string& id : rig_ids()) {
        CAPTURE(id);
        const auto rig = std::make_shared<const Rig>(load_rig(id));
        CHECK(rig->id == id);
        CHECK_FALSE(rig->title.empty());
        CHECK(rig->default_length > 0.0);
        CHECK_FALSE(rig->default_sheet.commands.empty());
        Simulator simulator(rig);
        for (const TimedCommand& timed : rig->default_sheet.commands) {
            CHECK(simulator.check(timed.command).empty());
            CHECK(static_cast<double>(timed.at) * tick_length <= rig->default_length);
            simulator.post(timed.command, timed.at);
        }
        CHECK_NOTHROW(simulator.advance(std::llround(rig->default_length / tick_length)));
    }
}

TEST_CASE("every fault file is a fault of some rig")
{
    std::set<std::string> used;
    for (const std::string& id : rig_ids()) {
        for (const Fault& fault : load_rig(id).faults) {
            used.insert(fault.id);
            CAPTURE(fault.id);
            CHECK_FALSE(fault.title.empty());
            CHECK_FALSE(fault.where.empty());
            CHECK_FALSE(fault.about.empty());
            CHECK_FALSE(fault.found.empty());
            CHECK_FALSE(fault.cures.empty());
            CHECK_FALSE(fault.changes.empty());
        }
    }
    std::size_t files = 0;
    for (const auto& entry : std::filesystem::directory_iterator(ASSETS_DIR "/faults")) {
        CAPTURE(entry.path().string());
        CHECK(entry.path().extension() == ".json");
        CHECK(used.contains(entry.path().stem().string()));
        ++files;
    }
    CHECK(files == used.size());
}

TEST_CASE("every control moves within its parameter's range and starts where the rig says")
{
    for (const std::string& id : rig_ids()) {
        const auto rig = std::make_shared<const Rig>(load_rig(id));
        Simulator simulator(rig);
        for (const Control& control : rig->controls) {
            CAPTURE(control.id);
            CHECK(control.low < control.high);
            CHECK(control.start >= control.low);
            CHECK(control.start <= control.high);
            CHECK(simulator.control(control.id) == control.start);
            if (!control.part.empty()) {
                const ParameterInfo& info =
                    simulator.network().parameter_info(control.part, control.parameter);
                CHECK(control.low >= info.low);
                CHECK(control.high <= info.high);
                CHECK(simulator.parameter(control.part, control.parameter) == control.start);
            }
        }
    }
}

TEST_CASE("every doing of a rig can be done")
{
    for (const std::string& id : rig_ids()) {
        const auto rig = std::make_shared<const Rig>(load_rig(id));
        for (const Doing& doing : rig->doings) {
            CAPTURE(doing.id);
            Simulator simulator(rig);
            for (const Doing::Jump& jump : doing.jumps) {
                CHECK_NOTHROW(static_cast<void>(simulator.network().state_index(jump.state)));
            }
            CHECK_NOTHROW(simulator.post(Do{doing.id, 0.5 * doing.most}, 1000));
            CHECK_NOTHROW(simulator.advance(2000));
            CHECK((doing.settings.size() + doing.jumps.size() > 0 || doing.has_amount()));
        }
    }
}

TEST_CASE("every reading of a rig has a unit people know and a number at rest")
{
    for (const std::string& id : rig_ids()) {
        Simulator simulator(std::make_shared<const Rig>(load_rig(id)));
        std::vector<double> values(simulator.readings().size());
        simulator.read(values);
        std::set<std::string> names;
        for (std::size_t i = 0; i < values.size(); ++i) {
            const Network::Reading& reading = simulator.readings()[i];
            CAPTURE(reading.name);
            CHECK(names.insert(reading.name).second);
            CHECK(std::isfinite(values[i]));
            bool known = reading.unit.empty();
            for (int d = 0; d <= static_cast<int>(Dimension::angle); ++d) {
                known = known || find_unit(reading.unit, static_cast<Dimension>(d)) != nullptr;
            }
            CHECK(known);
        }
    }
}

TEST_SUITE_END();
