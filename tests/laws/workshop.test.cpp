#include "../shop/tools.hpp"

#include "scenes/shop/procedure_run.hpp"

#include <algorithm>
#include <set>

using namespace shop;

namespace {

const std::vector<std::string>& machines()
{
    static const std::vector<std::string> all{"mower", "trimmer"};
    return all;
}

} // namespace

TEST_SUITE_BEGIN("laws");

TEST_CASE("there are thirty checks and twenty-five repairs at least")
{
    std::set<std::string> checks;
    std::set<std::string> repairs;
    for (const std::string& rig : machines()) {
        for (const Check& check : tests::workshop(rig).checks) {
            checks.insert(check.id);
        }
        for (const Repair& repair : tests::workshop(rig).repairs) {
            repairs.insert(repair.id);
        }
    }
    CHECK(checks.size() >= 30);
    CHECK(repairs.size() >= 25);
}

TEST_CASE("every cure that a fault names is a repair that undoes it, and gives back the rig's own "
          "parameters")
{
    for (const std::string& rig : machines()) {
        const Workshop& workshop = tests::workshop(rig);
        const sim::Simulator fresh(workshop.rig);
        for (const sim::Fault& fault : workshop.rig->faults) {
            CHECK(!fault.cures.empty());
            for (const std::string& cure : fault.cures) {
                CAPTURE(fault.id);
                CAPTURE(cure);
                const Repair* repair = workshop.find_repair(cure);
                REQUIRE(repair != nullptr);
                CHECK(repair->undoes(fault));
                sim::Simulator machine(workshop.rig);
                machine.post(sim::SetFault{fault.id, 1.0});
                for (const sim::Mend& mend : mending_of(repair->procedure)) {
                    machine.post(mend);
                }
                machine.advance(0);
                sim::Simulator sound = fresh;
                for (const sim::FaultChange& change : fault.changes) {
                    CHECK(machine.parameter(change.part, change.parameter) ==
                          sound.parameter(change.part, change.parameter));
                }
            }
        }
    }
}

TEST_CASE("cleaning and tightening leave bores, springs and floats as they are")
{
    for (const std::string& rig : machines()) {
        for (const Repair& repair : tests::workshop(rig).repairs) {
            if (repair.kind != Repair::Kind::clean && repair.kind != Repair::Kind::tighten) {
                continue;
            }
            CAPTURE(repair.id);
            for (const sim::Mend& mend : mending_of(repair.procedure)) {
                CHECK_MESSAGE(mend.parameter.find("bore") == std::string::npos, mend.part);
                CHECK_MESSAGE(mend.parameter.find("spring") == std::string::npos, mend.part);
            }
        }
    }
}

TEST_CASE("cautions defer to the manual, local codes and licensed practice")
{
    for (const Caution& caution : tests::workshop("mower").cautions) {
        CAPTURE(caution.id);
        CHECK(caution.says.find("manual") != std::string::npos);
        CHECK(caution.says.find("local codes") != std::string::npos);
        CHECK(caution.says.find("licensed practice") != std::string::npos);
    }
}

TEST_CASE("whatever runs the engine, or opens the fuel, says its cautions")
{
    for (const std::string& rig : machines()) {
        for (const Check& check : tests::workshop(rig).checks) {
            CAPTURE(check.id);
            const bool runs = check.begins == "running" || check.begins == "loaded";
            CHECK_MESSAGE((!runs || !check.cautions.empty()), "a running engine wants cautions");
        }
    }
}

TEST_CASE("a sound machine passes every limit of every check" * doctest::test_suite("long"))
{
    for (const std::string& rig : machines()) {
        const Workshop& workshop = tests::workshop(rig);
        for (const Check& check : workshop.checks) {
            CAPTURE(check.id);
            sim::Simulator machine(workshop.rig);
            bring_to(workshop, check.begins, machine);
            ProcedureRun run(check.procedure);
            run.finish(machine);
            for (std::size_t r = 0; r < run.values().size(); ++r) {
                const Reading& reading = check.procedure.readings[r];
                CAPTURE(reading.id);
                CHECK(reading.is_sound(run.values()[r]));
            }
        }
    }
}

TEST_SUITE_END();
