#include "scenes/present/order_desk.hpp"
#include "scenes/present/job_sheet.hpp"
#include "scenes/present/order_shelf.hpp"
#include "scenes/present/order_words.hpp"
#include "scenes/present/reading_words.hpp"
#include "scenes/shop/asset_files.hpp"
#include "tests/shop/tools.hpp"
#include "tests/temporary_folder.hpp"

#include <chrono>
#include <thread>

using namespace scenes;

namespace {

/// A desk that stores no tables.
OrderDesk desk_of_tests()
{
    return OrderDesk([](const shop::Order&) { return std::string(); });
}

bool always()
{
    return true;
}

constexpr double frame = 1.0 / 60.0;

/// An order with two short checks, so that its table is soon there.
std::shared_ptr<const shop::Order> short_order()
{
    std::string text = tests::order_text(
        R"(["start_cold", "look_round", "bowl_drain_crack", "vent_probe", "tachometer_idle"])",
        R"(["look_round", "vent_probe"])");
    const auto put = [&](const std::string& what, const std::string& with) {
        text.replace(text.find(what), what.size(), with);
    };
    put(R"("solved": ["start_cold", "look_round"])", R"("solved": ["look_round", "vent_probe"])");
    put(R"([{"before": "bowl_drain_crack", "predict": "bowl"}])", "[]");
    return shop::parse_order(text, "order", tests::workshops());
}

std::vector<shop::Observation> last_read(const OrderDesk& desk)
{
    return desk.attempt().lines().back().observations;
}

} // namespace

