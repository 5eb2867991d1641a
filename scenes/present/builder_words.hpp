#pragma once

#include "scenes/present/phrase.hpp"

#include <array>

/// Every text of the screen where an instructor makes a work order.
namespace scenes::words {

// ---- what must be there first
inline constexpr Phrase want_title = phrase("A title");
inline constexpr Phrase want_hidden = phrase("Something wrong with the machine");
inline constexpr Phrase want_customer = phrase("Whose machine it is and what happened to it");
inline constexpr Phrase want_complaint = phrase("The complaint, in the customer's words");
inline constexpr Phrase want_checks = phrase("One check, at least, that may be done");
inline constexpr Phrase want_repairs = phrase("One repair, at least, that may be done");
inline constexpr Phrase want_solved =
    phrase("One check, at least, that the machine must pass afterwards");
inline constexpr Phrase want_marks = phrase("Something that earns marks");
inline constexpr Phrase want_finding = phrase("The finding");

// ---- the screen
inline constexpr Phrase build_order = phrase("Build an order");
inline constexpr Phrase builder_pages = phrase("Page of the builder");
inline constexpr std::array builder_page_titles{
    phrase("Machine|page of the builder"),  phrase("Hidden|page of the builder: faults"),
    phrase("Customer|page of the builder"), phrase("Permitted|page of the builder: work"),
    phrase("Marks|page of the builder"),    phrase("Try out|page of the builder")};
inline constexpr Phrase page_preview = phrase("Card|page of the builder: the customer's");
inline constexpr Phrase students_card = phrase("What the student gets");
inline constexpr Phrase is_unsaved = phrase("not saved");
inline constexpr Phrase key_builder = phrase("build a work order, and back to the bench");
inline constexpr Phrase key_builder_pages =
    phrase("in the builder: machine, hidden, customer, permitted, marks, try out");

inline constexpr Phrase no_workshop =
    phrase("No machine here has a workshop, so no work order can be built.");

// ---- where it begins
inline constexpr Phrase begin_from = phrase("Begin with");
inline constexpr Phrase begin_empty = phrase("An empty order");
inline constexpr Phrase begin_bench = phrase("The machine on the bench");
inline constexpr Phrase begin_other = phrase("Another order...");
inline constexpr Phrase begin_other_title = phrase("Begin with another order");
inline constexpr Phrase take_order = phrase("Open it with its answer");
inline constexpr Phrase close_without = phrase("Leave it|closes a dialog");
inline constexpr Phrase discard_sure = phrase("Put this draft away?");
inline constexpr Phrase discard_note =
    phrase("What has been put down since it was last saved is lost.");
inline constexpr Phrase discard = phrase("Put it away");
inline constexpr Phrase keep_it = phrase("Keep it");

inline constexpr Phrase shows_answer =
    phrase("This shows the order's answer: what is hidden, the finding and the advice.");
inline constexpr Phrase attempt_in_hand =
    phrase("The builder shows answers: first hand in the order you work on, or put it away.");
inline constexpr Phrase draft_is_back =
    phrase("This is the draft as it was left; it is not saved.");
inline constexpr Phrase draft_set_aside =
    phrase("The draft that was left cannot be read and was set aside as {0}. {1}");
inline constexpr Phrase draft_not_kept =
    phrase("The draft is not kept while you work on it; save the order. {0}");

// ---- machine
inline constexpr Phrase order_title = phrase("Title");
inline constexpr Phrase order_title_hint = phrase("what students see on the list");
inline constexpr Phrase page_machine_of_order = phrase("Machine|of an order");
inline constexpr Phrase level_choice = phrase("Level|how hard a work order is");
inline constexpr Phrase air_temperature = phrase("Air temperature");
inline constexpr Phrase air_pressure = phrase("Air pressure");
inline constexpr Phrase history_choice = phrase("What happened before it came in");
inline constexpr std::array histories{phrase("Nothing|happened to a machine"),
                                      phrase("It has run|happened to a machine"),
                                      phrase("Stood overnight|happened to a machine")};
inline constexpr Phrase history_own = phrase("Its own|the order's own history");
inline constexpr Phrase seed = phrase("Seed of chance");
inline constexpr Phrase seed_note =
    phrase("Decides how instruments scatter and whether a risky repair does damage, the same for "
           "the same number.");

// ---- hidden
inline constexpr Phrase faults_list = phrase("Faults of this machine");
inline constexpr Phrase part_in_order = phrase("Its part in the order");
inline constexpr std::array fault_parts{phrase("None|a fault's part in an order"),
                                        phrase("Hidden|a fault's part in an order"),
                                        phrase("Also right|a fault's part in an order"),
                                        phrase("Look-alike|a fault's part in an order")};
inline constexpr Phrase parts_note =
    phrase("Also right: counts as the same cause. Look-alike: the checks need not tell it from "
           "what is hidden.");
inline constexpr Phrase severity = phrase("How bad");
inline constexpr Phrase finding_field = phrase("Finding, for the key");
inline constexpr Phrase suggest_finding = phrase("Suggest a finding");
inline constexpr Phrase suggest_advice = phrase("Suggest the advice");
inline constexpr Phrase no_advice =
    phrase("No permitted repair cures all that is hidden, so no advice can be suggested.");

// ---- customer
inline constexpr Phrase customer_field = phrase("Customer, machine and what happened to it");
inline constexpr Phrase customer_hint = phrase("the school's caretaker; stored since autumn...");
inline constexpr Phrase complaint_field = phrase("Complaint, in the customer's words");
inline constexpr Phrase complaint_hint = phrase("it starts, then dies after ten minutes...");
inline constexpr Phrase labour_price = phrase("Labor, one hour");
inline constexpr Phrase machine_worth = phrase("The machine's worth when it runs");

// ---- permitted
inline constexpr Phrase kind_of_work = phrase("Work to permit");
inline constexpr Phrase is_permitted = phrase("permitted|in a list");
inline constexpr Phrase must_pass = phrase("must pass|in a list: a check, afterwards");
inline constexpr Phrase permit = phrase("Permit it");
inline constexpr Phrase forbid = phrase("Forbid it");
inline constexpr Phrase permit_all = phrase("Permit all");
inline constexpr Phrase forbid_all = phrase("Forbid all");
inline constexpr Phrase pass_afterwards = phrase("The machine must pass it afterwards");
inline constexpr Phrase has_no_sound =
    phrase("This check has no reading that says what is sound, so no machine can pass it.");
inline constexpr Phrase guess_before = phrase("Guess asked for before it");
inline constexpr Phrase no_guess = phrase("None|no guess is asked for");
inline constexpr Phrase counted = phrase("{0} of {1} permitted, {2} to pass");
inline constexpr Phrase counted_repairs = phrase("{0} of {1} permitted");

// ---- marks
inline constexpr Phrase marks_total = phrase("Whole mark");
inline constexpr Phrase budget_head = phrase("Budget");
inline constexpr Phrase usual_marks = phrase("The usual marks");

// ---- try out
inline constexpr Phrase try_out = phrase("Try it out");
inline constexpr Phrase break_off = phrase("Break it off");
inline constexpr Phrase try_note =
    phrase("Simulates every permitted check with every fault of the machine, then does good work "
           "on the order. What was simulated once is kept.");
inline constexpr Phrase still_wanted = phrase("Still wanted");
inline constexpr Phrase wanted_next = phrase("Still wanted: {0}");
inline constexpr Phrase simulates = phrase("Simulating checks and faults");
inline constexpr Phrase works_on_it = phrase("Doing good work on the order...");
inline constexpr Phrase trial_failed = phrase("It cannot be tried out. {0}");
inline constexpr Phrase has_changed =
    phrase("The order was changed since it was tried out: this is how it was.");
inline constexpr Phrase cannot_be_given = phrase("It cannot be given to students");
inline constexpr Phrase to_know = phrase("To know before it is given");
inline constexpr Phrase as_meant = phrase("All of it as I mean it");
inline constexpr Phrase as_meant_note = phrase("Look-alikes are then taken as right answers.");
inline constexpr Phrase can_be_given = phrase("It can be given to students.");
inline constexpr Phrase good_work_head = phrase("Good work on it");
inline constexpr Phrase take_budget =
    phrase("Allow {0} min, parts for {1}|a button: minutes, money");
inline constexpr Phrase take_advice = phrase("Take good work's advice");
inline constexpr Phrase save_order_button = phrase("Save the order");
inline constexpr Phrase try_before_saving = phrase("Try it out as it stands before it is saved.");
inline constexpr Phrase refused_saving =
    phrase("It is not saved while something stands against it.");
inline constexpr Phrase accept_before_saving =
    phrase("Say that the notes are as you mean them, or change the order.");
inline constexpr Phrase print_head = phrase("On paper");
inline constexpr Phrase print_worksheet = phrase("Worksheet to print");
inline constexpr Phrase print_key = phrase("Answer key to print");
inline constexpr Phrase written_to = phrase("Written to {0}");
inline constexpr Phrase order_saved = phrase("Saved as {0}");
inline constexpr Phrase see_as_student = phrase("See the student's screen");

// ---- saving over another
inline constexpr Phrase name_is_taken = phrase("There is another order of that name");
inline constexpr Phrase replace_note =
    phrase("Replacing it ends all attempts at it that were begun: their records are of another "
           "order then.");
inline constexpr Phrase shipped_note =
    phrase("That one comes with the program and cannot be replaced.");
inline constexpr Phrase replace_order = phrase("Replace it");
inline constexpr Phrase save_beside = phrase("Save it as {0}");

} // namespace scenes::words
