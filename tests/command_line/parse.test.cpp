#include "scenes/command_line/command_line.hpp"
#include "sim/error.hpp"

#include <doctest/doctest.h>

using namespace scenes;
using Words = std::vector<std::string>;

namespace {

std::string refusal(const Words& words)
{
    try {
        parse_command_line(words);
    } catch (const sim::RequestError& error) {
        return error.what();
    }
    return "taken";
}

template <class T>
T parsed(const Words& words)
{
    const Request request = parse_command_line(words);
    REQUIRE(std::holds_alternative<T>(request));
    return std::get<T>(request);
}

/// What is said of an option of `trace`.
std::string trace_refusal(const std::string& option, const std::string& value)
{
    return refusal({"trace", "mower", option, value});
}

} // namespace

TEST_SUITE_BEGIN("command_line");

TEST_CASE("no words at all ask for the window as it is by default")
{
    CHECK(parsed<WindowRequest>({}).appearance == Appearance{});
}

TEST_CASE("the window's looks can be asked for")
{
    const auto request =
        parsed<WindowRequest>({"--theme", "blackboard", "--size", "1920x1080", "--scale", "160",
                               "--language", "es", "--units", "us", "--projector"});
    CHECK(request.appearance == Appearance{Ground::blackboard, PixelSize{1920, 1080}, 160, "es",
                                           UnitSet::us_customary, true});
    CHECK(refusal({"--language", "ex"}) ==
          "--language: unknown language \"ex\"; did you mean \"en\"? Allowed: en, es");
    CHECK(refusal({"--units", "uk"}) ==
          "--units: unknown units \"uk\"; did you mean \"us\"? Allowed: si, us");
    CHECK(refusal({"--projector", "shot", "bench", "--out", "a.png"}) ==
          "shot excludes --projector");
}

TEST_CASE("a trace takes what is given and leaves the rest to its defaults")
{
    const auto bare = parsed<TraceRequest>({"trace", "mower"});
    CHECK(bare.rig == "mower");
    CHECK(bare.faults.empty());
    CHECK_FALSE(bare.sheet.has_value());
    CHECK(bare.ambient == 293.15);
    CHECK_FALSE(bare.length.has_value());
    CHECK(bare.every == 0.1);
    CHECK_FALSE(bare.may_leap);
    CHECK_FALSE(bare.file.has_value());

    const auto full = parsed<TraceRequest>(
        {"trace", "--fault", "stale_fuel", "mower", "--fault=needle_dirt=0.25", "--fault",
         "float_heavy=25 %", "--sheet", "a.json", "--ambient", "-10 degC", "--for", "2 h",
         "--every", "50 ms", "--leaps", "--out", "-a.csv"});
    const std::vector<sim::SetFault> faults{
        {"stale_fuel", 1.0}, {"needle_dirt", 0.25}, {"float_heavy", 0.25}};
    CHECK(full.rig == "mower");
    CHECK(full.faults == faults);
    CHECK(full.sheet == "a.json");
    CHECK(full.ambient == doctest::Approx(263.15));
    CHECK(full.length == 7200.0);
    CHECK(full.every == 0.05);
    CHECK(full.may_leap);
    CHECK(full.file == "-a.csv");
}

TEST_CASE("a list and a picture are asked for")
{
    const auto list = parsed<ListRequest>({"list", "--json", "faults", "mower"});
    CHECK(list.what == ListRequest::What::faults);
    CHECK(list.rig == "mower");
    CHECK(list.as_json);
    CHECK(parsed<ListRequest>({"list", "rigs"}).what == ListRequest::What::rigs);
    CHECK(parsed<ListRequest>({"list", "readings", "a"}).what == ListRequest::What::readings);
    CHECK(parsed<ListRequest>({"list", "commands", "a"}).what == ListRequest::What::commands);

    const auto shot = parsed<ShotRequest>({"shot", "bench", "--out", "a.png", "--at", "2 min",
                                           "--theme", "blackboard", "--sheet", "a.json"});
    CHECK(shot.scene == "bench");
    CHECK(shot.picture == "a.png");
    CHECK(shot.at_seconds == 120.0);
    CHECK(shot.sheet == "a.json");
    CHECK(shot.appearance == Appearance{.ground = Ground::blackboard});
    CHECK(parsed<ShotRequest>({"shot", "bench", "--out", "a.png"}).at_seconds == 30.0);
    const auto close = parsed<ShotRequest>(
        {"shot", "bench", "--out", "a.png", "--part", "main jet", "--boxes", "b.csv", "--outside"});
    CHECK(close.part == "main jet");
    CHECK(close.boxes == "b.csv");
    CHECK(close.is_shut);
    CHECK_FALSE(shot.is_shut);
    CHECK_FALSE(shot.rig.has_value());
}

