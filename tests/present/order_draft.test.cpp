#include "scenes/present/order_draft.hpp"

#include "scenes/present/order_saving.hpp"
#include "scenes/present/order_trial.hpp"
#include "scenes/shop/histories.hpp"
#include "tests/shop/tools.hpp"
#include "tests/temporary_folder.hpp"

#include <doctest/doctest.h>

#include <chrono>
#include <filesystem>

using namespace scenes;

TEST_SUITE_BEGIN("present");

namespace {

DraftValues titled(const OrderDraft& draft, const std::string& title)
{
    DraftValues next = draft.now();
    next.title = title;
    return next;
}

/// A draft that can be saved.
DraftValues whole_draft()
{
    return draft_of(*tests::small_order());
}

} // namespace

TEST_CASE("a draft takes back every step and does it again")
{
    OrderDraft draft(empty_draft(tests::workshop("mower")));
    const DraftValues empty = draft.now();
    CHECK(!draft.can_undo());
    for (const char* title : {"D", "Di", "Dies"}) {
        draft.change(titled(draft, title), "title");
    }
    DraftValues next = draft.now();
    next.level = 3;
    draft.change(next);
    next.answer.faults.push_back({"bowl_vent_plugged", 0.7});
    draft.change(next);
    draft.undo();
    CHECK(draft.now().answer.faults.empty());
    CHECK(draft.now().level == 3);
    draft.undo();
    CHECK(draft.now().title == "Dies");
    draft.undo(); // the letters are one step
    CHECK(draft.now() == empty);
    CHECK(!draft.can_undo());
    for (int i = 0; i < 3; ++i) {
        REQUIRE(draft.can_redo());
        draft.redo();
    }
    CHECK(draft.now() == next);
    CHECK(!draft.can_redo());
}

TEST_CASE("a change after undoing forgets what was undone")
{
    OrderDraft draft(empty_draft(tests::workshop("mower")));
    draft.change(titled(draft, "One"));
    draft.undo();
    draft.change(titled(draft, "Two"));
    CHECK(!draft.can_redo());
    draft.change(draft.now()); // changes nothing
    draft.undo();
    CHECK(draft.now().title.empty());
    CHECK(!draft.can_undo());
}

TEST_CASE("letters after another field or the end of a step are a step of their own")
{
    OrderDraft draft(empty_draft(tests::workshop("mower")));
    draft.change(titled(draft, "A"), "title");
    draft.end_step();
    draft.change(titled(draft, "AB"), "title");
    draft.undo();
    CHECK(draft.now().title == "A");
    draft.change(titled(draft, "AC"), "title");
    draft.undo();
    CHECK(draft.now().title == "A");
}

TEST_CASE("a draft knows whether it is saved and undoing makes it unsaved")
{
    OrderDraft draft(whole_draft());
    CHECK(draft.is_saved());
    draft.change(titled(draft, "Another"));
    CHECK(!draft.is_saved());
    draft.mark_saved();
    CHECK(draft.is_saved());
    draft.undo();
    CHECK(!draft.is_saved());
    draft.redo();
    CHECK(draft.is_saved());
}

TEST_CASE("a machine on the bench becomes an order that hides what is wrong with it")
{
    const shop::Workshop& workshop = tests::workshop("mower");
    sim::Simulator machine(workshop.rig);
    machine.post(sim::SetFault{"bowl_vent_plugged", 0.6});
    machine.advance(1);
    const DraftValues values = draft_of(workshop, machine);
    REQUIRE(values.answer.faults.size() == 1);
    CHECK(values.answer.faults.front() == sim::SetFault{"bowl_vent_plugged", 0.6});
    CHECK(values.rig == "mower");
    CHECK(values.checks.size() == workshop.checks.size());
}

TEST_CASE("an order is the same after a draft of it")
{
    const auto order = tests::small_order();
    const shop::Order again = order_of(draft_of(*order), tests::workshops());
    CHECK(draft_of(again) == draft_of(*order));
    shop::Order named = again;
    named.id = order->id;
    const auto read = shop::parse_order(shop::write_order(named), "written", tests::workshops());
    CHECK(draft_of(*read) == draft_of(*order));
}

TEST_CASE("ids are made of titles")
{
    CHECK(id_of_title("Dies after ten minutes") == "dies_after_ten_minutes");
    CHECK(id_of_title("  No spark?  (2) ") == "no_spark_2");
    CHECK(id_of_title("El cortac\u00e9sped del ni\u00f1o") == "el_cortacesped_del_nino");
    CHECK(id_of_title("../../etc/passwd") == "etc_passwd");
    CHECK(id_of_title("\u6f0f") == "order");
    CHECK(id_of_title("") == "order");
    CHECK(id_of_title(std::string(500, 'x')).size() <= 60);
}

TEST_CASE("saving asks before it takes the place of another order")
{
    const TemporaryFolder folder;
    const std::string own = folder.file("orders");
    DraftValues values = whole_draft();
    OrderName name = name_of(values, own, "");
    CHECK(name.id == "a_small_order");
    CHECK(!name.is_taken);
    shop::Order order = order_of(values, tests::workshops());
    order.id = name.id;
    save_order(order, name.path, tests::workshops());
    CHECK(std::filesystem::exists(name.path));
    CHECK(name_of(values, own, "").is_taken);
    CHECK(name_of(values, own, "").free_id == "a_small_order_2");
    CHECK(!name_of(values, own, name.path).is_taken); // its own file
}

