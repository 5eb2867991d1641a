#include "sim/run_sheet.hpp"
#include "sim/error.hpp"
#include "tests/temporary_folder.hpp"

#include <doctest/doctest.h>

#include <functional>

using namespace sim;

namespace {

Control control(const std::string& id, double low, double high)
{
    Control control;
    control.id = id;
    control.low = low;
    control.high = high;
    return control;
}

Doing doing(const std::string& id, const std::string& fills)
{
    Doing doing;
    doing.id = id;
    doing.fills = fills;
    return doing;
}

Fault fault(const std::string& id)
{
    Fault fault;
    fault.id = id;
    return fault;
}

/// A machine of two levers, two doings and two faults; it has no parts and cannot run.
Rig levers()
{
    Rig rig;
    rig.id = "levers";
    rig.controls = {control("choke", 0.0, 1.0), control("tilt", -90.0, 90.0)};
    rig.doings = {doing("pull_cord", ""), doing("refuel", "tank")};
    rig.faults = {fault("float_heavy"), fault("stale_fuel")};
    return rig;
}

RunSheet read(const std::string& text)
{
    return parse_run_sheet(text, "a.json", levers());
}

std::string refusal(const std::string& text)
{
    try {
        read(text);
    } catch (const AssetError& error) {
        return error.what();
    }
    return "taken";
}

/// What is said of a sheet with this one command.
std::string command_refusal(const std::string& command)
{
    return refusal(R"({"format":1,"rig":"levers","commands":[)" + command + "]}");
}

std::string fault_refusal(const std::string& faults)
{
    return refusal(R"({"format":1,"rig":"levers","faults":)" + faults + "}");
}

/// Reads what was written.
RunSheet again(const RunSheet& sheet)
{
    return parse_run_sheet(write_run_sheet(sheet, levers()), "again.json", levers());
}

} // namespace

TEST_SUITE_BEGIN("sim");

TEST_CASE("a run sheet is read as commands on ticks of a millisecond")
{
    const RunSheet sheet = read(R"({"format":1,"rig":"levers",
        "faults":[{"id":"float_heavy","severity":1},{"id":"stale_fuel","severity":0.25}],
        "commands":[{"at":"5 s","do":"pull_cord"},
                    {"at":"8.1 s","do":"set","control":"tilt","to":-30},
                    {"at":"9 s","do":"refuel","to":0.9},
                    {"at":"2 min","do":"fault","id":"float_heavy","to":0}]})");
    CHECK(sheet.rig == "levers");
    const std::vector<TimedCommand> wanted{
        {0, SetFault{"float_heavy", 1.0}}, {0, SetFault{"stale_fuel", 0.25}},
        {5000, Do{"pull_cord", 0.0}},      {8100, SetControl{"tilt", -30.0}},
        {9000, Do{"refuel", 0.9}},         {120'000, SetFault{"float_heavy", 0.0}},
    };
    CHECK(sheet.commands == wanted);
}

TEST_CASE("both lists of a run sheet may be left out")
{
    CHECK(read(R"({"format":1,"rig":"levers"})").commands.empty());
}

TEST_CASE("commands are sorted by time, those of one tick keep their order")
{
    const RunSheet sheet = read(R"({"format":1,"rig":"levers","commands":[
        {"at":"2 s","do":"set","control":"choke","to":0.1},
        {"at":"1 s","do":"set","control":"choke","to":0.2},
        {"at":"2.0001 s","do":"set","control":"choke","to":0.3},
        {"at":"0 s","do":"set","control":"choke","to":0.4}],
        "faults":[{"id":"float_heavy","severity":1}]})");
    const std::vector<TimedCommand> wanted{
        {0, SetFault{"float_heavy", 1.0}}, {0, SetControl{"choke", 0.4}},
        {1000, SetControl{"choke", 0.2}},  {2000, SetControl{"choke", 0.1}},
        {2000, SetControl{"choke", 0.3}},
    };
    CHECK(sheet.commands == wanted);
}

TEST_CASE("a run sheet's head is checked")
{
    CHECK(refusal("[]") == "a.json at /: must be an object { }, not a list [ ]");
    CHECK(refusal(R"({"rig":"levers"})") == "a.json at /: key \"format\" is missing");
    CHECK(refusal(R"({"format":2,"rig":"levers"})") ==
          "a.json at /format: unknown format 2; allowed: 1");
    CHECK(refusal(R"({"format":"1","rig":"levers"})") ==
          "a.json at /format: must be a number, not text");
    CHECK(refusal(R"({"format":1})") == "a.json at /: key \"rig\" is missing");
    CHECK(refusal(R"({"format":1,"rig":"mower"})") ==
          "a.json at /rig: the run sheet is for the rig \"mower\", not for \"levers\"");
    CHECK(refusal(R"({"format":1,"rig":"levers","comands":[]})") ==
          "a.json at /: unknown key \"comands\"; did you mean \"commands\"? "
          "Allowed: format, rig, faults, commands");
    CHECK(refusal(R"({"format":1,"rig":"levers","commands":{}})") ==
          "a.json at /commands: must be a list [ ], not an object { }");
}

