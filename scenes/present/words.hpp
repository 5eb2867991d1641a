#pragma once

#include <array>
#include <string_view>

/// Every text of the bench that a person reads and that does not come from a rig or a fault.
namespace scenes::words {

inline constexpr std::string_view program = "Standpipe";

// ---- the fuel's path
inline constexpr std::string_view tank = "tank";
inline constexpr std::string_view screen = "screen";
inline constexpr std::string_view tap = "tap";
inline constexpr std::string_view filter = "filter";
inline constexpr std::string_view hose = "hose";
inline constexpr std::string_view needle = "needle";
inline constexpr std::string_view main_jet = "main jet";
inline constexpr std::string_view lip = "lip";
inline constexpr std::string_view tank_outlet = "tank outlet";
inline constexpr std::string_view hose_end = "hose end";
inline constexpr std::string_view bowl = "bowl";
inline constexpr std::string_view nozzle = "nozzle";
inline constexpr std::string_view open_air = "open air";
inline constexpr std::string_view pump_inlet = "pump inlet";
inline constexpr std::string_view suction = "suction";
inline constexpr std::string_view pump = "pump";
inline constexpr std::string_view gallery = "gallery";
inline constexpr std::string_view inlet_screen = "inlet screen";
inline constexpr std::string_view metering = "metering";
inline constexpr std::string_view circuits = "circuits";
inline constexpr std::string_view grade_line = "Grade line, head of fuel";
inline constexpr std::string_view millimetres = "mm";

// ---- the line below the drawing
inline constexpr std::string_view float_hint =
    "Try this: plug the bowl vent, then load the engine. F1 shows the keys.";
inline constexpr std::string_view diaphragm_hint =
    "Try this: slow down to 1/100 and watch the pump and the needle. F1 shows the keys.";
inline constexpr std::string_view paused = "paused";
inline constexpr std::string_view times_real_time = "times real time";
inline constexpr std::string_view real_time = "real time";
inline constexpr std::string_view frozen = "The bench is frozen: ";
inline constexpr std::string_view kept_in = " The run is kept in ";
inline constexpr std::string_view not_kept = " The run could not be kept: ";
inline constexpr std::string_view saved_in = "The run is saved in ";
inline constexpr std::string_view opened = "Opened ";
inline constexpr std::string_view late_begin = "This computer keeps up with ";
inline constexpr std::string_view late_end = " times real time only.";
inline constexpr std::string_view twin_lost =
    "The healthy twin could not be carried on and is left out.";

// ---- pages and panels
inline constexpr std::string_view page_machine = "Machine";
inline constexpr std::string_view page_grade = "Grade";
inline constexpr std::string_view page_charts = "Charts";
inline constexpr std::string_view page_controls = "Controls";
inline constexpr std::string_view page_faults = "Faults";
inline constexpr std::string_view page_run = "Run";
inline constexpr std::string_view pages = "Page";
inline constexpr std::string_view drawing = "Drawing";

// ---- time
inline constexpr std::string_view time = "Time";
inline constexpr std::string_view pause = "Pause";
inline constexpr std::string_view go_on = "Go on";
inline constexpr std::string_view step_tick = "+ 1 ms";
inline constexpr std::string_view step_frame = "+ 1 frame";
inline constexpr std::string_view speed = "Times real time";
inline constexpr std::array<std::string_view, 6> speeds{"1/1000", "1/100", "1/10", "1", "10", "60"};
inline constexpr std::string_view replaying = "Replaying the run";
inline constexpr std::string_view cancel = "Cancel";

// ---- controls and faults
inline constexpr std::string_view doings = "Do";
inline constexpr std::string_view controls = "Set";
inline constexpr std::string_view search_faults = "Search faults";
inline constexpr std::string_view search_faults_hint = "Where, or what it does";
inline constexpr std::string_view no_such_fault = "No fault has these words.";
inline constexpr std::string_view no_faults = "This machine has no faults to choose from.";
inline constexpr std::string_view cure_all = "Cure all";
inline constexpr std::string_view all_healthy = "none set";
inline constexpr std::string_view faults_set = " set";

// ---- the run
inline constexpr std::string_view undo = "Undo";
inline constexpr std::string_view save = "Save the run";
inline constexpr std::string_view open = "Open a run";
inline constexpr std::string_view machine = "Machine on the bench";
inline constexpr std::string_view choose_machine = "Choose the machine";
inline constexpr std::string_view machines = "Machines";
inline constexpr std::string_view put_on_bench = "Put on the bench";
inline constexpr std::string_view begin_running = "Start with the engine running";
inline constexpr std::string_view begin_cold = "Start cold, from the shelf";
inline constexpr std::string_view chart_time = "Charts show the last";
inline constexpr std::array<std::string_view, 4> spans{"10 s", "1 min", "5 min", "1 h"};
inline constexpr std::array<double, 4> span_seconds{10.0, 60.0, 300.0, 3600.0};
inline constexpr std::string_view look = "Look";
inline constexpr std::array<std::string_view, 2> grounds{"Paper", "Blackboard"};
inline constexpr std::string_view text_size = "Text size";
inline constexpr std::string_view show_keys = "Show the keys";
inline constexpr std::string_view healthy_twin = "Healthy twin";
inline constexpr std::string_view shown = "shown";
inline constexpr std::string_view hidden = "hidden";
inline constexpr std::string_view twin_note =
    "Thin lines and small triangles: the same machine, treated the same, without faults.";

// ---- dialogs
inline constexpr std::string_view file_to_save = "File to write";
inline constexpr std::string_view file_to_open = "File to read";
inline constexpr std::string_view saved_runs = "Saved runs";
inline constexpr std::string_view no_saved_runs = "No run is saved yet.";
inline constexpr std::string_view file_column = "File";
inline constexpr std::string_view save_short = "Save";
inline constexpr std::string_view open_short = "Open";
inline constexpr std::string_view close = "Close";
inline constexpr std::string_view keys = "Keys";
inline constexpr std::string_view key_column = "Key";
inline constexpr std::string_view key_does_column = "What it does";
inline constexpr std::string_view choose_readings = "Readings of chart ";
inline constexpr std::string_view chart = "Chart ";
inline constexpr std::string_view choose_by_press = "Press to choose what the chart shows.";
inline constexpr std::string_view search_readings = "Search readings";
inline constexpr std::string_view search_readings_hint = "Part or reading";
inline constexpr std::string_view readings = "Readings";
inline constexpr std::string_view reading_column = "Reading";
inline constexpr std::string_view unit_column = "Unit";
inline constexpr std::string_view on_chart_column = "Shown";
inline constexpr std::string_view is_on_chart = "yes";
inline constexpr std::string_view no_such_reading = "No reading has these words.";
inline constexpr std::string_view put_on_chart = "Show or hide";

// ---- keys
inline constexpr std::string_view key_pause = "pause or go on";
inline constexpr std::string_view key_slower = "slower";
inline constexpr std::string_view key_faster = "faster";
inline constexpr std::string_view key_hold = " (hold it)";
inline constexpr std::string_view key_charts = "choose the readings of a chart";
inline constexpr std::string_view key_machine = "choose the machine";
inline constexpr std::string_view key_whole = "show the whole drawing again";
inline constexpr std::string_view key_zoom = "enlarge or reduce the drawing";
inline constexpr std::string_view key_pages = "controls, faults, run";
inline constexpr std::string_view key_help = "show these keys";
inline constexpr std::string_view key_ground = "paper or blackboard";
inline constexpr std::string_view key_text = "larger or smaller text";
inline constexpr std::string_view key_tab = "next or previous control";
inline constexpr std::string_view key_panel = "next panel";
inline constexpr std::string_view key_arrows = "move a slider; Delete puts it back";
inline constexpr std::string_view key_quit = "leave the bench";

} // namespace scenes::words