TEST_CASE("a saved order is sealed and reads back")
{
    const TemporaryFolder folder;
    const DraftValues values = whole_draft();
    shop::Order order = order_of(values, tests::workshops());
    order.id = "mine";
    save_order(order, folder.file("mine.json"), tests::workshops());
    CHECK(folder.text_of("mine.json").find("bowl_vent_plugged") == std::string::npos);
    CHECK(folder.text_of("mine.json").find("vent was shut") == std::string::npos);
    CHECK(draft_of(*shop::load_order(folder.file("mine.json"), tests::workshops())) == values);
}

TEST_CASE("an order that could not be read again is not saved")
{
    const TemporaryFolder folder;
    DraftValues values = whole_draft();
    values.solved = {"squirt_start"}; // not permitted
    shop::Order order = order_of(values, tests::workshops());
    order.id = "mine";
    CHECK_THROWS_AS(save_order(order, folder.file("mine.json"), tests::workshops()),
                    sim::AssetError);
    CHECK(folder.count() == 0);
}

TEST_CASE("a folder that cannot be made is told in one line")
{
    const TemporaryFolder folder;
    const std::string file = folder.with("plain", "no folder");
    shop::Order order = order_of(whole_draft(), tests::workshops());
    order.id = "mine";
    CHECK_THROWS_AS(save_order(order, file + "/mine.json", tests::workshops()), sim::RequestError);
}

TEST_CASE("what is missing is told line by line")
{
    CHECK(still_missing(whole_draft()).empty());
    const DraftValues empty = empty_draft(tests::workshop("mower"));
    CHECK(still_missing(empty).size() >= 5);
    DraftValues without = whole_draft();
    without.answer.finding.clear();
    CHECK(still_missing(without) == std::vector<std::string>{"The finding"});
}

TEST_CASE("tidying takes out what no longer fits")
{
    DraftValues values = whole_draft();
    values.answer.causes = {"bowl_vent_plugged", "float_level_low"};
    set_id(values.checks, {"look_round", "start_cold", "bowl_drain_crack"}, "bowl_drain_crack",
           false);
    set_id(values.checks, values.checks, "start_cold", false);
    tidy(values);
    CHECK(values.checks == std::vector<std::string>{"look_round"});
    CHECK(values.solved == std::vector<std::string>{"look_round"});
    CHECK(values.predictions.empty());
    CHECK(values.answer.causes == std::vector<std::string>{"float_level_low"});
}

TEST_CASE("ids put into a list keep the order of all")
{
    std::vector<std::string> ids{"a", "d"};
    set_id(ids, {"a", "b", "c", "d"}, "c", true);
    CHECK(ids == std::vector<std::string>{"a", "c", "d"});
    set_id(ids, {"a", "b", "c", "d"}, "a", false);
    CHECK(ids == std::vector<std::string>{"c", "d"});
}

TEST_CASE("ready-made histories can be done by the machine")
{
    for (const char* rig : {"mower"}) {
        DraftValues values = empty_draft(tests::workshop(rig));
        const auto histories = shop::ready_histories(sim::assets_folder(), rig);
        REQUIRE(histories.size() == 3);
        std::vector<double> hours;
        for (const shop::History& history : histories) {
            values.history = history.steps;
            const shop::Order order = order_of(values, tests::workshops());
            sim::Simulator machine(order.workshop->rig);
            shop::ProcedureRun(order.history).finish(machine);
            hours.push_back(machine.seconds() / 3600.0);
        }
        CHECK(hours[0] == 0.0);
        CHECK(hours[1] > 0.5);
        CHECK(hours[1] < 1.0);
        CHECK(hours[2] > 12.0);
    }
}

TEST_CASE("a budget of half as much again as good work takes is suggested")
{
    shop::Path good;
    good.minutes = 41.0;
    good.money = 12.0;
    CHECK(suggested_budget(good).minutes == 65.0);
    CHECK(suggested_budget(good).money == 20.0);
    CHECK(suggested_budget({}).money == 0.0);
}

TEST_CASE("advice is suggested from what the repair does and what it costs")
{
    DraftValues values = whole_draft();
    CHECK(suggested_advice(order_of(values, tests::workshops())) == shop::Advice::clean);
    values.worth = 1.0;
    CHECK(suggested_advice(order_of(values, tests::workshops())) == shop::Advice::not_worth);
    values.repairs = {"replace_cap"};
    CHECK(!suggested_advice(order_of(values, tests::workshops())));
    CHECK(
        suggested_finding(order_of(values, tests::workshops())).starts_with("Bowl vent plugged."));
}

TEST_CASE("an order is tried out beside and the trial can be broken off")
{
    DraftValues values = whole_draft();
    auto order = std::make_shared<const shop::Order>(order_of(values, tests::workshops()));
    OrderTrial trial(order, "", 2);
    while (trial.stage() != OrderTrial::Stage::over) {
        std::this_thread::sleep_for(std::chrono::milliseconds(5));
    }
    CHECK(trial.trouble().empty());
    CHECK(trial.share() == 1.0);
    REQUIRE(trial.review());
    CHECK(!trial.review()->good.lines.empty());

    OrderTrial broken(order, "", 1);
    broken.cancel();
    while (broken.stage() != OrderTrial::Stage::over) {
        std::this_thread::sleep_for(std::chrono::milliseconds(1));
    }
    CHECK(!broken.review());
    CHECK(broken.trouble().empty());
}

TEST_SUITE_END();
