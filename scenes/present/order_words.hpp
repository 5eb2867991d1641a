#pragma once

#include "scenes/present/phrase.hpp"

#include <array>

/// Every text of the work orders' screens that does not come from an asset.
namespace scenes::words {

// ---- the shelf
inline constexpr Phrase work_orders = phrase("Work orders");
inline constexpr Phrase order_columns_title = phrase("Work order");
inline constexpr Phrase level = phrase("Level {0}|how hard a work order is");
inline constexpr Phrase begun_level = phrase("Begun, level {0}|how hard a work order is");
inline constexpr Phrase no_orders = phrase("There are no work orders here.");
inline constexpr Phrase order_is_wrong = phrase("This work order cannot be used. {0}");
inline constexpr Phrase choose_order = phrase("Choose a work order from the list.");
inline constexpr Phrase student = phrase("Student, as the class agreed");
inline constexpr Phrase student_hint = phrase("may be left out");
inline constexpr Phrase begin_order = phrase("Begin the work");
inline constexpr Phrase begun_attempts = phrase("Begun earlier");
inline constexpr Phrase begun_column = phrase("Begun|column: when");
inline constexpr Phrase student_column = phrase("Student|column");
inline constexpr Phrase actions_column = phrase("Entries|column: how many on the job sheet");
inline constexpr Phrase is_handed_in = phrase("handed in");
inline constexpr Phrase resume_order = phrase("Go on with it");
inline constexpr Phrase record_is_wrong = phrase("It cannot be gone on with. {0}");
inline constexpr Phrase to_bench = phrase("To the bench");
inline constexpr Phrase to_orders = phrase("Other orders");

// ---- the customer's card
inline constexpr Phrase complaint_head = phrase("Complaint");
inline constexpr Phrase customer_head = phrase("Customer and machine");
inline constexpr Phrase weather_now = phrase("Weather");
inline constexpr Phrase weather_value = phrase("{0}, {1}|temperature and pressure of the air");
inline constexpr Phrase budget_minutes = phrase("Time allowed");
inline constexpr Phrase budget_money = phrase("Money for parts");
inline constexpr Phrase some_minutes = phrase("{0} min");

// ---- pages
inline constexpr Phrase page_order = phrase("Order|page: the customer's card");
inline constexpr Phrase page_job_sheet = phrase("Job sheet");
inline constexpr Phrase page_checks = phrase("Checks");
inline constexpr Phrase page_repairs = phrase("Repairs");
inline constexpr Phrase page_suspects = phrase("Suspects");
inline constexpr Phrase page_finding = phrase("Finding");
inline constexpr Phrase page_marks = phrase("Marks|page: how the work was marked");
inline constexpr Phrase order_pages = phrase("Page of the order");

// ---- the job sheet
inline constexpr Phrase sheet_work = phrase("Work and what it showed");
inline constexpr Phrase sheet_minutes = phrase("min|column: minutes");
inline constexpr Phrase sheet_parts = phrase("Parts|column: money");
inline constexpr Phrase sheet_is_empty =
    phrase("Nothing done yet. Choose a check: what it shows is written down here.");
inline constexpr Phrase sound_is = phrase("sound: {0}|what a sound machine reads");
inline constexpr Phrase not_read = phrase("not read");
inline constexpr Phrase range = phrase("{0} to {1}|two figures");
inline constexpr Phrase at_least = phrase("at least {0}");
inline constexpr Phrase at_most = phrase("at most {0}");
inline constexpr Phrase one_of_two = phrase("{0} or {1}|words for a reading");
inline constexpr Phrase sheet_suspects = phrase("Suspected: {0}");
inline constexpr Phrase sheet_no_suspects = phrase("Suspected: nothing any more");
inline constexpr Phrase sheet_finding = phrase("Finding: {0}");
inline constexpr Phrase sheet_handed_in = phrase("Handed in");
inline constexpr Phrase sheet_repair = phrase("Repair: {0}");
inline constexpr Phrase sheet_expected =
    phrase("Expected: {0} ({1})|a guess, and whether it came true");
inline constexpr Phrase as_expected = phrase("as expected");
inline constexpr Phrase not_as_expected = phrase("not as expected");
inline constexpr Phrase total = phrase("Total");
inline constexpr Phrase allowed = phrase("Allowed|minutes and money");

// ---- checks and repairs
inline constexpr Phrase tools = phrase("Tools");
inline constexpr Phrase begins_from = phrase("Begins|in which condition a check begins");
inline constexpr Phrase disturbs = phrase("Leaves changed");
inline constexpr Phrase no_checks = phrase("This order permits no check.");
inline constexpr Phrase no_repairs = phrase("This order permits no repair.");
inline constexpr Phrase do_check = phrase("Do this check");
inline constexpr Phrase do_repair = phrase("Do this repair");
inline constexpr Phrase search_work = phrase("Search in the list");
inline constexpr Phrase search_work_hint = phrase("search: flow, spark, bowl...");
inline constexpr Phrase no_such_work = phrase("Nothing in the list has these words.");
inline constexpr Phrase minutes_and_parts = phrase("{0} min, parts {1}");
inline constexpr Phrase done_once = phrase("done");
inline constexpr Phrase done_times = phrase("done {0} times");
inline constexpr std::array repair_kinds{
    phrase("Clean|kind of repair"), phrase("Tighten|kind of repair"),
    phrase("Adjust|kind of repair"), phrase("Replace|kind of repair")};
inline constexpr Phrase cautions = phrase("Cautions");
inline constexpr Phrase work = phrase("Work|a panel: checks, repairs, what is written");

// ---- under way
inline constexpr Phrase is_being_done = phrase("{0}: {1} on the machine's clock");
inline constexpr Phrase history_goes_by = phrase("What happened before it came in: {0}");
inline constexpr Phrase doing_again = phrase("What the job sheet says is done again");
inline constexpr Phrase doing_again_count = phrase("{0} of {1}");
inline constexpr Phrase order_stopped = phrase("The work cannot go on: {0}");
inline constexpr Phrase order_ready =
    phrase("What is written can be changed until it is handed in; a check or a repair that was "
           "done cannot be undone. F1 shows the keys, W the bench.");
inline constexpr Phrase order_over = phrase("Handed in. Nothing more can be done on this order.");

// ---- before work
inline constexpr Phrase before_work = phrase("Before you begin");
inline constexpr Phrase cautions_note =
    phrase("Tick what you have seen to. In a real workshop follow the machine's manual, local "
           "codes and licensed practice.");
inline constexpr Phrase go_on_with_work = phrase("Go on|with the work");
inline constexpr Phrase back = phrase("Back|to what was shown before");
inline constexpr Phrase what_do_you_expect = phrase("What do you expect?");
inline constexpr Phrase predict_note =
    phrase("Commit yourself before you read. The job sheet keeps your guess beside what was read.");
inline constexpr Phrase write_guess = phrase("Write the guess down");
inline constexpr std::array guesses{phrase("Lower|than on a sound machine"),
                                    phrase("As on a sound machine"),
                                    phrase("Higher|than on a sound machine")};

// ---- suspects and finding
inline constexpr Phrase search_causes = phrase("Search all causes");
inline constexpr Phrase search_causes_hint = phrase("search: vent, bowl, hose...");
inline constexpr Phrase all_causes = phrase("All causes");
inline constexpr Phrase suspect_it = phrase("Suspect it");
inline constexpr Phrase suspected = phrase("Suspected, the likeliest first");
inline constexpr Phrase nothing_suspected = phrase("Nothing yet.");
inline constexpr Phrase move_up = phrase("Likelier");
inline constexpr Phrase move_down = phrase("Less likely");
inline constexpr Phrase take_off = phrase("Strike out");
inline constexpr Phrase cause_found = phrase("Cause found");
inline constexpr Phrase name_suspects_first =
    phrase("Put what you suspect on the page Suspects first; here you tick what it was.");
inline constexpr Phrase advice_to_customer = phrase("Advice to the customer");
inline constexpr std::array advices{phrase("Clean|advice"), phrase("Tighten|advice"),
                                    phrase("Adjust|advice"), phrase("Replace|advice"),
                                    phrase("Not worth repairing")};
inline constexpr Phrase estimate_work = phrase("Estimate: work");
inline constexpr Phrase estimate_parts = phrase("Estimate: parts");
inline constexpr Phrase minutes_unit = phrase("min|unit of a slider");
inline constexpr Phrase work_at_rate = phrase("{0} h at {1} an hour");
inline constexpr Phrase parts = phrase("Parts");
inline constexpr Phrase estimate_total = phrase("Together");
inline constexpr Phrase worth_of_machine = phrase("The machine is worth, when it runs");
inline constexpr Phrase note = phrase("Note and explanation");
inline constexpr Phrase write_finding = phrase("Write the finding down");
inline constexpr Phrase finding_written = phrase("Written down as it stands here.");
inline constexpr Phrase finding_not_written = phrase("Not written down yet.");
inline constexpr Phrase hand_in = phrase("Hand in");
inline constexpr Phrase hand_in_sure = phrase("Hand the work in?");
inline constexpr Phrase hand_in_note =
    phrase("After that nothing can be done or changed on this order, and it is marked.");

// ---- marks
inline constexpr Phrase marking_goes_on = phrase("Marking: every check against every fault");
inline constexpr Phrase marking_note =
    phrase("The program works out how well the work could have been done. That takes a minute or "
           "two the first time.");
inline constexpr Phrase marking_failed = phrase("The work cannot be marked: {0}");
inline constexpr std::array mark_titles{
    phrase("Solved"),          phrase("Cause and advice"), phrase("Time"),   phrase("Money"),
    phrase("Order of checks"), phrase("Verified"),         phrase("Damage"), phrase("Cautions")};
inline constexpr Phrase mark_of = phrase("{0} of {1}|marks");
inline constexpr Phrase what_it_was = phrase("What was wrong");
inline constexpr Phrase nothing_was_wrong = phrase("No fault of the machine");
inline constexpr Phrase look_inside = phrase("Look inside");
inline constexpr Phrase good_way = phrase("How good work would have gone");
inline constexpr Phrase looks_inside =
    phrase("The machine as it came in, cut open, with its fault.");
inline constexpr Phrase key_orders = phrase("work orders, and back to the bench");
inline constexpr Phrase key_order_pages =
    phrase("in a work order: checks, repairs, suspects, finding");

} // namespace scenes::words
