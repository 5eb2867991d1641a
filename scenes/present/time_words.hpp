#pragma once

#include "scenes/present/phrase.hpp"

#include <array>
#include <string_view>

/// The texts of time, branches, charts and what changed first.
namespace scenes::words {

// ---- time
inline constexpr Phrase time_bar = phrase("Time since the start");
inline constexpr Phrase clock_of = phrase("{0} of {1}|a moment of the run, and its length");
inline constexpr Phrase in_the_past =
    phrase("An earlier moment. Change something here to begin a branch; the run so far is kept.");
inline constexpr Phrase go_ahead = phrase("Go ahead");
inline constexpr Phrase go_ahead_by = phrase("Go ahead by");
inline constexpr std::array<std::string_view, 5> ahead_names{"10 s", "1 min", "10 min", "1 h",
                                                             "12 h"};
inline constexpr std::array<double, 5> ahead_seconds{10.0, 60.0, 600.0, 3600.0, 43200.0};
inline constexpr Phrase go_ahead_to = phrase("Or to a time, such as 2 min or 1 h");
inline constexpr Phrase going_ahead = phrase("Going ahead to {0}");
inline constexpr Phrase time_left = phrase("Time left, about");
inline constexpr Phrase time_left_unknown = phrase("not known yet");
inline constexpr Phrase ahead_is_past = phrase("The run is past that time already.");
inline constexpr Phrase ahead_keeps = phrase(
    "The machine runs as fast as this computer can. Esc stops it and keeps what was reached.");

// ---- branches
inline constexpr Phrase branches = phrase("Branches|of a run");
inline constexpr Phrase branch = phrase("Branch {0}");
inline constexpr Phrase branch_column = phrase("Branch|of a run");
inline constexpr Phrase left_column = phrase("Left at");
inline constexpr Phrase change_column = phrase("Changed first");
inline constexpr Phrase from_start = phrase("start|of a run");
inline constexpr Phrase branch_shown = phrase("{0} (shown)|a branch");
inline constexpr Phrase branch_name = phrase("Name|of a branch");
inline constexpr Phrase switch_branch = phrase("Switch to it");
inline constexpr Phrase remove_branch = phrase("Remove it");
inline constexpr Phrase branch_removed = phrase("The branch is removed; Ctrl + Z brings it back.");
inline constexpr Phrase branch_begun =
    phrase("A new branch begins here; the run so far is kept. R shows the branches.");
inline constexpr Phrase branch_rule =
    phrase("Go back in time and change something: that begins a branch, and the old one is kept.");
inline constexpr Phrase redo = phrase("Do again");

// ---- what changed first
inline constexpr Phrase page_changes = phrase("Changes|page: what changed first");
inline constexpr Phrase changed_first = phrase("What changed first");
inline constexpr Phrase changes_rule = phrase(
    "Readings in the order in which they left the healthy twin's. Press one to see the moment.");
inline constexpr Phrase changes_resolution =
    phrase("Times are true to 0.001 s where nothing stands beside them.");
inline constexpr Phrase time_within_seconds =
    phrase("{0} ±{1} s|a time, and what it may be off by");
inline constexpr Phrase time_within_minutes =
    phrase("{0} ±{1} min|a time, and what it may be off by");
inline constexpr Phrase changes_are_hidden =
    phrase("They are told when the hidden fault is revealed.");
inline constexpr Phrase hidden_fault = phrase("a hidden fault");
inline constexpr Phrase set_to = phrase("{0}: {1}|a control or fault, and what it was set to");
inline constexpr Phrase worked_on = phrase("Worked on {0}");
inline constexpr Phrase leaps_over = phrase("Leaps over turns of the engine");
inline constexpr Phrase every_turn = phrase("Every turn of the engine followed");
inline constexpr Phrase nothing_changed = phrase("Nothing has left the healthy twin's band.");
inline constexpr Phrase time_column = phrase("Time");
inline constexpr Phrase amount_column = phrase("By up to");

// ---- charts
inline constexpr Phrase chart_lines_rule =
    phrase("Up to three lines and two units in a chart; each unit has its own axis.");
inline constexpr Phrase add_chart = phrase("Add a chart");
inline constexpr Phrase remove_chart = phrase("Remove this chart");
inline constexpr Phrase export_chart = phrase("Export");
inline constexpr Phrase export_title = phrase("Export what the chart shows");
inline constexpr Phrase export_file = phrase("File to write, without its ending");
inline constexpr Phrase export_csv = phrase("Numbers (CSV)");
inline constexpr Phrase export_png = phrase("Picture (PNG)");
inline constexpr Phrase exported_in = phrase("The chart is saved in {0}");
inline constexpr Phrase chart_plot = phrase("{0}, time of chart {1}");
inline constexpr Phrase of_twin = phrase("{0}, healthy twin|a reading");
inline constexpr Phrase seconds_column = phrase("time (s)");

// ---- keys
inline constexpr Phrase key_back = phrase("back or on by 1 ms");
inline constexpr Phrase key_frame_back = phrase("back or on by a frame");
inline constexpr Phrase key_second = phrase("back or on by a second");
inline constexpr Phrase key_ten = phrase("back or on by ten seconds");
inline constexpr Phrase key_ends = phrase("the start, or how far the run has been");
inline constexpr Phrase key_ahead = phrase("go ahead in time");
inline constexpr Phrase key_branches = phrase("branches of the run");
inline constexpr Phrase key_changes = phrase("what changed first");
inline constexpr Phrase key_stop = phrase("stop long work; take the focus off a control");
inline constexpr Phrase key_span = phrase("charts show less or more time");

} // namespace scenes::words
