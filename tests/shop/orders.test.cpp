#include "tools.hpp"

#include "../temporary_folder.hpp"
#include "scenes/present/chance.hpp"
#include "scenes/present/phrase.hpp"
#include "scenes/present/wording.hpp"
#include "scenes/shop/order_files.hpp"
#include "scenes/shop/review.hpp"

#include <algorithm>
#include <cstdlib>
#include <map>
#include <set>
#include <thread>

using namespace shop;

namespace {

std::vector<std::shared_ptr<const Order>> shipped()
{
    std::vector<std::shared_ptr<const Order>> orders;
    for (const std::string& file : order_files()) {
        if (file.starts_with(sim::assets_folder())) {
            orders.push_back(load_order(file, tests::workshops()));
        }
    }
    return orders;
}

/// Its table; readings that orders share are simulated once for all of them.
Table table_of(const Order& order, const TemporaryFolder& folder)
{
    const std::string store =
        folder.file(order.workshop->rig->id + std::to_string(seed_of(order.history_text)) +
                    std::to_string(order.weather.temperature.si) + ".jsonl");
    const std::atomic<bool> is_cancelled = false;
    return *simulate_table(order, std::max(std::thread::hardware_concurrency(), 1U), store, {},
                           is_cancelled);
}

double mark_of(const std::shared_ptr<const Order>& order, const Table& table, const Path& good,
               Attempt& attempt)
{
    const Marks marks = mark(attempt, table, good);
    CHECK(marks.marks.size() == 8);
    for (const Mark& mark : marks.marks) {
        CHECK(mark.got >= 0.0);
        CHECK(mark.got <= mark.of);
        CHECK(mark.says.ends_with("."));
        scenes::choose_language("es");
        CHECK(scenes::worded(mark.says) != mark.says);
        scenes::choose_language("en");
    }
    CHECK(marks.of() == order->weights.sum());
    return marks.got() / marks.of();
}

/// Presses what comes under the hand, twelve times, and names a cause at random.
void click_at_random(Attempt& attempt, std::uint64_t seed)
{
    const Order& order = attempt.order();
    const auto& faults = order.workshop->rig->faults;
    const auto any = [&](std::uint64_t place, std::size_t count) {
        return static_cast<std::size_t>(scenes::chance(seed, place) * static_cast<double>(count));
    };
    for (std::uint64_t i = 0; i < 12; ++i) {
        if (scenes::chance(seed, 100 + i) < 0.5) {
            const std::string& check = order.checks[any(i, order.checks.size())];
            while (const Order::Ask* ask = attempt.asks_before(check)) {
                const Reading& reading =
                    *order.workshop->find_check(check)->procedure.find(ask->reading);
                attempt.perform(Predict{check, ask->reading,
                                        reading.words.empty() ? "sound" : reading.words[0].say});
            }
            attempt.perform(DoCheck{check, {}});
        } else {
            attempt.perform(DoRepair{order.repairs[any(i, order.repairs.size())], {}});
        }
    }
    attempt.perform(Finding{
        {faults[any(200, faults.size())].id}, static_cast<Advice>(any(201, 5)), 10.0, 10.0, ""});
    attempt.perform(HandIn{});
}

/// Fits every new part there is, sees to the cautions, verifies, and names what most parts are for.
void replace_everything(Attempt& attempt)
{
    const Order& order = attempt.order();
    for (const std::string& id : order.repairs) {
        const Repair& repair = *order.workshop->find_repair(id);
        if (repair.kind == Repair::Kind::replace) {
            attempt.perform(DoRepair{id, repair.cautions});
        }
    }
    for (const std::string& id : order.solved) {
        const Check& check = *order.workshop->find_check(id);
        while (const Order::Ask* ask = attempt.asks_before(id)) {
            const Reading& reading = *check.procedure.find(ask->reading);
            attempt.perform(
                Predict{id, ask->reading, reading.words.empty() ? "sound" : reading.words[0].say});
        }
        attempt.perform(DoCheck{id, check.cautions});
    }
    attempt.perform(Finding{{order.workshop->rig->faults.front().id},
                            Advice::replace,
                            attempt.minutes(),
                            attempt.money(),
                            "Everything is new."});
    attempt.perform(HandIn{});
}

} // namespace

TEST_SUITE_BEGIN("long");

TEST_CASE("every shipped order can be given and tells good work from clicking and from new parts")
{
    const TemporaryFolder folder;
    auto orders = shipped();
    REQUIRE(orders.size() >= 24);
    if (std::getenv("STANDPIPE_ALL_ORDERS") == nullptr) { // all of them take some twenty minutes
        std::erase_if(orders, [](const auto& order) {
            return order->workshop->rig->id != "mower" || order->level > 1;
        });
    }
    double of_clickers = 0.0;
    for (const auto& order : orders) {
        CAPTURE(order->id);
        const Table table = table_of(*order, folder);
        const Review review = shop::review(order, table);
        std::string said;
        for (const auto& list : {review.refusals, review.warnings}) {
            for (const std::string& line : list) {
                said += line + "\n";
            }
        }
        CHECK_MESSAGE(said.empty(), said);
        CHECK(review.marks.got() == doctest::Approx(review.marks.of()));

        double of_clicker = 0.0;
        for (std::uint64_t seed = 1; seed <= 3; ++seed) {
            Attempt clicker(order, seed);
            clicker.finish();
            click_at_random(clicker, seed_of(order->id, seed));
            of_clicker += mark_of(order, table, review.good, clicker) / 3.0;
        }
        Attempt replacer(order, order->seed);
        replacer.finish();
        replace_everything(replacer);
        const double of_replacer = mark_of(order, table, review.good, replacer);
        CAPTURE(of_clicker);
        CAPTURE(of_replacer);
        CHECK(of_clicker < 0.4);
        CHECK(of_replacer < 0.8);
        CHECK(of_replacer > of_clicker);
        of_clickers += of_clicker / static_cast<double>(orders.size());
    }
    CHECK(of_clickers < 0.25);
}

