#include "sim/json_reader.hpp"
#include "sim/words.hpp"
#include "tests/temporary_folder.hpp"

#include <doctest/doctest.h>

#include <functional>
#include <random>
#include <sys/stat.h>

using namespace sim;
using namespace std::string_literals;

namespace {

std::string refusal(const std::function<void()>& action)
{
    try {
        action();
    } catch (const AssetError& error) {
        return error.what();
    }
    return "taken";
}

/// What is said of a text that is read under the name "a.json".
std::string parse_refusal(const std::string& text)
{
    return refusal([&] { JsonNode::parse(text, "a.json"); });
}

JsonNode node(const std::string& text)
{
    return JsonNode::parse(text, "a.json");
}

std::string repeated(const std::string& text, int count)
{
    std::string all;
    for (int i = 0; i < count; ++i) {
        all += text;
    }
    return all;
}

} // namespace

TEST_SUITE_BEGIN("sim");

TEST_CASE("what is not JSON is refused with its line and column")
{
    CHECK(parse_refusal("") == "a.json: is not JSON: it ends too early, at line 1, column 1");
    CHECK(parse_refusal("{\"a\":1") ==
          "a.json: is not JSON: it ends too early, at line 1, column 7");
    CHECK(parse_refusal("{\n  \"a\": 1,\n  \"b\": \"half") ==
          "a.json: is not JSON: it ends too early, at line 3, column 13");
    CHECK(parse_refusal("nul!") == "a.json: is not JSON at line 1, column 4");
    CHECK(parse_refusal("{\"a\":1} x") == "a.json: is not JSON at line 1, column 9");
    CHECK(parse_refusal("{\n\"a\": 01}") == "a.json: is not JSON at line 2, column 7");
    CHECK(parse_refusal("{\n\"a\": 1,\n}") == "a.json: is not JSON at line 3, column 1");
    CHECK(parse_refusal("[1, // one\n2]") == "a.json: is not JSON at line 1, column 5");
    CHECK(parse_refusal("[\"a\nb\"]") == "a.json: is not JSON at line 1, column 4");
    CHECK(parse_refusal("NaN") == "a.json: is not JSON at line 1, column 1");
}

TEST_CASE("zero bytes and bytes that are not UTF-8 are refused")
{
    CHECK(parse_refusal("{\"a\":1}\0 and more"s) ==
          "a.json: is not JSON: there is a zero byte at line 1, column 8");
    CHECK(parse_refusal("\0"s) == "a.json: is not JSON: there is a zero byte at line 1, column 1");
    CHECK(parse_refusal("[\"\xff\"]") == "a.json: is not JSON at line 1, column 3");
    CHECK(parse_refusal("[\"\xc3(\"]") == "a.json: is not JSON at line 1, column 4");
    CHECK(parse_refusal("[\"\xed\xa0\x80\"]") == "a.json: is not JSON at line 1, column 4");
    CHECK(parse_refusal("[\"\\ud800\"]") == "a.json: is not JSON at line 1, column 9");
    CHECK(parse_refusal("\xff\xfe[\0]\0"s) ==
          "a.json: is not JSON: there is a zero byte at line 1, column 4");
}

