#include "tools.hpp"

#include "../temporary_folder.hpp"
#include "scenes/shop/record.hpp"
#include "sim/file_write.hpp"

#include <fstream>
#include <sstream>

using namespace shop;

namespace {

std::string text_of(const std::string& path)
{
    std::ifstream file(path, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

std::vector<Action> some_actions()
{
    return {
        Suspect{{"bowl_vent_plugged", "main_jet_plugged"}},
        DoCheck{"look_round", {"vapour"}},
        Predict{"bowl_drain_crack", "bowl", "sound"},
        DoCheck{"bowl_drain_crack", {}},
        DoRepair{"clear_vents", {}},
        DoCheck{"start_cold", {}},
        Finding{{"bowl_vent_plugged"}, Advice::clean, 8.0, 0.0, "The \"vent\" was shut,\n\xC3\xA4"},
        HandIn{}};
}

/// A record of a small order; gives the attempt.
Attempt recorded(const std::string& path)
{
    const auto order = tests::small_order();
    Attempt attempt(order, order->seed);
    RecordKeeper keeper =
        RecordKeeper::begin(path, {order->id, order->sum, order->seed, "Bench 4"});
    attempt.finish();
    for (const Action& action : some_actions()) {
        attempt.perform(action);
        keeper.append(attempt.lines().back());
    }
    return attempt;
}

std::string refusal(const std::string& path)
{
    return tests::refusal_of([&] {
        const auto order = tests::small_order();
        Attempt attempt(order, order->seed);
        replay(load_record(path), "record", attempt);
    });
}

} // namespace

TEST_SUITE_BEGIN("shop");

TEST_CASE("a record replays to the same readings, minutes and money")
{
    const TemporaryFolder folder;
    const std::string path = folder.file("a.jsonl");
    const Attempt first = recorded(path);
    const Record record = load_record(path);
    CHECK(record.head.student == "Bench 4");
    CHECK(record.lines.size() == some_actions().size());
    const auto order = tests::small_order();
    Attempt again(order, record.head.seed);
    replay(record, path, again);
    CHECK(again.is_handed_in());
    CHECK(again.minutes() == first.minutes());
    for (std::size_t i = 0; i < again.lines().size(); ++i) {
        CHECK(again.lines()[i].action == some_actions()[i]);
        CHECK(again.lines()[i].observations == first.lines()[i].observations);
    }
}

TEST_CASE("a changed, shortened or reordered record is refused with the line")
{
    const TemporaryFolder folder;
    const std::string path = folder.file("a.jsonl");
    recorded(path);
    const std::string whole = text_of(path);
    const auto changed = [&](const std::string& what, const std::string& with) {
        std::string text = whole;
        text.replace(text.find(what), what.size(), with);
        sim::atomic_write(path, text);
        return refusal(path);
    };
    CHECK(changed("look_round", "vent_probe").find("line 3 at /sum: does not fit") !=
          std::string::npos);
    CHECK(changed("Bench 4", "Bench 5").find("line 1 at /sum: does not fit") != std::string::npos);
    std::vector<std::string> lines;
    std::istringstream stream(whole);
    for (std::string line; std::getline(stream, line);) {
        lines.push_back(line);
    }
    std::string without;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        without += i == 2 ? "" : lines[i] + "\n";
    }
    sim::atomic_write(path, without);
    CHECK(refusal(path).find("line 3 at /sum: does not fit") != std::string::npos);
}

TEST_CASE("a last line that a crash cut short is dropped, and the record goes on")
{
    const TemporaryFolder folder;
    const std::string path = folder.file("a.jsonl");
    recorded(path);
    const std::string whole = text_of(path);
    sim::atomic_write(path, whole.substr(0, whole.size() - 20));
    Record record;
    {
        RecordKeeper keeper = RecordKeeper::resume(path, record);
        CHECK(record.lines.size() == some_actions().size() - 1);
        keeper.append({HandIn{}, {}, 0.0, 0.0, false});
    }
    CHECK(text_of(path) == whole);
}

TEST_CASE("a record of another order, or of another state of it, is refused")
{
    const TemporaryFolder folder;
    const std::string path = folder.file("a.jsonl");
    recorded(path);
    const auto against = [&](const std::string& what, const std::string& with) {
        return tests::refusal_of([&] {
            const auto order =
                parse_order(tests::order_text(what, with), "order", tests::workshops());
            require_own(load_record(path), "record", *order);
        });
    };
    CHECK(against("small_order", "other_order") ==
          "record: is a record of the order \"small_order\", not of \"other_order\"");
    CHECK(against("\"seed\": 3", "\"seed\": 4")
              .starts_with("record: was made with another state of the order"));
}

TEST_CASE("two windows do not write one record, and none is overwritten")
{
    const TemporaryFolder folder;
    const std::string path = folder.file("a.jsonl");
    const RecordKeeper keeper = RecordKeeper::begin(path, {"small_order", 1, 1, ""});
    Record record;
    CHECK(tests::refusal_of([&] {
              RecordKeeper::resume(path, record);
          }).ends_with("is being written by another window"));
    CHECK(tests::refusal_of([&] {
              RecordKeeper::begin(path, {});
          }).starts_with("cannot write the record"));
}

TEST_SUITE_END();