TEST_CASE("a sound is asked for with a length and a pace at which it is heard")
{
    const auto sound = parsed<SoundRequest>({"sound", "mower", "--fault", "a=0.5", "--at", "90 s",
                                             "--for", "5 s", "--pace", "0.1", "--out", "a.wav"});
    CHECK(sound.rig == "mower");
    CHECK(sound.faults == std::vector{sim::SetFault{"a", 0.5}});
    CHECK(sound.from_seconds == 90.0);
    CHECK(sound.length_seconds == 5.0);
    CHECK(sound.pace == 0.1);
    CHECK(sound.file == "a.wav");
    CHECK(parsed<SoundRequest>({"sound", "mower", "--out", "a.wav"}).length_seconds == 10.0);
    CHECK(refusal({"sound", "mower", "--out", "a.wav", "--pace", "10"}) ==
          "--pace: \"10\" is out of range; allowed: 0.1 to 1");
    CHECK(refusal({"sound", "mower"}) == "--out is required");
}

TEST_CASE("an order's worksheet and key are asked for in a language")
{
    const auto bare = parsed<OrderRequest>({"order", "worksheet", "a.json"});
    CHECK(bare.what == OrderRequest::What::worksheet);
    CHECK(bare.file == "a.json");
    CHECK_FALSE(bare.out.has_value());
    CHECK_FALSE(bare.key.has_value());
    CHECK(bare.language == "en");
    const auto full = parsed<OrderRequest>(
        {"order", "--language", "es", "worksheet", "--key", "k.html", "a.json", "--out", "s.html"});
    CHECK(full.file == "a.json");
    CHECK(full.out == "s.html");
    CHECK(full.key == "k.html");
    CHECK(full.language == "es");
    CHECK(refusal({"order", "worksheet"}) == "order worksheet wants the order's file or id");
    CHECK(refusal({"order", "worksheets", "a.json"}) ==
          "cannot order \"worksheets\"; did you mean \"worksheet\"? Allowed: check, play, seal, "
          "worksheet");
    CHECK(refusal({"order"}) == "order wants to know what; allowed: check, play, seal, worksheet");
    CHECK(refusal({"order", "worksheet", "a.json", "--language", "ex"}) ==
          "--language: unknown language \"ex\"; did you mean \"en\"? Allowed: en, es");
    CHECK(refusal({"order", "worksheet", "a.json", "--key"}) == "--key: 1 required FILE missing");
}

TEST_CASE("the reference pictures go to a folder")
{
    const auto pictures = parsed<PicturesRequest>({"pictures", "a", "--rig", "trimmer"});
    CHECK(pictures.folder == "a");
    CHECK(pictures.rig == "trimmer");
    CHECK(refusal({"pictures"}) == "FOLDER is required");
}

TEST_CASE("the machine in window and picture can be asked for")
{
    CHECK_FALSE(parsed<WindowRequest>({}).rig.has_value());
    CHECK(parsed<WindowRequest>({"--rig", "trimmer"}).rig == "trimmer");
    const auto shot = parsed<ShotRequest>({"shot", "bench", "--rig", "trimmer", "--out", "a.png"});
    CHECK(shot.rig == "trimmer");
    CHECK(refusal({"shot", "bench", "--out", "a.png", "--rig"}) == "--rig: 1 required RIG missing");
    CHECK(refusal({"--rig", "trimmer", "shot", "bench", "--out", "a.png"}) ==
          "shot excludes --rig");
}

TEST_CASE("help and version are had everywhere, whatever else is missing")
{
    for (const Words& before : {Words{}, {"list"}, {"trace"}, {"shot"}, {"trace", "mower"}}) {
        Words help = before;
        help.emplace_back("--help");
        const std::string text = parsed<PrintRequest>(help).text;
        CHECK(text.find("Usage: standpipe" + (before.empty() ? "" : " " + before[0])) !=
              std::string::npos);
        Words version = before;
        version.emplace_back("--version");
        CHECK(parsed<PrintRequest>(version).text.starts_with("standpipe 0."));
    }
}