TEST_SUITE_END();

TEST_SUITE_BEGIN("shop");

TEST_CASE("shipped orders are sealed, and of the kinds an instructor needs")
{
    std::map<std::string, int> machines;
    std::set<int> levels;
    int several = 0;
    int replacing = 0;
    for (const auto& order : shipped()) {
        CAPTURE(order->id);
        ++machines[order->workshop->rig->id];
        levels.insert(order->level);
        several += order->answer.faults.size() > 1 ? 1 : 0;
        replacing += order->answer.advice == Advice::replace ? 1 : 0;
        const std::string text = sim::JsonNode::load(order_file(order->id)).dump();
        CHECK(text.find("\"answer\"") == std::string::npos);
        CHECK(text.find("\"sealed\"") != std::string::npos);
        CHECK(text.find(order->answer.finding) == std::string::npos);
    }
    CHECK(machines.size() >= 2);
    CHECK(levels.size() == 4);
    CHECK(several >= 1);
    CHECK(replacing >= 2);
}

TEST_CASE("a sealed order is the same order, and says nothing of what it hides")
{
    const std::string sealed = sealed_order(tests::order_text(), "order", tests::workshops());
    CHECK(sealed.find("bowl_vent") == std::string::npos);
    CHECK(sealed.find("was shut") == std::string::npos);
    const auto order = parse_order(sealed, "sealed", tests::workshops());
    CHECK(order->answer.faults == tests::small_order()->answer.faults);
    CHECK(order->answer.finding == tests::small_order()->answer.finding);
    CHECK(sealed_order(sealed, "sealed", tests::workshops()) == sealed);
    const auto again = parse_order(write_order(*order), "written", tests::workshops());
    CHECK(again->answer.faults == order->answer.faults);
    CHECK(again->weather.temperature.si == order->weather.temperature.si);
    CHECK(again->checks == order->checks);
}

TEST_CASE("an edited seal is refused, and the refusal tells nothing")
{
    std::string sealed = sealed_order(tests::order_text(), "order", tests::workshops());
    const std::size_t at = sealed.find("\"sealed\": \"") + 40;
    sealed[at] = sealed[at] == '0' ? '1' : '0';
    CHECK(tests::refusal_of([&] { parse_order(sealed, "order", tests::workshops()); }) ==
          "order at /sealed: the sealed answer was changed, or is for another rig; allowed: what "
          "the program itself has sealed");
}

TEST_CASE("what is wrong with an order is said with its place and what would be right")
{
    const auto refusal = [](const std::string& what, const std::string& with) {
        return tests::refusal_of(
            [&] { parse_order(tests::order_text(what, with), "order", tests::workshops()); });
    };
    CHECK(refusal("\"vent_probe\"", "\"vent_prob\"")
              .starts_with("order at /checks/3: there is no check \"vent_prob\"; did you mean "
                           "\"vent_probe\"?"));
    CHECK(refusal("\"rig\": \"mower\"", "\"rig\": \"mover\"")
              .starts_with("order at /rig: there is no rig \"mover\"; did you mean \"mower\"?"));
    CHECK(refusal("\"worth\": 300", "\"worth\": -1")
              .starts_with("order at /worth: -1 is out of range; allowed: 0 to"));
    CHECK(refusal("20 degC", "90 degC") ==
          "order at /weather/temperature: is out of range; allowed: -40 degC to 60 degC");
    CHECK(refusal("\"advice\": \"clean\"", "\"advice\": \"pray\"")
              .starts_with("order at /answer/advice: there is no advice \"pray\""));
    CHECK(refusal("[\"start_cold\", \"look_round\"],\n", "[\"run_loaded\"],\n")
              .find("must be among the permitted checks") != std::string::npos);
}

TEST_CASE("an attempt refuses what the order does not permit, in a sentence")
{
    const auto order = tests::small_order();
    Attempt attempt(order, 1);
    attempt.finish();
    CHECK(attempt.reason_against(DoCheck{"run_loaded", {}}) ==
          "This order does not permit the check \"run_loaded\".");
    CHECK(attempt.reason_against(DoCheck{"bowl_drain_crack", {}}) ==
          "Say first what you expect to read.");
    CHECK(attempt.reason_against(HandIn{}) == "Write down a finding first.");
    CHECK(attempt.reason_against(Finding{}) == "Name one cause, four at most.");
    CHECK(attempt.reason_against(Predict{"bowl_drain_crack", "bowl", "purple"}) ==
          "\"purple\" is nothing this reading can show.");
    attempt.perform(Predict{"bowl_drain_crack", "bowl", "lower"});
    CHECK(attempt.reason_against(DoCheck{"bowl_drain_crack", {}}).empty());
    attempt.perform(Finding{{"bowl_vent_plugged"}, Advice::clean, 8.0, 0.0, ""});
    attempt.perform(HandIn{});
    CHECK(attempt.reason_against(DoCheck{"look_round", {}}) == "The work has been handed in.");
}

TEST_SUITE_END();
