#include "scenes/command_line/command_line.hpp"
#include "sim/error.hpp"
#include "tests/command_line/block_assets.hpp"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <fstream>
#include <sstream>

using namespace scenes;
using Words = std::vector<std::string>;

namespace {

struct Outcome {
    int code = 0;
    std::string out;
    std::string errors;
};

/// A screen that does nothing.
const ScreenCommands blank{[](const WindowRequest&) { return 0; },
                           [](const ShotRequest&) { return 0; }};

Outcome run(const Words& words, const ScreenCommands& screen = blank)
{
    std::ostringstream out;
    std::ostringstream errors;
    const int code = run_command_line(words, out, errors, screen);
    return {code, out.str(), errors.str()};
}

/// Checks for an exit code with exactly one line on the error output, and nothing on the other.
void check_refused(const Outcome& outcome, int code, const std::string& line)
{
    CHECK(outcome.code == code);
    CHECK(outcome.out == "");
    CHECK(outcome.errors == line + '\n');
}

} // namespace

TEST_SUITE_BEGIN("command_line");

TEST_CASE("a trace without a sheet is the rig's default run as CSV")
{
    const BlockAssets assets;
    const Outcome outcome = run({"trace", "block", "--every", "0.25 s"});
    CHECK(outcome.code == 0);
    CHECK(outcome.errors == "");
    CHECK(outcome.out ==
          "time [s],block.temperature [degC],audit.fuel_error [mg],audit.air_error [mmol]\r\n"
          "0,20,0,0\r\n"
          "0.25,20,0,0\r\n"
          "0.5,10,0,0\r\n"
          "0.75,10,0,0\r\n"
          "1,10,0,0\r\n");
}

TEST_CASE("faults of the command line hold from the first row, over those of the sheet")
{
    const BlockAssets assets;
    const std::string sheet = assets.folder.with("sheet.json", R"({"format":1,"rig":"block",
        "faults":[{"id":"halved","severity":0.5}],
        "commands":[{"at":"2 s","do":"dip"}]})");
    const auto column = [&](Words words) {
        words.insert(words.begin(), {"trace", "block", "--sheet", sheet, "--every", "1 s", "--for",
                                     "2 s", "--ambient", "30 degC"});
        std::istringstream lines(run(words).out);
        std::string cells;
        std::string line;
        while (std::getline(lines, line)) {
            cells += line.substr(0, line.find(',', line.find(',') + 1)) + ' ';
        }
        return cells;
    };
    const std::string header = "time [s],block.temperature [degC] ";
    CHECK(column({}) == header + "0,40 1,40 2,0 ");
    CHECK(column({"--fault", "halved"}) == header + "0,60 1,60 2,0 ");
    CHECK(column({"--fault", "halved=0"}) == header + "0,30 1,30 2,0 ");
}

TEST_CASE("rows stand on ticks and say which, the last is not after the end")
{
    const BlockAssets assets;
    const auto times = [](const std::string& length, const std::string& every) {
        std::istringstream lines(run({"trace", "block", "--for", length, "--every", every}).out);
        std::string cells;
        std::string line;
        std::getline(lines, line);
        while (std::getline(lines, line)) {
            cells += line.substr(0, line.find(',')) + ' ';
        }
        return cells;
    };
    CHECK(times("0 s", "0.1 s") == "0 ");
    CHECK(times("0.3 s", "0.1 s") == "0 0.1 0.2 0.3 "); // 0.3 / 0.1 is below 3 in binary
    CHECK(times("0.35 s", "0.1 s") == "0 0.1 0.2 0.3 ");
    CHECK(times("10 ms", "3.4 ms") == "0 0.003 0.007 ");
}

TEST_CASE("a trace goes to a file whole or not at all")
{
    const BlockAssets assets;
    const std::string path = assets.folder.file("trace.csv");
    const Outcome outcome = run({"trace", "block", "--out", path});
    CHECK(outcome.code == 0);
    CHECK(outcome.out == "");
    CHECK(assets.folder.text_of("trace.csv") == run({"trace", "block"}).out);

    const long before = assets.folder.count();
    const std::string other = assets.folder.file("other.csv");
    check_refused(run({"trace", "block", "--out", other, "--fault", "hlved"}), 2,
                  "standpipe: there is no fault \"hlved\"; did you mean \"halved\"? "
                  "Allowed: halved");
    check_refused(run({"trace", "block", "--out", "/dev/full"}), 2,
                  "standpipe: cannot write \"/dev/full\": No space left on device");
    check_refused(run({"trace", "block", "--out", other + "/x.csv"}), 2,
                  "standpipe: cannot write \"" + other + "/x.csv\": No such file or directory");
    check_refused(run({"trace", "block", "--out", ""}), 2,
                  "standpipe: cannot write \"\": No such file or directory");
    CHECK(assets.folder.count() == before);
}

TEST_CASE("more rows than can be of use are refused")
{
    const BlockAssets assets;
    check_refused(run({"trace", "block", "--for", "10 day"}), 2,
                  "standpipe: --for 864000 s with --every 0.1 s makes 8640001 rows; "
                  "allowed: 1000000 at most");
}

