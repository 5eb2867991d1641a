#include "tools.hpp"

#include "../temporary_folder.hpp"
#include "scenes/present/chance.hpp"
#include "scenes/shop/action_json.hpp"
#include "scenes/shop/asset_files.hpp"
#include "scenes/shop/record.hpp"
#include "sim/file_write.hpp"

#include <algorithm>

using namespace shop;

namespace {

/// A text with one to four things wrong: bytes changed, taken out, doubled, or a piece moved.
std::string mutated(std::string text, std::uint64_t seed)
{
    std::uint64_t place = 0;
    const auto any = [&](std::size_t count) {
        return static_cast<std::size_t>(scenes::chance(seed, place++) * static_cast<double>(count));
    };
    const std::string_view spice = "{}[]\",:-0919.eEtfn\\ \n\x01\xff";
    for (std::size_t changes = 1 + any(4); changes > 0 && text.size() > 2; --changes) {
        const std::size_t at = any(text.size() - 1);
        const std::size_t length = std::min(1 + any(40), text.size() - at);
        switch (any(6)) {
        case 0:
            text[at] = spice[any(spice.size())];
            break;
        case 1:
            text.erase(at, length);
            break;
        case 2:
            text.insert(at, text.substr(at, length));
            break;
        case 3:
            text.insert(any(text.size()), text.substr(at, length));
            break;
        case 4:
            text.resize(at);
            break;
        default: // a number out of all bounds
            if (const std::size_t digit = text.find_first_of("0123456789", at);
                digit != std::string::npos) {
                text.insert(digit, "9e30");
            }
        }
    }
    return text;
}

/// Everything that is said against a file says where and what, in one line.
void require_clear(const std::string& refusal)
{
    CHECK(refusal.size() > 10);
    CHECK(refusal.find('\n') == std::string::npos);
    CHECK(refusal.find("std::") == std::string::npos);
    CHECK(refusal.find("json.exception") == std::string::npos);
}

/// Has `read` take a text's mutations, and counts those that were refused.
template <class Read>
int refused(const std::string& text, int count, Read&& read)
{
    int refusals = 0;
    for (int i = 0; i < count; ++i) {
        CAPTURE(i);
        const std::string changed = mutated(text, seed_of(text) + static_cast<std::uint64_t>(i));
        try {
            read(changed);
        } catch (const sim::AssetError& error) {
            require_clear(error.what());
            ++refusals;
        } catch (const sim::RequestError& error) {
            require_clear(error.what());
            ++refusals;
        }
    }
    return refusals;
}

} // namespace

TEST_SUITE_BEGIN("shop");

TEST_CASE("three thousand mutated orders are taken or refused in a clear line")
{
    const std::string sealed = sealed_order(tests::order_text(), "order", tests::workshops());
    int refusals = 0;
    for (const std::string& text : {tests::order_text(), sealed}) {
        refusals += refused(text, 1500, [](const std::string& changed) {
            parse_order(changed, "order", tests::workshops());
        });
    }
    CHECK(refusals > 2000);
}

TEST_CASE(
    "four thousand mutated checks, repairs and beginnings are taken or refused in a clear line")
{
    const std::string assets = sim::assets_folder();
    const auto& shop = tests::workshop("mower");
    const Vocabulary vocabulary(shop.rig, *shop.instruments);
    int refusals = 0;
    int files = 0;
    for (const char* folder : {"/checks", "/repairs"}) {
        for (const std::string& path : json_files(assets + folder)) {
            ++files;
            refusals += refused(file_text(path), 50, [&](const std::string& changed) {
                const sim::JsonNode file = sim::JsonNode::parse(changed, "file");
                for (const sim::JsonNode& machine : file.at("machines").items()) {
                    read_procedure(machine.at("steps"), vocabulary);
                }
            });
        }
    }
    CHECK(files * 50 >= 3500);
    refusals +=
        refused(file_text(assets + "/beginnings/mower.json"), 500, [&](const std::string& changed) {
            const sim::JsonNode file = sim::JsonNode::parse(changed, "file");
            for (const auto& each : file.at("beginnings").items()) {
                read_procedure(each.at("steps"), vocabulary);
            }
        });
    CHECK(refusals > 2000);
}

TEST_CASE(
    "two thousand mutated records are refused in a clear line, or are the whole lines they were")
{
    const TemporaryFolder folder;
    const auto order = tests::small_order();
    const std::string path = folder.file("a.jsonl");
    {
        Attempt attempt(order, order->seed);
        RecordKeeper keeper = RecordKeeper::begin(path, {order->id, order->sum, order->seed, "B"});
        attempt.finish();
        for (const Action& action : std::vector<Action>{
                 DoCheck{"look_round", {"vapour"}}, Suspect{{"main_jet_plugged"}},
                 Finding{{"main_jet_plugged"}, Advice::clean, 5.0, 1.0, "note"}, HandIn{}}) {
            attempt.perform(action);
            keeper.append(attempt.lines().back());
        }
    }
    const std::string whole = folder.text_of("a.jsonl");
    const int refusals = refused(whole, 2000, [&](const std::string& changed) {
        sim::atomic_write(path, changed);
        const Record record = load_record(path);
        // What is taken is a beginning of what was written.
        CHECK(whole.starts_with(changed.substr(0, record.whole_bytes)));
    });
    CHECK(refusals > 1000);
}

TEST_CASE("a thousand mutated files of actions are taken or refused in a clear line")
{
    const TemporaryFolder folder;
    const std::string text =
        R"({"format": 1, "actions": [{"do": "suspect", "causes": ["a"]},
 {"do": "check", "check": "look_round", "heeded": ["vapour"]},
 {"do": "finding", "causes": ["a"], "advice": "clean", "minutes": 5, "money": 2, "note": "x"},
 {"do": "hand_in"}]})";
    const int refusals = refused(text, 1000, [&](const std::string& changed) {
        sim::atomic_write(folder.file("a.json"), changed);
        load_actions(folder.file("a.json"));
    });
    CHECK(refusals > 500);
}

TEST_SUITE_END();