TEST_CASE("the faults at the top of a run sheet are checked")
{
    CHECK(fault_refusal(R"([{"id":"float_hevy","severity":1}])") ==
          "a.json at /faults/0/id: unknown fault \"float_hevy\"; did you mean \"float_heavy\"? "
          "Allowed: float_heavy, stale_fuel");
    CHECK(fault_refusal(R"([{"id":"float_heavy","severity":1.5}])") ==
          "a.json at /faults/0/severity: 1.5 is out of range; allowed: 0 to 1");
    CHECK(fault_refusal(R"([{"id":"float_heavy","severity":-0.1}])") ==
          "a.json at /faults/0/severity: -0.1 is out of range; allowed: 0 to 1");
    CHECK(fault_refusal(R"([{"id":"float_heavy","severity":"1"}])") ==
          "a.json at /faults/0/severity: must be a number, not text");
    CHECK(fault_refusal(R"([{"id":"float_heavy"}])") ==
          "a.json at /faults/0: key \"severity\" is missing");
    CHECK(fault_refusal(R"([{"id":"float_heavy","to":1}])") ==
          "a.json at /faults/0: unknown key \"to\"; allowed: id, severity");
    CHECK(fault_refusal(R"([{"id":7,"severity":1}])") ==
          "a.json at /faults/0/id: must be text in quotes, not a number");
    CHECK(fault_refusal(R"(["float_heavy"])") ==
          "a.json at /faults/0: must be an object { }, not text");
    CHECK(fault_refusal(R"([{"id":"stale_fuel","severity":1},{"id":"stale_fuel","severity":1}])") ==
          "a.json at /faults/1/id: fault \"stale_fuel\" is listed twice");
}

TEST_CASE("the times of commands are checked")
{
    const auto at = [](const std::string& time) {
        return command_refusal("{\"at\":" + time + R"(,"do":"pull_cord"})");
    };
    const std::string start = "a.json at /commands/0/at: ";
    CHECK(at("\"10 day\"") == "taken");
    CHECK(at("\"-1 s\"") == start + "\"-1 s\" is out of range; allowed: 0 s to 10 day");
    CHECK(at("\"241 h\"") == start + "\"241 h\" is out of range; allowed: 0 s to 10 day");
    CHECK(at("5") == start + "wants a duration as text with a unit; allowed: s, ms, min, h, day");
    CHECK(at("\"5\"") == start + "wants a duration, got \"5\" (no unit); "
                                 "allowed: s, ms, min, h, day");
    CHECK(at("\"soon\"") == start + "wants a duration, got \"soon\" (no number); "
                                    "allowed: s, ms, min, h, day");
    CHECK(at("\"1e999 s\"") == start + "wants a duration, got \"1e999 s\" (not a usable number); "
                                       "allowed: s, ms, min, h, day");
    CHECK(command_refusal(R"({"do":"pull_cord"})") ==
          "a.json at /commands/0: key \"at\" is missing");
}

