#include "scenes/present/fault_list.hpp"

#include "scenes/present/phrase.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>

namespace {

std::shared_ptr<const sim::Rig> mower()
{
    static const auto rig = std::make_shared<const sim::Rig>(sim::load_rig("mower"));
    return rig;
}

bool has(const std::vector<const sim::Fault*>& faults, std::string_view id)
{
    return std::ranges::find(faults, id, &sim::Fault::id) != faults.end();
}

} // namespace

TEST_SUITE_BEGIN("present");

TEST_CASE("faults are found by where they sit and by what they do")
{
    const sim::Rig& rig = *mower();
    CHECK(scenes::find_faults(rig, "").size() == rig.faults.size());
    CHECK(has(scenes::find_faults(rig, "primer"), "bulb_cracked"));
    CHECK(has(scenes::find_faults(rig, "THUMB split"), "bulb_cracked")); // what it does, any order
    CHECK(has(scenes::find_faults(rig, "split  thumb "), "bulb_cracked"));
    CHECK_FALSE(has(scenes::find_faults(rig, "primer"), "main_jet_plugged"));
    CHECK(scenes::find_faults(rig, "zebra").empty());
    CHECK(scenes::find_faults(rig, "primer zebra").empty());
}

TEST_CASE("a fault whose title has the word comes before one that only speaks of it")
{
    const auto found = scenes::find_faults(*mower(), "Hose");
    REQUIRE(found.size() > 3);
    bool has_told = false;
    for (const sim::Fault* fault : found) {
        const bool is_named =
            scenes::folded(fault->title + " " + fault->where).find("hose") != std::string::npos;
        CHECK_FALSE((has_told && is_named));
        has_told = has_told || !is_named;
    }
    CHECK(has_told);
}

TEST_CASE("a search counts neither capitals nor accents and works in the chosen language")
{
    CHECK(scenes::folded("V\u00c1LVULA \u00d1and\u00fa") == "valvula nandu");
    scenes::choose_language("es");
    CHECK(has(scenes::find_faults(*mower(), "rajada"), "hose_cracked") ==
          (scenes::folded(scenes::translated(mower()->find_fault("hose_cracked")->title))
               .find("rajada") != std::string::npos));
    const std::string title =
        scenes::folded(scenes::translated(mower()->find_fault("bowl_vent_plugged")->title));
    CHECK(has(scenes::find_faults(*mower(), title), "bowl_vent_plugged"));
    scenes::choose_language("en");
}

TEST_CASE("a surprise is a fault the machine does not have, and every one comes up")
{
    sim::Simulator machine(mower());
    std::set<std::string> seen;
    for (std::uint64_t seed = 0; seed < 2000; ++seed) {
        const auto chosen = scenes::surprise(machine, seed);
        REQUIRE(chosen.has_value());
        CHECK(chosen->severity >= 0.7);
        CHECK(chosen->severity <= 1.0);
        seen.insert(chosen->fault);
    }
    CHECK(seen.size() == mower()->faults.size());
    CHECK(scenes::surprise(machine, 7) == scenes::surprise(machine, 7));
    // One that is set does not come again.
    const auto first = scenes::surprise(machine, 7);
    machine.post(*first);
    machine.advance(1);
    for (std::uint64_t seed = 0; seed < 300; ++seed) {
        CHECK(scenes::surprise(machine, seed)->fault != first->fault);
    }
}

TEST_CASE("what is hidden is in no list until it is revealed, and counts while it is there")
{
    sim::Simulator machine(mower());
    scenes::HiddenFaults hidden;
    CHECK(hidden.count(machine) == 0);
    hidden.hide("main_jet_plugged");
    CHECK(hidden.count(machine) == 0); // undone, or not yet there
    machine.post(sim::SetFault{"main_jet_plugged", 0.9});
    machine.post(sim::SetFault{"hose_cracked", 0.5});
    machine.advance(1);
    CHECK(hidden.count(machine) == 1);
    CHECK(has(scenes::broken_faults(machine, hidden), "hose_cracked"));
    CHECK_FALSE(has(scenes::broken_faults(machine, hidden), "main_jet_plugged"));
    hidden.show("main_jet_plugged");
    CHECK(hidden.count(machine) == 0);
    hidden.hide("main_jet_plugged");
    hidden.reveal();
    CHECK(has(scenes::broken_faults(machine, hidden), "main_jet_plugged"));
    CHECK(hidden.count(machine) == 0);
}

TEST_SUITE_END();
