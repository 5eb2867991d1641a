#include "sim/error.hpp"
#include "sim/run_sheet.hpp"
#include "sim/simulator.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace sim;

namespace {

std::shared_ptr<const Rig> mower()
{
    static const auto rig = std::make_shared<const Rig>(load_rig("mower"));
    return rig;
}

double bore_after(const std::vector<Command>& commands)
{
    Simulator machine(mower());
    for (const Command& command : commands) {
        machine.post(command);
    }
    machine.advance(0);
    return machine.parameter("main_jet", "bore");
}

} // namespace

TEST_SUITE_BEGIN("sim");

TEST_CASE("restoring a parameter takes back what a fault has made of it and nothing else")
{
    const double built = bore_after({});
    const double drilled = bore_after({SetFault{"main_jet_oversize", 1.0}});
    CHECK(drilled > built);
    const Mend restore{"main_jet", "bore"};
    CHECK(bore_after({SetFault{"main_jet_oversize", 1.0}, restore}) == built);
    CHECK(bore_after({SetFault{"main_jet_oversize", 1.0}, Mend{"main_jet", "open"}}) == drilled);
}

TEST_CASE("alterations come on top of faults, in the order in which they were made")
{
    const double built = bore_after({});
    const Mend wider{"main_jet", "bore", Mend::How::scale, 1.2};
    const Mend more{"main_jet", "bore", Mend::How::add, 1e-4};
    CHECK(bore_after({wider, more}) == doctest::Approx(1.2 * built + 1e-4));
    CHECK(bore_after({more, wider}) == doctest::Approx(1.2 * (built + 1e-4)));
    CHECK(bore_after({wider, Mend{"main_jet", "bore"}}) == built);
    CHECK(bore_after({wider, Mend{"main_jet", "bore", Mend::How::set, 5e-4}}) == 5e-4);
}

TEST_CASE("work on a part that is not there, or out of range, is refused in a sentence")
{
    const Simulator machine(mower());
    CHECK(machine.check(Mend{"main_jet", "colour"}) == "there is no parameter \"main_jet.colour\"");
    CHECK(machine.check(Mend{"main_jet", "bore", Mend::How::set, 1.0})
              .starts_with("main_jet.bore: 1 is out of range"));
}

TEST_CASE("work on parts is on the run sheet, and undone by going back")
{
    Simulator machine(mower());
    machine.post(SetFault{"main_jet_oversize", 1.0});
    machine.advance(500);
    const MachineMoment before = machine.keep();
    machine.post(Mend{"main_jet", "bore"});
    machine.post(Mend{"main_jet", "open", Mend::How::scale, 0.5}, 700);
    machine.advance(1000);
    const RunSheet sheet = machine.sheet();
    CHECK(parse_run_sheet(write_run_sheet(sheet, *mower()), "sheet", *mower()).commands ==
          sheet.commands);
    const double mended = machine.parameter("main_jet", "bore");
    machine.restore(before);
    machine.clear_pending();
    CHECK(machine.parameter("main_jet", "bore") > mended);
}

TEST_SUITE_END();