TEST_CASE("deep nesting is refused before it can do harm")
{
    CHECK(parse_refusal(repeated("[", 64) + repeated("]", 64)) == "taken");
    CHECK(parse_refusal(repeated("[", 65)) == "a.json: is nested more than 64 levels deep");
    CHECK(parse_refusal(repeated("[", 1'000'000)) == "a.json: is nested more than 64 levels deep");
    CHECK(parse_refusal(repeated("{\"a\":", 100'000)) ==
          "a.json: is nested more than 64 levels deep");
}

TEST_CASE("a key given twice is refused with the way to it")
{
    CHECK(parse_refusal("{\"a\":1,\"a\":2}") == "a.json at /: key \"a\" is given twice");
    CHECK(parse_refusal("{\"list\":[0,{\"x/y\":{\"b\":1,\"b\":1}}]}") ==
          "a.json at /list/1/x~1y: key \"b\" is given twice");
    CHECK(parse_refusal("[{\"a\":1},{\"a\":1}]") == "taken");
    CHECK(parse_refusal("{\"\\u0000\\n\":1,\"\\u0000\\n\":1}") ==
          "a.json at /: key \"\\x00\\x0a\" is given twice");
}

TEST_CASE("a number too large for the machine is refused with the way to it")
{
    CHECK(parse_refusal("{\"a\":[1,1e999]}") ==
          "a.json at /a/1: the number is too large to be read");
    CHECK(parse_refusal("-1e400") == "a.json at /: the number is too large to be read");
    CHECK(node(repeated("9", 300)).number() == doctest::Approx(1e300));
    CHECK(parse_refusal(repeated("9", 400)) == "a.json at /: the number is too large to be read");
    CHECK(node("1e-999").number() == 0.0);
}

TEST_CASE("a text or file over 4 MB is refused")
{
    const std::string long_text = "[\"" + std::string(5'000'000, 'x') + "\"]";
    const TemporaryFolder folder;
    const std::string path = folder.with("long.json", long_text);
    CHECK(parse_refusal(long_text) == "a.json: is over 4 MB; no file of this program is that long");
    CHECK(refusal([&] { JsonNode::load(path); }) ==
          path + ": is over 4 MB; no file of this program is that long");
    CHECK(parse_refusal("[" + repeated("0,", 2'000'000) + "0]") == "taken");
}

TEST_CASE("a file that cannot be read is refused with the reason")
{
    const TemporaryFolder folder;
    const auto refused = [](const std::string& path) {
        return refusal([&] { JsonNode::load(path); });
    };
    const std::string missing = folder.file("missing.json");
    CHECK(refused(missing) == missing + ": cannot be read: there is no such file");
    CHECK(refused("") == ": cannot be read: there is no such file");
    CHECK(refused("/dev/zero") == "/dev/zero: cannot be read: it is not a regular file");
    const std::string itself = folder.file("");
    CHECK(refused(itself) == itself + ": cannot be read: it is not a regular file");
    const std::string pipe = folder.file("pipe"); // opening it would wait for ever
    REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
    CHECK(refused(pipe) == pipe + ": cannot be read: it is not a regular file");
    const std::string round = folder.file("round");
    std::filesystem::create_symlink("round", round);
    CHECK(refused(round) == round + ": cannot be read: Too many levels of symbolic links");
}

TEST_CASE("a value of the wrong kind is refused by what it is and what it must be")
{
    const JsonNode root =
        node(R"({"o":{},"l":[1],"t":"text","n":1.5,"b":true,"z":null,"i":-3,"u":3})");
    const auto text = [&](const char* key) { return refusal([&] { (void)root.at(key).text(); }); };
    CHECK(text("n") == "a.json at /n: must be text in quotes, not a number");
    CHECK(text("i") == "a.json at /i: must be text in quotes, not a number");
    CHECK(text("o") == "a.json at /o: must be text in quotes, not an object { }");
    CHECK(text("l") == "a.json at /l: must be text in quotes, not a list [ ]");
    CHECK(text("b") == "a.json at /b: must be text in quotes, not true or false");
    CHECK(text("z") == "a.json at /z: must be text in quotes, not null");
    CHECK(refusal([&] { (void)root.at("t").number(); }) ==
          "a.json at /t: must be a number, not text");
    CHECK(refusal([&] { (void)root.at("t").items(); }) ==
          "a.json at /t: must be a list [ ], not text");
    CHECK(refusal([&] { (void)root.at("l").at("x"); }) ==
          "a.json at /l: must be an object { }, not a list [ ]");
    CHECK(refusal([&] { (void)root.at("l").items()[0].text(); }) ==
          "a.json at /l/0: must be text in quotes, not a number");
    CHECK(refusal([&] { (void)node("7").keys(); }) ==
          "a.json at /: must be an object { }, not a number");
    CHECK(root.at("u").number() == 3.0);
    CHECK(root.at("i").number() == -3.0);
}

TEST_CASE("missing and unknown keys are refused, with the nearest and all that are allowed")
{
    const JsonNode root = node(R"({"chok":1})");
    CHECK(refusal([&] { (void)root.at("choke"); }) == "a.json at /: key \"choke\" is missing");
    CHECK(refusal([&] {
              root.allow_keys({"at", "choke"});
          }) == "a.json at /: unknown key \"chok\"; did you mean \"choke\"? Allowed: at, choke");
    CHECK(refusal([&] {
              root.allow_keys({"at", "do"});
          }) == "a.json at /: unknown key \"chok\"; allowed: at, do");
    const JsonNode hostile = node("{\"\\u001b[2J" + std::string(1'000'000, 'x') + "\":1}");
    CHECK(refusal([&] {
              hostile.allow_keys({"at", "do"});
          }) ==
          "a.json at /: unknown key \"\\x1b[2J" + std::string(56, 'x') + "...\"; allowed: at, do");
}

TEST_CASE("numbers out of range and quantities of the wrong kind are refused")
{
    CHECK(node("1").number_between(0.0, 1.0) == 1.0);
    CHECK(refusal([] { (void)node("1.0000001").number_between(0.0, 1.0); }) ==
          "a.json at /: 1.0000001 is out of range; allowed: 0 to 1");
    CHECK(refusal([] { (void)node("-1e300").number_between(-0.5, 1.0); }) ==
          "a.json at /: -1e+300 is out of range; allowed: -0.5 to 1");
    CHECK(node("\"2 min\"").quantity(Dimension::duration) == 120.0);
    CHECK(node("0.5").quantity(Dimension::ratio) == 0.5);
    CHECK(refusal([] { (void)node("5").quantity(Dimension::duration); }) ==
          "a.json at /: wants a duration as text with a unit; allowed: s, ms, min, h, day");
    CHECK(refusal([] { (void)node("\"5 kPa\"").quantity(Dimension::duration); }) ==
          "a.json at /: wants a duration, got \"5 kPa\" (a pressure); allowed: s, ms, min, h, day");
}

TEST_CASE("a list of more than 100,000 entries is refused")
{
    CHECK(refusal([] { (void)node("[" + repeated("0,", 100'000) + "0]").items(); }) ==
          "a.json at /: holds more than 100000 entries");
}

TEST_CASE("a complaint is one printable line whatever its author puts in")
{
    const std::string text = node("1").wrong("unknown kind \"\x1b\n\0\""s).what();
    CHECK(text == "a.json at /: unknown kind \"\\x1b\\x0a\\x00\"");
}

TEST_CASE("the nearest word is close, or there is none")
{
    const std::vector<std::string> choices{"choke", "throttle_lever", "tap", "load"};
    CHECK(nearest("chok", choices) == "choke");
    CHECK(nearest("throttel_lever", choices) == "throttle_lever");
    CHECK(nearest("lod", choices) == "load");
    CHECK(nearest("x", choices).empty());
    CHECK(nearest("", choices).empty());
    CHECK(nearest("carburetor", choices).empty());
    CHECK(choices_hint("x", {}) == "; allowed: none");
}

TEST_CASE("any damage to a file is refused or read, never more")
{
    const std::string sound = R"({"format":1,"rig":"a","faults":[{"id":"b","severity":0.5}],
        "commands":[{"at":"5 s","do":"c\u0041\n"},{"at":"8e-1 s","do":"set","to":-1.5e3}]})";
    std::mt19937 random(20240607);
    for (int round = 0; round < 20'000; ++round) {
        std::string text = sound;
        for (unsigned change = random() % 4; change <= 3; ++change) {
            const std::size_t at = random() % text.size();
            switch (random() % 3) {
            case 0:
                text[at] = static_cast<char>(random());
                break;
            case 1:
                text.erase(at, 1);
                break;
            default:
                text.insert(at, 1, "{}[]\",:\\0-eE."[random() % 13]);
            }
        }
        text.resize(random() % 2 == 0 ? text.size() : random() % text.size());
        const std::string said = parse_refusal(text);
        CAPTURE(text);
        const bool named = said == "taken" || said.starts_with("a.json");
        CHECK(named);
        CHECK(said.find('\n') == std::string::npos);
    }
}

TEST_SUITE_END();
