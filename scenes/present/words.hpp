#pragma once

#include "scenes/present/phrase.hpp"

#include <array>
#include <string_view>

/// Every text of the bench that a person reads and that does not come from a rig or a fault.
namespace scenes::words {

inline constexpr std::string_view program = "Standpipe";

// ---- the fuel's path
inline constexpr Phrase tank = phrase("tank");
inline constexpr Phrase screen = phrase("screen");
inline constexpr Phrase tap = phrase("tap");
inline constexpr Phrase filter = phrase("filter");
inline constexpr Phrase hose = phrase("hose");
inline constexpr Phrase needle = phrase("needle");
inline constexpr Phrase main_jet = phrase("main jet");
inline constexpr Phrase lip = phrase("lip");
inline constexpr Phrase tank_outlet = phrase("tank outlet");
inline constexpr Phrase hose_end = phrase("hose end");
inline constexpr Phrase bowl = phrase("bowl");
inline constexpr Phrase nozzle = phrase("nozzle");
inline constexpr Phrase open_air = phrase("open air");
inline constexpr Phrase pump_inlet = phrase("pump inlet");
inline constexpr Phrase suction = phrase("suction");
inline constexpr Phrase pump = phrase("pump");
inline constexpr Phrase gallery = phrase("gallery");
inline constexpr Phrase inlet_screen = phrase("inlet screen");
inline constexpr Phrase metering = phrase("metering|standpipe: short");
inline constexpr Phrase circuits = phrase("circuits");
inline constexpr Phrase grade_line = phrase("Grade line, head of fuel");
inline constexpr Phrase standpipes = phrase("Standpipes, head of fuel");
inline constexpr Phrase standpipes_short = phrase("Standpipes|short");
inline constexpr Phrase of_fuel = phrase("{0} of fuel|a unit of head: mm of fuel");

// ---- the line below the drawing
inline constexpr Phrase float_hint =
    phrase("Try this: plug the bowl vent, then load the engine. F1 shows the keys.");
inline constexpr Phrase diaphragm_hint =
    phrase("Try this: slow down to 1/100 and watch the pump and the needle. F1 shows the keys.");
inline constexpr Phrase paused = phrase("paused");
inline constexpr Phrase times_real_time = phrase("{0} times real time");
inline constexpr Phrase real_time = phrase("real time");
inline constexpr Phrase frozen = phrase("The bench is frozen: {0} {1}");
inline constexpr Phrase kept_in = phrase("The run is kept in {0}");
inline constexpr Phrase not_kept = phrase("The run could not be kept: {0}");
inline constexpr Phrase saved_in = phrase("The run is saved in {0}");
inline constexpr Phrase opened = phrase("Opened {0}");
inline constexpr Phrase late = phrase("This computer keeps up with {0} times real time only.");
inline constexpr Phrase twin_lost =
    phrase("The healthy twin could not be carried on and is left out.");

// ---- pages and panels
inline constexpr Phrase page_machine = phrase("Machine");
inline constexpr Phrase page_grade = phrase("Grade|page: the hydraulic grade line");
inline constexpr Phrase page_charts = phrase("Charts");
inline constexpr Phrase page_controls = phrase("Controls");
inline constexpr Phrase page_faults = phrase("Faults");
inline constexpr Phrase page_run = phrase("Run|page: what was done to the machine, to be saved");
inline constexpr Phrase pages = phrase("Page");
inline constexpr Phrase drawing = phrase("Drawing");

// ---- time
inline constexpr Phrase time = phrase("Time");
inline constexpr Phrase pause = phrase("Pause");
inline constexpr Phrase go_on = phrase("Go on");
inline constexpr Phrase step_tick = phrase("+ 1 ms");
inline constexpr Phrase step_frame = phrase("+ 1 frame");
inline constexpr Phrase speed = phrase("Times real time");
inline constexpr std::array<std::string_view, 6> speeds{"1/1000", "1/100", "1/10", "1", "10", "60"};
inline constexpr Phrase replaying = phrase("Replaying the run");
inline constexpr Phrase cancel = phrase("Cancel");

// ---- controls and faults
inline constexpr Phrase doings =
    phrase("Do|heading above buttons that do something to the machine");
inline constexpr Phrase controls =
    phrase("Set|heading above sliders that set something on the machine");
inline constexpr Phrase search_faults = phrase("Search faults");
inline constexpr Phrase search_faults_hint = phrase("Where, or what it does");
inline constexpr Phrase no_such_fault = phrase("No fault has these words.");
inline constexpr Phrase no_faults = phrase("This machine has no faults to choose from.");
inline constexpr Phrase cure_all = phrase("Cure all");

// ---- the run
inline constexpr Phrase undo = phrase("Undo");
inline constexpr Phrase save = phrase("Save the run");
inline constexpr Phrase open = phrase("Open a run");
inline constexpr Phrase machine = phrase("Machine on the bench");
inline constexpr Phrase choose_machine = phrase("Choose the machine");
inline constexpr Phrase machines = phrase("Machines");
inline constexpr Phrase put_on_bench = phrase("Put on the bench");
inline constexpr Phrase begin_running = phrase("Start with the engine running");
inline constexpr Phrase begin_cold = phrase("Start cold, from the shelf");
inline constexpr Phrase chart_time = phrase("Charts show the last");
inline constexpr std::array<std::string_view, 4> spans{"10 s", "1 min", "5 min", "1 h"};
inline constexpr std::array<double, 4> span_seconds{10.0, 60.0, 300.0, 3600.0};
inline constexpr Phrase look = phrase("Look|what the screen looks like");
inline constexpr Phrase settings = phrase("Settings");
inline constexpr Phrase projector_view = phrase("Projector view");
inline constexpr Phrase show_keys = phrase("Show the keys");
inline constexpr Phrase healthy_twin = phrase("Healthy twin");
inline constexpr Phrase shown = phrase("shown|the healthy twin");
inline constexpr Phrase hidden = phrase("hidden|the healthy twin");
inline constexpr Phrase twin_note =
    phrase("Thin lines and small triangles: the same machine, treated the same, without faults.");

// ---- dialogs
inline constexpr Phrase file_to_save = phrase("File to write");
inline constexpr Phrase file_to_open = phrase("File to read");
inline constexpr Phrase saved_runs = phrase("Saved runs");
inline constexpr Phrase no_saved_runs = phrase("No run is saved yet.");
inline constexpr Phrase file_column = phrase("File");
inline constexpr Phrase save_short = phrase("Save");
inline constexpr Phrase open_short = phrase("Open|a file");
inline constexpr Phrase close = phrase("Close");
inline constexpr Phrase keys = phrase("Keys");
inline constexpr Phrase key_column = phrase("Key");
inline constexpr Phrase key_does_column = phrase("What it does");
inline constexpr Phrase choose_readings = phrase("Readings of chart {0}");
inline constexpr Phrase chart = phrase("Chart {0}");
inline constexpr Phrase choose_by_press = phrase("Press to choose what the chart shows.");
inline constexpr Phrase search_readings = phrase("Search readings");
inline constexpr Phrase search_readings_hint = phrase("Part or reading");
inline constexpr Phrase readings = phrase("Readings");
inline constexpr Phrase reading_column = phrase("Reading");
inline constexpr Phrase unit_column = phrase("Unit");
inline constexpr Phrase on_chart_column = phrase("Shown|column: on the chart or not");
inline constexpr Phrase is_on_chart = phrase("yes|is on the chart");
inline constexpr Phrase no_such_reading = phrase("No reading has these words.");
inline constexpr Phrase put_on_chart = phrase("Show or hide");

// ---- settings
inline constexpr Phrase language = phrase("Language");
inline constexpr Phrase units = phrase("Units");
inline constexpr std::array unit_sets{phrase("SI"), phrase("US customary")};
inline constexpr Phrase ground = phrase("Ground|what the drawing lies on");
inline constexpr std::array grounds{phrase("Paper"), phrase("Blackboard")};
inline constexpr Phrase numbers = phrase("Decimal sign");
inline constexpr Phrase decimal_point = phrase("point");
inline constexpr Phrase decimal_comma = phrase("comma");
inline constexpr Phrase text_size = phrase("Text size");
inline constexpr Phrase reduced_motion = phrase("Reduced motion");
inline constexpr Phrase on = phrase("on|a switch");
inline constexpr Phrase off = phrase("off|a switch");
inline constexpr Phrase sound = phrase("Sound|of the engine, a setting");
inline constexpr Phrase volume = phrase("Volume");
inline constexpr Phrase mute = phrase("Mute");
inline constexpr Phrase captions = phrase("Captions for sounds");
inline constexpr Phrase projector_shows = phrase("The projector view shows, beside the drawing");
inline constexpr Phrase projector_grade = phrase("Grade line");
inline constexpr Phrase projector_standpipes = phrase("Standpipes");
inline constexpr Phrase projector_charts = phrase("Charts");
inline constexpr Phrase projector_panel = phrase("Controls and faults");
inline constexpr Phrase no_language =
    phrase("The language {0} cannot be had. English stands in for it.");
inline constexpr Phrase no_machine =
    phrase("The machine cannot be put on the bench. Another one stands in for it. {0}");
inline constexpr Phrase no_machines = phrase("There is no machine to put on the bench. {0}");
inline constexpr Phrase trouble = phrase("Standpipe cannot go on");
inline constexpr Phrase assets_are = phrase("Machines, fonts and languages are looked for in {0}");
inline constexpr Phrase leave = phrase("Leave");
inline constexpr Phrase no_fonts = phrase("Fonts cannot be read: {0}. Others stand in for them.");

// ---- keys
inline constexpr Phrase key_pause = phrase("pause or go on");
inline constexpr Phrase key_pace = phrase("slower, faster");
inline constexpr Phrase key_hold = phrase("{0} (hold it)");
inline constexpr Phrase key_charts = phrase("choose the readings of a chart");
inline constexpr Phrase key_machine = phrase("choose the machine");
inline constexpr Phrase key_whole = phrase("show the whole drawing again");
inline constexpr Phrase key_part = phrase("point at the next or previous part");
inline constexpr Phrase key_frame_part = phrase("show the part pointed at large, and back");
inline constexpr Phrase key_shut = phrase("machine cut open, or from outside");
inline constexpr Phrase key_zoom = phrase("enlarge or reduce the drawing");
inline constexpr Phrase key_pages = phrase("controls, faults, run");
inline constexpr Phrase key_help = phrase("show these keys");
inline constexpr Phrase key_ground = phrase("paper or blackboard");
inline constexpr Phrase key_settings = phrase("settings");
inline constexpr Phrase key_projector = phrase("projector view, and back");
inline constexpr Phrase key_clicker =
    phrase("in the projector view: next change, then next branch (clicker)");
inline constexpr Phrase key_clicker_step =
    phrase("in the projector view: change before, then branch before (clicker)");
inline constexpr Phrase key_text = phrase("larger or smaller text");
inline constexpr Phrase key_tab = phrase("next or previous control");
inline constexpr Phrase key_panel = phrase("next panel");
inline constexpr Phrase key_arrows =
    phrase("move a slider, the tap, the dial or time; Delete puts a slider back");
inline constexpr Phrase key_quit = phrase("leave the bench");

} // namespace scenes::words