TEST_CASE("words that make no sense are refused in one line")
{
    CHECK(refusal({"trce", "mower"}) ==
          "unknown command \"trce\"; did you mean \"trace\"? Allowed: list, trace, shot, sound, "
          "pictures, check, tell-apart, order, mark");
    CHECK(refusal({""}) == "unknown command \"\"; allowed: list, trace, shot, sound, pictures, "
                           "check, tell-apart, order, mark");
    CHECK(refusal({"--bogus"}) == "The following argument was not expected: --bogus");
    CHECK(refusal({"trace"}) == "RIG is required");
    CHECK(refusal({"trace", "mower", "bench"}) == "The following argument was not expected: bench");
    CHECK(refusal({"trace", "mower", "--fault", "a", "b"}) ==
          "The following argument was not expected: b");
    CHECK(refusal({"trace", "mower", "--for"}) == "--for: 1 required TIME missing");
    CHECK(refusal({"trace", "mower", "--for", "1 s", "--for", "2 s"}) ==
          "--for: At Most 1 required but received 2");
    CHECK(refusal({"--theme", "paper", "trace", "mower"}) == "trace excludes --theme");
    CHECK(refusal({"shot", "bench"}) == "--out is required");
    CHECK(refusal({"list"}) ==
          "list wants to know what; allowed: rigs, faults, readings, commands");
    CHECK(refusal({"list", "falts", "mower"}) == "cannot list \"falts\"; did you mean \"faults\"? "
                                                 "Allowed: rigs, faults, readings, commands");
    CHECK(refusal({"list", "faults"}) == "list faults wants a rig; standpipe list rigs names them");
    CHECK(refusal({"list", "rigs", "mower"}) == "list rigs takes no rig, got \"mower\"");
}

TEST_CASE("times out of range or without a unit are refused")
{
    CHECK(trace_refusal("--for", "10 day") == "taken");
    CHECK(trace_refusal("--for", "0 s") == "taken");
    CHECK(trace_refusal("--for", "11 day") ==
          "--for: \"11 day\" is out of range; allowed: 0 s to 10 day");
    CHECK(trace_refusal("--for", "-1 s") ==
          "--for: \"-1 s\" is out of range; allowed: 0 s to 10 day");
    CHECK(trace_refusal("--for", "120") ==
          "--for: wants a duration, got \"120\" (no unit); allowed: s, ms, min, h, day");
    CHECK(trace_refusal("--for", "nan s") ==
          "--for: wants a duration, got \"nan s\" (not a usable number); "
          "allowed: s, ms, min, h, day");
    CHECK(trace_refusal("--for", "") ==
          "--for: wants a duration, got \"\" (no number); allowed: s, ms, min, h, day");
    CHECK(trace_refusal("--every", "1 ms") == "taken");
    CHECK(trace_refusal("--every", "0.9 ms") ==
          "--every: \"0.9 ms\" is out of range; allowed: 1 ms to 10 day");
}

TEST_CASE("temperatures and severities out of range are refused")
{
    CHECK(trace_refusal("--ambient", "-40 degC") == "taken");
    CHECK(trace_refusal("--ambient", "-40 degF") == "taken"); // the same, by definition
    CHECK(trace_refusal("--ambient", "60 degC") == "taken");
    CHECK(trace_refusal("--ambient", "61 degC") ==
          "--ambient: \"61 degC\" is out of range; allowed: -40 degC to 60 degC");
    CHECK(trace_refusal("--ambient", "20") ==
          "--ambient: wants a temperature, got \"20\" (no unit); allowed: degC, degF, K");
    CHECK(trace_refusal("--fault", "a=0") == "taken");
    CHECK(trace_refusal("--fault", "a=1.5") ==
          "--fault a: \"1.5\" is out of range; allowed: 0 to 1");
    CHECK(trace_refusal("--fault", "a=-0.1") ==
          "--fault a: \"-0.1\" is out of range; allowed: 0 to 1");
    CHECK(trace_refusal("--fault", "a=") ==
          "--fault a: wants a ratio, got \"\" (no number); allowed: a plain number, %");
    CHECK(trace_refusal("--fault", "a=0.5=1") ==
          "--fault a: wants a ratio, got \"0.5=1\" (no such unit); allowed: a plain number, %");
    CHECK(refusal({"trace", "mower", "--fault", "a", "--fault", "a=0.5"}) ==
          "--fault a is given twice");
}

TEST_CASE("looks out of range are refused")
{
    CHECK(refusal({"--theme", "papper"}) ==
          "--theme: unknown theme \"papper\"; did you mean \"paper\"? Allowed: paper, blackboard");
    for (const std::string size : {"", "x", "1280", "1280x", "1280x720x2", "-1280x720", "0x0",
                                   "319x720", "8193x720", "1e3x720", "99999999999x720"}) {
        CHECK(refusal({"--size", size}) == "--size: wants WIDTHxHEIGHT in pixels, got \"" + size +
                                               "\"; allowed: 320x320 to 8192x8192");
    }
    for (const std::string scale : {"", "99", "201", "150.5", "150 %", "1e2"}) {
        CHECK(refusal({"--scale", scale}) == "--scale: wants a whole number of per cent, got \"" +
                                                 scale + "\"; allowed: 100 to 200");
    }
}

TEST_SUITE_END();