TEST_CASE("what a command does is checked")
{
    CHECK(command_refusal(R"({"at":"1 s"})") == "a.json at /commands/0: key \"do\" is missing");
    CHECK(command_refusal(R"({"at":"1 s","do":"pul_cord"})") ==
          "a.json at /commands/0/do: unknown doing \"pul_cord\"; did you mean \"pull_cord\"? "
          "Allowed: pull_cord, refuel, set, fault, hidden, mend, leaps");
    CHECK(command_refusal(R"({"at":"1 s","do":"pull_cord","to":1})") ==
          "a.json at /commands/0: unknown key \"to\"; did you mean \"do\"? Allowed: at, do");
    CHECK(command_refusal(R"({"at":"1 s","do":"refuel"})") ==
          "a.json at /commands/0: key \"to\" is missing");
    CHECK(command_refusal(R"({"at":"1 s","do":"refuel","to":1.01})") ==
          "a.json at /commands/0/to: 1.01 is out of range; allowed: 0 to 1");
    CHECK(command_refusal(R"({"at":"1 s","do":"set","control":"chok","to":1})") ==
          "a.json at /commands/0/control: unknown control \"chok\"; did you mean \"choke\"? "
          "Allowed: choke, tilt");
    CHECK(command_refusal(R"({"at":"1 s","do":"set","control":"tilt","to":91})") ==
          "a.json at /commands/0/to: 91 is out of range; allowed: -90 to 90");
    CHECK(command_refusal(R"({"at":"1 s","do":"set","control":"tilt"})") ==
          "a.json at /commands/0: key \"to\" is missing");
    CHECK(command_refusal(R"({"at":"1 s","do":"set","control":"tilt","to":"1 deg"})") ==
          "a.json at /commands/0/to: must be a number, not text");
    CHECK(command_refusal(R"({"at":"1 s","do":"set","id":"tilt","to":1})") ==
          "a.json at /commands/0: unknown key \"id\"; allowed: at, do, control, to");
    CHECK(command_refusal(R"({"at":"1 s","do":"fault","id":"rust","to":1})") ==
          "a.json at /commands/0/id: unknown fault \"rust\"; allowed: float_heavy, stale_fuel");
    CHECK(command_refusal(R"({"at":"1 s","do":"fault","id":"stale_fuel","severity":1})") ==
          "a.json at /commands/0: unknown key \"severity\"; allowed: at, do, id, to");
    CHECK(command_refusal(R"({"at":"1 s","do":"\u001b[2J"})") ==
          "a.json at /commands/0/do: unknown doing \"\\x1b[2J\"; "
          "allowed: pull_cord, refuel, set, fault, hidden, mend, leaps");
}

TEST_CASE("a run sheet that is written and read again is equal")
{
    const RunSheet sheet{
        "levers",
        {{0, SetFault{"stale_fuel", 0.1}},
         {0, SetFault{"float_heavy", 1.0 / 3.0}},
         {0, SetFault{"stale_fuel", 0.7}},
         {0, Do{"pull_cord", 0.0}},
         {1, SetControl{"tilt", -0.1 - 0.2}},
         {1, Do{"refuel", 0.0}},
         {10, SetControl{"choke", 5e-324}},
         {1234, SetFault{"stale_fuel", 0.0}},
         {60'500, Do{"refuel", 0.9}},
         {864'000'000, SetControl{"tilt", 90.0}}},
    };
    const RunSheet same = again(sheet);
    CHECK(same.rig == sheet.rig);
    CHECK(same.commands == sheet.commands);
    const RunSheet none{"levers", {}};
    CHECK(again(none).commands.empty());
}

TEST_CASE("every tick of a second survives being written")
{
    RunSheet sheet{"levers", {}};
    for (Tick tick = 863'999'000; tick <= 864'000'000; ++tick) {
        sheet.commands.push_back({tick, Do{"pull_cord", 0.0}});
    }
    CHECK(again(sheet).commands == sheet.commands);
}

TEST_CASE("a written run sheet has a command a line")
{
    const RunSheet sheet{"levers",
                         {{0, SetFault{"stale_fuel", 0.5}},
                          {1500, SetControl{"choke", 1.0}},
                          {2000, Do{"pull_cord", 0.0}},
                          {2000, Do{"refuel", 1.0}},
                          {60'010, SetFault{"stale_fuel", 0.0}}}};
    CHECK(write_run_sheet(sheet, levers()) == R"({
  "format": 1,
  "rig": "levers",
  "faults": [
    {"id":"stale_fuel","severity":0.5}
  ],
  "commands": [
    {"at":"1.5 s","do":"set","control":"choke","to":1.0},
    {"at":"2 s","do":"pull_cord"},
    {"at":"2 s","do":"refuel","to":1.0},
    {"at":"60.01 s","do":"fault","id":"stale_fuel","to":0.0}
  ]
}
)");
}

TEST_CASE("a run sheet is saved to a file and loaded from it")
{
    const TemporaryFolder folder;
    const RunSheet sheet{"levers", {{5000, Do{"pull_cord", 0.0}}}};
    const std::string path = folder.file("sheet.json");
    save_run_sheet(sheet, levers(), path);
    CHECK(load_run_sheet(path, levers()).commands == sheet.commands);
    CHECK_THROWS_WITH_AS(save_run_sheet(sheet, levers(), "/dev/full"),
                         "cannot write \"/dev/full\": No space left on device", RequestError);
}

TEST_CASE("an attitude in a run sheet becomes the two tilts, or is refused in a sentence")
{
    const Rig rig = load_rig("trimmer");
    const auto with = [&](const std::string& to) {
        return parse_run_sheet(R"({"format":1,"rig":"trimmer","commands":[
            {"at":"1 s","do":"set","control":"attitude","to":)" +
                                   to + "}]}",
                               "a.json", rig);
    };
    const RunSheet over = with("[0, 0, -2]");
    REQUIRE(over.commands.size() == 2);
    CHECK(std::get<SetControl>(over.commands[0].command) == SetControl{"tilt_forward", 0.0});
    CHECK(std::get<SetControl>(over.commands[1].command).to == doctest::Approx(180.0));
    const auto refused = [&](const std::string& to) {
        try {
            static_cast<void>(with(to));
        } catch (const AssetError& error) {
            return std::string(error.what());
        }
        return std::string("taken");
    };
    CHECK(refused("[0, 0]") == "a.json at /commands/0/to: wants three numbers, got 2");
    CHECK(refused("[0, 0, 0]") ==
          "a.json at /commands/0/to: is no direction; allowed: three numbers that are not all 0");
}

TEST_SUITE_END();
