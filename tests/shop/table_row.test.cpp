#include "scenes/shop/procedure_run.hpp"
#include "scenes/shop/table.hpp"

#include <doctest/doctest.h>

using namespace shop;

// Checks of a row share their way as long as they do the same; that must not show in what they
// read.
TEST_CASE("a check reads to the last bit the same alone and in a row with others")
{
    const auto rig = std::make_shared<const sim::Rig>(sim::load_rig("mower"));
    const auto workshop = load_workshop(rig, sim::assets_folder());
    // Of one beginning and of several; same first steps, same steps at other times, repeats, ifs.
    std::vector<const Check*> checks;
    for (const char* id : {"start_primer", "start_cold", "tachometer_idle", "bowl_manometer",
                           "hose_bubbles", "run_loaded", "tap_shut_drip", "look_round"}) {
        checks.push_back(workshop->find_check(id));
    }
    const std::atomic<bool> is_cancelled = false;
    for (const Hypothesis& hypothesis :
         {Hypothesis{"sound", {}}, Hypothesis{"cap_vent_plugged", {{"cap_vent_plugged", 1.0}}}}) {
        CAPTURE(hypothesis.id);
        const auto row =
            simulate_row({workshop, {}, nullptr, ""}, checks, hypothesis, is_cancelled);
        REQUIRE(row);
        for (std::size_t c = 0; c < checks.size(); ++c) {
            CAPTURE(checks[c]->id);
            const auto alone =
                simulate_row({workshop, {}, nullptr, ""}, {checks[c]}, hypothesis, is_cancelled);
            REQUIRE(alone);
            CHECK((*row)[c] == alone->front());
            // As a student would do it, all of its steps included.
            sim::Simulator machine =
                with_faults(*workshop, {}, hypothesis.faults, table_tolerance(*rig));
            bring_to(*workshop, checks[c]->begins, machine);
            ProcedureRun run(checks[c]->procedure);
            run.finish(machine);
            CHECK((*row)[c] == run.values());
        }
    }
}