TEST_SUITE("present")
{
    TEST_CASE("every finished action of a work order is in its record, and the work resumes there")
    {
        const TemporaryFolder folder;
        const std::string path = folder.file("deep/small_order-2026-01-02-030405.jsonl");
        std::vector<shop::JobLine> lines;
        {
            OrderDesk desk = desk_of_tests();
            desk.begin(tests::small_order(), "Bench 4", 77, path);
            desk.finish();
            desk.act(shop::Suspect{{"bowl_vent_plugged"}});
            CHECK(shop::load_record(path).lines.size() == 1);
            desk.act(shop::DoCheck{"look_round", {}});
            CHECK(desk.is_busy());
            CHECK_FALSE(desk.is_ready());
            CHECK(shop::load_record(path).lines.size() == 1); // it is not finished
            desk.finish();
            CHECK(shop::load_record(path).lines.size() == 2);
            desk.act(shop::DoCheck{"vent_probe", {}});
            lines = desk.attempt().lines();
            // Here somebody pulls the plug: the check in hand is lost, and no more.
        }
        OrderDesk desk = desk_of_tests();
        desk.resume(tests::small_order(), path);
        CHECK(desk.student() == "Bench 4");
        CHECK(desk.attempt().seed() == 77);
        CHECK(desk.is_replaying());
        CHECK(desk.to_replay() == 2);
        desk.finish();
        REQUIRE(desk.trouble().empty());
        REQUIRE(desk.attempt().lines().size() == lines.size());
        for (std::size_t i = 0; i < lines.size(); ++i) {
            CHECK(desk.attempt().lines()[i].action == lines[i].action);
            CHECK(desk.attempt().lines()[i].observations == lines[i].observations);
        }
        desk.act(shop::DoCheck{"vent_probe", {}});
        desk.finish();
        CHECK(shop::load_record(path).lines.size() == 3);
    }

    TEST_CASE("work on an order reads the same however its pieces are cut")
    {
        const TemporaryFolder folder;
        OrderDesk at_once = desk_of_tests();
        OrderDesk by_frames = desk_of_tests();
        at_once.begin(tests::small_order(), "", 5, folder.file("a.jsonl"));
        by_frames.begin(tests::small_order(), "", 5, folder.file("b.jsonl"));
        at_once.finish();
        by_frames.finish();
        at_once.act(shop::DoCheck{"look_round", {}});
        by_frames.act(shop::DoCheck{"look_round", {}});
        at_once.finish();
        int frames = 0;
        while (by_frames.is_busy()) {
            REQUIRE(++frames < 3600);
            int pieces = 2;
            by_frames.advance(frame, [&] { return --pieces >= 0; });
        }
        CHECK(last_read(by_frames) == last_read(at_once));
    }

    TEST_CASE("work on an order is shown at a pace that can be seen and does not keep waiting")
    {
        const TemporaryFolder folder;
        OrderDesk desk = desk_of_tests();
        desk.begin(tests::small_order(), "", 5, folder.file("a.jsonl"));
        desk.finish();
        const auto frames_of = [&](const char* check) {
            desk.act(shop::DoCheck{check, {}});
            int frames = 0;
            while (desk.is_busy() && frames < 3600) {
                ++frames;
                desk.advance(frame, always);
            }
            return frames;
        };
        // Two minutes of standing at the least, which go by in more than half a second.
        CHECK(frames_of("look_round") > 30);
        // A night goes by in seconds.
        const int night = frames_of("start_cold");
        CHECK(night > 120);
        CHECK(night < 420);
    }

    TEST_CASE("what an order refuses leaves no trace")
    {
        const TemporaryFolder folder;
        const std::string path = folder.file("a.jsonl");
        OrderDesk desk = desk_of_tests();
        desk.begin(tests::small_order(), "", 5, path);
        desk.finish();
        CHECK_THROWS_AS(desk.act(shop::DoCheck{"bowl_drain_crack", {}}), sim::RequestError);
        CHECK_THROWS_AS(desk.act(shop::HandIn{}), sim::RequestError);
        CHECK(desk.is_ready());
        CHECK(shop::load_record(path).lines.empty());
        // A record of somebody's work is never written over.
        OrderDesk other = desk_of_tests();
        CHECK_THROWS_AS(other.begin(tests::small_order(), "", 5, path), sim::RequestError);
        CHECK_FALSE(other.has_order());
    }

    TEST_CASE("the job sheet sets what was read beside what was expected and what is sound")
    {
        const auto order = tests::small_order();
        shop::Attempt attempt(order, 3);
        attempt.finish();
        attempt.perform(shop::Suspect{{"cap_vent_plugged"}});
        attempt.perform(shop::Suspect{{"bowl_vent_plugged", "cap_vent_plugged"}});
        attempt.perform(shop::Predict{"bowl_drain_crack", "bowl", "sound"});
        attempt.perform(shop::DoCheck{"bowl_drain_crack", {}});
        attempt.perform(shop::DoRepair{"clear_vents", {}});
        attempt.perform(
            shop::Finding{{"bowl_vent_plugged"}, shop::Advice::clean, 8.0, 0.0, "Mud."});
        attempt.perform(shop::HandIn{});
        const std::vector<SheetEntry> sheet = job_sheet(attempt);
        REQUIRE(sheet.size() == 5);
        CHECK(sheet[0].title == "Suspected: Bowl vent plugged, Cap vent plugged");
        CHECK(sheet[0].number == 0);
        CHECK(sheet[1].number == 1);
        CHECK(sheet[1].minutes == std::to_string(static_cast<int>(
                                      order->workshop->find_check("bowl_drain_crack")->minutes)));
        REQUIRE_FALSE(sheet[1].readings.empty());
        const shop::Reading& reading =
            *order->workshop->find_check("bowl_drain_crack")->procedure.find("bowl");
        const shop::Observation& seen = attempt.lines()[3].observations[0];
        CHECK(sheet[1].readings[0].sound == sound_words(reading));
        CHECK(sheet[1].readings[0].shown == shown_text(reading, seen));
        const bool is_sound = place_of_reading(reading, seen) == "sound";
        CHECK(sheet[1].readings[0].expected ==
              (is_sound ? "Expected: As on a sound machine (as expected)"
                        : "Expected: As on a sound machine (not as expected)"));
        CHECK(sheet[2].number == 2);
        CHECK(sheet[3].title == "Finding: Bowl vent plugged");
        CHECK(sheet[3].readings[0].title == "Mud.");
        CHECK(sheet[4].title == "Handed in");
    }

    TEST_CASE("a reading lies below, within or above what a sound machine shows")
    {
        const shop::Instrument cup{"cup", "Cup", shop::unit_of("mL"), 0.0, 500.0, 1.0, 0.0, 0.0};
        shop::Reading reading;
        reading.instrument = &cup;
        reading.least = 75e-6;
        reading.most = 250e-6;
        const auto place = [&](double number) {
            return place_of_reading(reading, {number, std::nullopt});
        };
        CHECK(place(74.0) == "lower");
        CHECK(place(75.0) == "sound");
        CHECK(place(250.0) == "sound");
        CHECK(place(251.0) == "higher");
        CHECK(place_of_reading(reading, {}).empty());
        CHECK(sound_words(reading) == "75 to 250 mL");
        CHECK(shown_text(reading, {120.0, std::nullopt}) == "120 mL");
        CHECK(shown_text(reading, {}) == "not read");
        CHECK(guesses_of(reading) == std::vector<std::string>{"lower", "sound", "higher"});
        reading.most.reset();
        CHECK(sound_words(reading) == "at least 75 mL");
        reading.words = {{1e-6, "Dry"}, {0.0, "Wet"}};
        reading.sound_words = {"Dry"};
        CHECK(sound_words(reading) == "Dry");
        CHECK(place_of_reading(reading, {std::nullopt, 1}) == "Wet");
        CHECK(guesses_of(reading) == std::vector<std::string>{"Dry", "Wet"});
    }

    TEST_CASE(
        "the shelf shows easy orders first, says what is wrong with others, and knows records")
    {
        const TemporaryFolder folder;
        const std::string hard = folder.with("hard_order.json", [] {
            std::string text = tests::order_text("\"level\": 1", "\"level\": 3");
            return text.replace(text.find("small_order"), 11, "hard_order");
        }());
        const std::string wrong = folder.with("wrong_order.json", "{");
        const std::string easy = folder.with("small_order.json", tests::order_text());
        const auto shelf = orders_on_shelf(tests::workshops(), {wrong, hard, easy});
        REQUIRE(shelf.size() == 3);
        CHECK(shelf[0].id == "small_order");
        CHECK(shelf[1].id == "hard_order");
        CHECK(shelf[2].order == nullptr);
        CHECK(shelf[2].trouble.find("wrong_order.json") != std::string::npos);

        const shop::Order& order = *shelf[0].order;
        const auto begin = [&](const std::string& name, const std::string& of, std::uint64_t sum) {
            shop::RecordKeeper::begin(folder.file(name), {of, sum, 1, "Bench 2"});
        };
        begin("small_order-2026-01-02-030405.jsonl", order.id, order.sum);
        begin("small_order-2026-01-03-030405.jsonl", order.id, order.sum + 1);
        begin("small_order-two-2026-01-03-030405.jsonl", "small_order-two", 0);
        const auto records = records_of(order, folder.file(""));
        REQUIRE(records.size() == 2);
        CHECK(records[0].begun == "2026-01-03 03:04");
        CHECK(records[0].trouble.find("another state of the order") != std::string::npos);
        CHECK(records[1].begun == "2026-01-02 03:04");

        CHECK_FALSE(shelf[0].is_begun); // no records were asked for
        const auto in_hand = orders_on_shelf(tests::workshops(), {hard, easy}, folder.file(""));
        CHECK(in_hand[0].is_begun);
        CHECK_FALSE(in_hand[1].is_begun);
        CHECK(records[1].student == "Bench 2");
        CHECK(records[1].trouble.empty());
        CHECK_FALSE(records[1].is_handed_in);
        CHECK(records_of(order, folder.file("nowhere")).empty());
    }

    TEST_CASE("work that is handed in is marked beside the window")
    {
        const TemporaryFolder folder;
        OrderDesk desk = desk_of_tests();
        desk.begin(short_order(), "", 5, folder.file("a.jsonl"));
        desk.finish();
        desk.act(shop::DoCheck{"vent_probe", {}});
        desk.finish();
        desk.act(shop::DoRepair{"clear_vents", {}});
        desk.finish();
        desk.act(shop::Finding{{"bowl_vent_plugged"}, shop::Advice::clean, 8.0, 0.0, ""});
        CHECK(desk.result() == nullptr);
        desk.act(shop::HandIn{});
        CHECK_FALSE(desk.is_ready());
        REQUIRE(desk.marking() != nullptr);
        const auto until = std::chrono::steady_clock::now() + std::chrono::minutes(2);
        while (!desk.result() && desk.marking()->trouble().empty() &&
               std::chrono::steady_clock::now() < until) {
            std::this_thread::sleep_for(std::chrono::milliseconds(10));
        }
        REQUIRE(desk.result() != nullptr);
        CHECK(desk.marking()->share() == 1.0);
        CHECK(desk.result()->marks.got() > 0.0);
        CHECK(desk.result()->marks.of() == 100.0);
        CHECK_FALSE(desk.result()->good.lines.empty());
    }

    TEST_CASE("what the machine was like when it came in can be put on the bench")
    {
        const TemporaryFolder folder;
        OrderDesk desk = desk_of_tests();
        const auto order = shop::parse_order(
            tests::order_text("\"history\": []", R"("history": [{"wait": "3 s"}])"), "order",
            tests::workshops());
        desk.begin(order, "", 5, folder.file("a.jsonl"));
        desk.finish();
        desk.act(shop::DoRepair{"clear_vents", {}});
        desk.finish();
        CHECK(desk.arrived_at() == 3000);
        REQUIRE(desk.arrival().commands.size() == 1); // the fault, and nothing of the repair
        CHECK(std::get<sim::SetFault>(desk.arrival().commands[0].command).fault ==
              "bowl_vent_plugged");
    }
}
