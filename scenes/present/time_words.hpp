#pragma once

#include <array>
#include <string_view>

/// The texts of time, branches, charts and what changed first.
namespace scenes::words {

// ---- time
inline constexpr std::string_view time_bar = "Time since the start";
inline constexpr std::string_view clock_of = " of ";
inline constexpr std::string_view in_the_past =
    "An earlier moment. Change something here to begin a branch; the run so far is kept.";
inline constexpr std::string_view go_ahead = "Go ahead";
inline constexpr std::string_view go_ahead_by = "Go ahead by";
inline constexpr std::array<std::string_view, 5> ahead_names{"10 s", "1 min", "10 min", "1 h",
                                                             "12 h"};
inline constexpr std::array<double, 5> ahead_seconds{10.0, 60.0, 600.0, 3600.0, 43200.0};
inline constexpr std::string_view go_ahead_to = "Or to a time, such as 2 min or 1 h";
inline constexpr std::string_view going_ahead = "Going ahead to ";
inline constexpr std::string_view time_left = "Time left, about";
inline constexpr std::string_view time_left_unknown = "not known yet";
inline constexpr std::string_view ahead_is_past = "The run is past that time already.";
inline constexpr std::string_view ahead_keeps =
    "The machine runs as fast as this computer can. Esc stops it and keeps what was reached.";

// ---- branches
inline constexpr std::string_view branches = "Branches";
inline constexpr std::string_view branch = "Branch ";
inline constexpr std::string_view branch_column = "Branch";
inline constexpr std::string_view left_column = "Left at";
inline constexpr std::string_view change_column = "Changed first";
inline constexpr std::string_view from_start = "start";
inline constexpr std::string_view branch_shown = " (shown)";
inline constexpr std::string_view branch_name = "Name";
inline constexpr std::string_view switch_branch = "Switch to it";
inline constexpr std::string_view remove_branch = "Remove it";
inline constexpr std::string_view branch_removed =
    "The branch is removed; Ctrl + Z brings it back.";
inline constexpr std::string_view branch_begun =
    "A new branch begins here; the run so far is kept. V shows the branches.";
inline constexpr std::string_view branch_rule =
    "Go back in time and change something: that begins a branch, and the old one is kept.";
inline constexpr std::string_view redo = "Do again";

// ---- what changed first
inline constexpr std::string_view page_changes = "Changes";
inline constexpr std::string_view changed_first = "What changed first";
inline constexpr std::string_view changes_rule =
    "Readings in the order in which they left the healthy twin's. Press one to see the moment.";
inline constexpr std::string_view nothing_changed = "Nothing has left the healthy twin's band.";
inline constexpr std::string_view time_column = "Time";
inline constexpr std::string_view amount_column = "By up to";

// ---- charts
inline constexpr std::string_view chart_lines_rule =
    "Up to three lines and two units in a chart; each unit has its own axis.";
inline constexpr std::string_view add_chart = "Add a chart";
inline constexpr std::string_view remove_chart = "Remove this chart";
inline constexpr std::string_view export_chart = "Export";
inline constexpr std::string_view export_title = "Export what the chart shows";
inline constexpr std::string_view export_file = "File to write, without its ending";
inline constexpr std::string_view export_csv = "Numbers (CSV)";
inline constexpr std::string_view export_png = "Picture (PNG)";
inline constexpr std::string_view exported_in = "The chart is saved in ";
inline constexpr std::string_view chart_plot = ", time of chart ";
inline constexpr std::string_view healthy_suffix = ", healthy twin";
inline constexpr std::string_view seconds_column = "time (s)";

// ---- keys
inline constexpr std::string_view key_back = "back or on by 1 ms";
inline constexpr std::string_view key_frame_back = "back or on by a frame";
inline constexpr std::string_view key_second = "back or on by a second";
inline constexpr std::string_view key_ten = "back or on by ten seconds";
inline constexpr std::string_view key_ends = "the start, or how far the run has been";
inline constexpr std::string_view key_ahead = "go ahead in time";
inline constexpr std::string_view key_branches = "branches of the run";
inline constexpr std::string_view key_changes = "what changed first";
inline constexpr std::string_view key_stop = "stop going ahead or a replay";
inline constexpr std::string_view key_span = "charts show less or more time";

} // namespace scenes::words
