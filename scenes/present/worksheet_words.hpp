#pragma once

#include "scenes/present/phrase.hpp"

#include <array>

/// Every text of a printed worksheet and its answer key that the screen has not.
namespace scenes::words {

inline constexpr Phrase worksheet = phrase("Worksheet");
inline constexpr Phrase worksheet_name = phrase("Name|of a student, on paper");
inline constexpr Phrase worksheet_date = phrase("Date|on paper");
inline constexpr Phrase sheet_machine = phrase("Machine|on paper");
inline constexpr Phrase labour_hour = phrase("Labor, one hour");
inline constexpr Phrase worksheet_cautions =
    phrase("Before any work on a real machine, follow the machine's manual, local codes and "
           "licensed practice. The work below calls for these cautions:");
inline constexpr Phrase checks_allowed = phrase("Checks that may be done");
inline constexpr Phrase repairs_allowed = phrase("Repairs that may be done");
inline constexpr Phrase column_check = phrase("Check|column");
inline constexpr Phrase column_repair = phrase("Repair|column");
inline constexpr Phrase column_kind = phrase("Kind|column: of a repair");
inline constexpr Phrase column_with = phrase("With|column: tools");
inline constexpr Phrase column_number = phrase("No.|column");
inline constexpr Phrase column_suspected = phrase("Suspected cause");
inline constexpr Phrase column_work = phrase("Check or repair|column");
inline constexpr Phrase column_expected = phrase("Expected|column: before a check");
inline constexpr Phrase column_read = phrase("Read|column: what a check showed");
inline constexpr Phrase column_conclusion = phrase("Conclusion|column");
inline constexpr Phrase column_next = phrase("Next|column: what to do next");
inline constexpr Phrase expect_first = phrase("Write down before you read");
inline constexpr Phrase expect_line = phrase("Before \"{0}\", what you expect of: {1}");
inline constexpr Phrase finding_and_advice = phrase("Finding and advice to the customer");
inline constexpr Phrase cause_line = phrase("Cause");
inline constexpr Phrase reasons_line = phrase("How you know");
inline constexpr Phrase estimate = phrase("Estimate");
inline constexpr Phrase hours = phrase("Hours|of work, in an estimate");

inline constexpr Phrase answer_key = phrase("Answer key");
inline constexpr Phrase what_is_hidden = phrase("What is hidden");
inline constexpr Phrase for_instructor = phrase("For the instructor. Not for students.");

inline constexpr Phrase of_its_worst = phrase("{0} % of its worst|how bad a fault is");
inline constexpr Phrase where_it_is = phrase("Where|a fault is, on paper");
inline constexpr Phrase how_it_works = phrase("What it does|a fault, on paper");
inline constexpr Phrase look_shows = phrase("What a look shows");
inline constexpr Phrase also_right = phrase("Also taken as right");
inline constexpr Phrase finding_of_order = phrase("Finding|on paper");
inline constexpr Phrase advice_of_order = phrase("Advice|on paper");
inline constexpr Phrase good_work = phrase("Good work, found by simulation");
inline constexpr Phrase column_step = phrase("Step|column: of good work");
inline constexpr Phrase column_sound = phrase("Sound machine|column: what it would show");
inline constexpr Phrase in_all = phrase("In all");
inline constexpr Phrase allowed_to_spend = phrase("Allowed|to be spent");
inline constexpr Phrase work_and_parts = phrase("Work and parts together: {0}");
inline constexpr Phrase judged_by = phrase("The machine is judged by");
inline constexpr Phrase marks_scheme = phrase("Marks");
inline constexpr Phrase column_mark = phrase("For|column: what marks are given for");
inline constexpr Phrase column_marks = phrase("Marks|column");
inline constexpr Phrase column_why = phrase("How it is worked out|column");
/// In the order of the weights.
inline constexpr std::array mark_rules{
    phrase("All or nothing: run again, the machine must pass every check it is judged by. Where "
           "it is not worth repairing, that advice counts instead."),
    phrase("Three quarters for the cause, wrong ones taken off by halves; 15 % for the advice; "
           "10 % for an estimate near enough."),
    phrase("Full up to 1.3 times the minutes of good work and 5 more, none from 3 times and 20 "
           "more on; nothing when the machine is not in order."),
    phrase("The same for what was spent on parts."),
    phrase("What the checks were expected to tell, minute for minute, beside the best ones at the "
           "time; full from 70 % on."),
    phrase("The share of the checks it is judged by that were done after the last repair."),
    phrase("Half is lost for each damage done; nothing where nothing was repaired."),
    phrase("Full when every caution was seen to, none from half of them on down."),
};
inline constexpr Phrase look_alikes = phrase("Look-alikes");
inline constexpr Phrase no_look_alikes =
    phrase("The permitted checks tell what is hidden from every other fault of this machine.");
inline constexpr Phrase look_alikes_note =
    phrase("No single reading of the permitted checks tells what is hidden from these with fewer "
           "than 1 in 20 mistakes:");
inline constexpr Phrase look_alike_meant = phrase("{0} (taken as right)|a look-alike");

} // namespace scenes::words
