#include "scenes/command_line/command_line.hpp"
#include "sim/simulator.hpp"
#include "tests/temporary_folder.hpp"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <sstream>

using namespace scenes;
using Words = std::vector<std::string>;

namespace {

std::string output_of(const Words& words)
{
    std::ostringstream out;
    std::ostringstream errors;
    const int code = run_command_line(words, out, errors, {});
    REQUIRE(errors.str() == "");
    REQUIRE(code == 0);
    return out.str();
}

/// The cells of a CSV line that has none in quotes.
std::vector<std::string> cells_of(const std::string& line)
{
    std::vector<std::string> cells{""};
    for (const char c : line) {
        if (c == ',') {
            cells.emplace_back();
        } else if (c != '\r') {
            cells.back() += c;
        }
    }
    return cells;
}

std::vector<std::vector<std::string>> table_of(const std::string& csv)
{
    std::vector<std::vector<std::string>> rows;
    std::istringstream lines(csv);
    std::string line;
    while (std::getline(lines, line)) {
        rows.push_back(cells_of(line));
    }
    return rows;
}

std::vector<std::string> ids_of(const nlohmann::json& list)
{
    std::vector<std::string> ids;
    for (const auto& entry : list) {
        ids.push_back(entry.at("id").get<std::string>());
    }
    return ids;
}

bool holds(const std::vector<std::string>& all, const std::string& one)
{
    return std::ranges::find(all, one) != all.end();
}

} // namespace

TEST_SUITE_BEGIN("command_line");

TEST_CASE("the mower's trace has every promised reading in its unit")
{
    const auto table = table_of(output_of({"trace", "mower", "--for", "0.2 s"}));
    REQUIRE(table.size() == 4);
    CHECK(table[0][0] == "time [s]");
    for (const std::string header :
         {"engine.speed [rpm]", "engine.air_fuel_ratio", "engine.power [W]",
          "engine.head_temperature [degC]", "plug.wetness", "tank.fuel [mL]", "tank.pressure [kPa]",
          "needle.lift [mm]", "needle.flow [mL/min]", "bowl.level [mm]", "bowl.pressure [kPa]",
          "bowl.temperature [degC]", "main_jet.flow [mL/min]", "idle_jet.flow [mL/min]",
          "nozzle.spill [mL]", "floor.fuel [mL]", "crankcase.fuel [mL]", "bulb.volume [mL]",
          "audit.fuel_error [mg]"}) {
        CAPTURE(header);
        CHECK(holds(table[0], header));
    }
    for (const auto& row : table) {
        CHECK(row.size() == table[0].size());
    }
}

TEST_CASE("the mower's shelf state is the ambient temperature at atmospheric pressure")
{
    const auto table =
        table_of(output_of({"trace", "mower", "--for", "0 s", "--ambient", "-10 degC"}));
    REQUIRE(table.size() == 2);
    const auto cell = [&](const std::string& header) {
        const auto found = std::ranges::find(table[0], header);
        REQUIRE(found != table[0].end());
        return std::stod(table[1][static_cast<std::size_t>(found - table[0].begin())]);
    };
    CHECK(cell("bowl.temperature [degC]") == doctest::Approx(-10.0));
    CHECK(cell("engine.head_temperature [degC]") == doctest::Approx(-10.0));
    CHECK(std::abs(cell("bowl.pressure [kPa]")) < 0.01); // gauge
    CHECK(cell("engine.speed [rpm]") == 0.0);
    sim::Weather cold;
    cold.temperature = {263.15};
    sim::Simulator simulator(std::make_shared<const sim::Rig>(sim::load_rig("mower")), cold);
    const double cubic_metres = simulator.read("tank.fuel");
    CHECK(cell("tank.fuel [mL]") == doctest::Approx(1e6 * cubic_metres).epsilon(1e-8));
}

TEST_CASE("the mower has the promised commands")
{
    const auto commands = nlohmann::json::parse(output_of({"list", "commands", "mower", "--json"}));
    const auto controls = ids_of(commands.at("controls"));
    for (const std::string id :
         {"choke", "throttle_lever", "tap", "load", "tilt_forward", "tilt_side", "cap"}) {
        CAPTURE(id);
        CHECK(holds(controls, id));
    }
    const auto doings = ids_of(commands.at("doings"));
    for (const std::string id :
         {"pull_cord", "press_primer", "release_primer", "stop", "refuel", "set", "fault"}) {
        CAPTURE(id);
        CHECK(holds(doings, id));
    }
}

TEST_CASE("the mower has at least 40 faults, the promised ones among them")
{
    const auto faults =
        ids_of(nlohmann::json::parse(output_of({"list", "faults", "mower", "--json"})));
    CHECK(faults.size() >= 40);
    for (
        const std::string id :
        {"bowl_vent_plugged",      "cap_vent_plugged",  "tank_screen_plugged", "filter_plugged",
         "hose_cracked",           "tap_part_shut",     "needle_dirt",         "needle_seep",
         "needle_stuck_shut",      "float_heavy",       "float_level_high",    "float_level_low",
         "main_jet_plugged",       "main_jet_oversize", "idle_jet_plugged",    "idle_bleed_plugged",
         "carburetor_joint_loose", "choke_stuck_shut",  "choke_stuck_open",    "air_filter_dirty",
         "primer_line_plugged",    "bulb_cracked",      "water_in_fuel",       "stale_fuel",
         "governor_sticky",        "no_spark"}) {
        CAPTURE(id);
        CHECK(holds(faults, id));
    }
}

TEST_CASE("the mower takes the run sheet that its description shows")
{
    const TemporaryFolder folder;
    const std::string sheet = folder.with("sheet.json", R"({"format":1,"rig":"mower",
        "faults":[{"id":"needle_dirt","severity":1}],
        "commands":[{"at":"0.5 s","do":"pull_cord"},
                    {"at":"0.8 s","do":"set","control":"choke","to":0},
                    {"at":"0.9 s","do":"refuel","to":1},
                    {"at":"1 s","do":"fault","id":"needle_dirt","to":0}]})");
    const Words words{"trace", "mower", "--sheet", sheet, "--for", "1.5 s"};
    const std::string first = output_of(words);
    CHECK(table_of(first).size() == 17);
    CHECK(output_of(words) == first);
}

TEST_SUITE_END();