TEST_CASE("what a person can mend ends in code 2 and one line")
{
    const BlockAssets assets;
    check_refused(run({"trace", "blok"}), 2,
                  "standpipe: there is no rig \"blok\"; did you mean \"block\"? Allowed: block");
    check_refused(run({"trace", "../rigs/block"}), 2,
                  "standpipe: there is no rig \"../rigs/block\"; allowed: block");
    check_refused(run({"trace", "block", "--sheet", "missing.json"}), 2,
                  "standpipe: missing.json: cannot be read: there is no such file");
    const std::string other =
        assets.folder.with("other.json", R"({"format":1,"rig":"mower","commands":[]})");
    check_refused(run({"trace", "block", "--sheet", other}), 2,
                  "standpipe: " + other +
                      " at /rig: the run sheet is for the rig \"mower\", not for \"block\"");
    check_refused(run({"trace", "block\n\x1b[2J"}), 2,
                  "standpipe: there is no rig \"block\\x0a\\x1b[2J\"; allowed: block");
    check_refused(run({"list", "faults", "mower"}), 2,
                  "standpipe: there is no rig \"mower\"; allowed: block");
}

TEST_CASE("a wrong asset ends in code 2 with the way to the mistake")
{
    const BlockAssets assets(R"({"format":1,"id":"block"})");
    const std::string rig = assets.folder.file("") + "/rigs/block.json";
    check_refused(run({"list", "rigs"}), 2,
                  "standpipe: " + rig + " at /: key \"title\" is missing");
}

TEST_CASE("a full disk behind the standard output ends in code 2")
{
    const BlockAssets assets;
    for (const Words& words : {Words{"--help"},
                               {"--version"},
                               {"list", "rigs"},
                               {"trace", "block"},
                               {"trace", "block", "--every", "1 ms"}}) {
        std::ofstream full("/dev/full");
        std::ostringstream errors;
        CHECK(run_command_line(words, full, errors, blank) == 2);
        CHECK(errors.str() ==
              "standpipe: cannot write to the standard output: No space left on device\n");
    }
}

TEST_CASE("what is not the person's to mend ends in code 1 and one line")
{
    const auto failing = [](const auto& error) {
        return ScreenCommands{[error](const WindowRequest&) -> int { throw error; },
                              [](const ShotRequest&) { return 0; }};
    };
    check_refused(run({}, failing(sim::NumericsError("bowl.fuel is not finite at 3 s"))), 1,
                  "standpipe: bowl.fuel is not finite at 3 s");
    check_refused(run({}, failing(std::logic_error("no\nsuch unit"))), 1,
                  "standpipe: internal error: no\\x0asuch unit");
}

TEST_CASE("the screen gets its requests and gives the exit code")
{
    std::string seen;
    const ScreenCommands screen{[&](const WindowRequest& request) {
                                    seen = std::to_string(
                                        request.appearance.size.value_or(PixelSize{}).width);
                                    return 5;
                                },
                                [&](const ShotRequest& request) {
                                    seen = request.scene;
                                    return 6;
                                }};
    CHECK(run({"--size", "800x600"}, screen).code == 5);
    CHECK(seen == "800");
    CHECK(run({"shot", "bench", "--out", "a.png"}, screen).code == 6);
    CHECK(seen == "bench");
}

TEST_CASE("lists are aligned text, or JSON that says the same")
{
    const BlockAssets assets;
    CHECK(run({"list", "rigs"}).out == "block  Block of iron\n");
    CHECK(run({"list", "faults", "block"}).out == "halved  Half of it is gone  block\n");
    CHECK(run({"list", "readings", "block"}).out == "block.temperature  degC\n"
                                                    "audit.fuel_error   mg\n"
                                                    "audit.air_error    mmol\n");
    CHECK(run({"list", "commands", "block"}).out ==
          "set size  50 to 200 J/K  Its size\n"
          "dip                      Dip it into ice water\n"
          "fault ID  0 to 1         Give a fault a severity\n");
    using nlohmann::json;
    const auto listed = [](const Words& words) { return json::parse(run(words).out); };
    CHECK(listed({"list", "rigs", "--json"}) ==
          json::parse(R"([{"id":"block","title":"Block of iron"}])"));
    CHECK(listed({"list", "faults", "block", "--json"}) ==
          json::parse(R"([{"id":"halved","title":"Half of it is gone","where":"block"}])"));
    CHECK(listed({"list", "readings", "block", "--json"}) ==
          json::parse(R"([{"id":"block.temperature","unit":"degC"},
              {"id":"audit.fuel_error","unit":"mg"},{"id":"audit.air_error","unit":"mmol"}])"));
    CHECK(listed({"list", "commands", "block", "--json"}) == json::parse(R"({
        "controls":[{"id":"size","title":"Its size","unit":"J/K","low":50.0,"high":200.0,
                     "start":100.0}],
        "doings":[{"id":"dip","title":"Dip it into ice water","keys":[]},
                  {"id":"set","title":"Move a control","keys":["control","to"]},
                  {"id":"fault","title":"Give a fault a severity","keys":["id","to"]}]})"));
}

TEST_SUITE_END();
