#pragma once

#include "scenes/bench/section_pieces.hpp"
#include "scenes/bench/section_shared.hpp"
#include "scenes/bench/section_trimmer_plan.hpp"
#include "scenes/present/phrase.hpp"

// The pieces the section of a hand-held machine is put together from, one file each. `_still` draws
// what stands still; `_moving` draws over it what the readings move, and the edges that would else
// be covered.

namespace scenes {

/// Cover, body and cover of the carburetor, with their fuel passages' walls.
void draw_block_still(const Sheet& sheet, const TrimmerPlan& plan);

/// Pump and pulse chamber with the diaphragm between them, flaps and gallery.
void draw_pump_moving(const Sheet& sheet, const TrimmerPlan& plan, const Moment& moment);

/// Where the diaphragms are now.
Outline pump_line(const TrimmerPlan& plan, const MachineView& machine);
Outline metering_line(const TrimmerPlan& plan, const MachineView& machine);

/// Metering chamber and dry side with their diaphragm, lever, spring, needle and screen.
void draw_metering_moving(const Sheet& sheet, const TrimmerPlan& plan, const Moment& moment);

/// Upper right corner of the frame that shows the gap between needle and seat again, larger.
Spot detail_corner(const TrimmerPlan& plan);
void draw_detail_still(const Sheet& sheet, const TrimmerPlan& plan);
void draw_detail_moving(const Sheet& sheet, const TrimmerPlan& plan, const Moment& moment);

/// The tank with cap, vent and weighted pick-up.
void draw_tank_still(const Sheet& sheet, const TrimmerPlan& plan);
void draw_tank_moving(const Sheet& sheet, const TrimmerPlan& plan, const Moment& moment);
void draw_cap(const Sheet& sheet, const TrimmerPlan& plan, double loose);

/// The weighted pick-up's name, by which it is told from what stands still, and where it lies.
inline constexpr Phrase pickup_name = phrase("pick-up");
Spot pickup_place(const TrimmerPlan& plan, const MachineView& machine);

/// Where the cord comes out; its handle hangs a little lower, to the right of it.
Spot cord_guide(const TrimmerPlan& plan);

/// Suction hose, purge bulb with its valves and lines.
void draw_hoses_still(const Sheet& sheet, const TrimmerPlan& plan);
/// Whether the bulb's hoses are on each other's nipples.
bool has_crossed_hoses(const MachineView& machine);
/// The ends of the bulb's hoses laid anew, the one before the other; from outside uncut.
void draw_crossed_hoses(const Sheet& sheet, const TrimmerPlan& plan, bool is_open);
void draw_hoses_moving(const Sheet& sheet, const TrimmerPlan& plan, const Moment& moment);
void draw_bulb_still(const Sheet& sheet, const TrimmerPlan& plan);
void draw_bulb_moving(const Sheet& sheet, const TrimmerPlan& plan, const Moment& moment);

/// Air filter, choke, venturi, throttle, adapter and its two joints.
void draw_throat_still(const Sheet& sheet, const TrimmerPlan& plan);
void draw_throat_moving(const Sheet& sheet, const TrimmerPlan& plan, const Moment& moment);

/// High- and low-speed circuits with their screws.
void draw_circuits_still(const Sheet& sheet, const TrimmerPlan& plan);
void draw_circuits_moving(const Sheet& sheet, const TrimmerPlan& plan, const Moment& moment);

/// From the metering chamber's roof to the nozzle.
Outline high_passage(const TrimmerPlan& plan);
/// From the metering chamber's roof to the pocket under the throttle.
Outline low_passage(const TrimmerPlan& plan);
/// Where the nozzle's check valve seats, from below upwards.
Outline nozzle_check_hole(const TrimmerPlan& plan);
/// The two adjusting screws.
void draw_screws(const Sheet& sheet, const TrimmerPlan& plan, const Moment& moment);

/// Crankcase, cylinder, reed, exhaust and the passage that carries the pulse to the pump.
void draw_engine_still(const Sheet& sheet, const TrimmerPlan& plan);
void draw_engine_moving(const Sheet& sheet, const TrimmerPlan& plan, const Moment& moment);
Outline pulse_line(const TrimmerPlan& plan);
/// The starter's cord and handle.
void draw_cord(const Sheet& sheet, const TrimmerPlan& plan, const MachineView& machine);
/// Middle of the muffler's outlet.
double exhaust_height(const TrimmerPlan& plan);
/// Crankcase, cylinder, duct and muffler from outside.
std::vector<Body> engine_bodies(const TrimmerPlan& plan);
void draw_pulse_passage(const Sheet& sheet, const TrimmerPlan& plan);

void draw_floor_still(const Sheet& sheet, const TrimmerPlan& plan);

/// What is seen to move from outside.
void draw_outside_parts(const Sheet& sheet, const TrimmerPlan& plan, const Moment& moment);

/// What is drawn at which scale.
void draw_scales(const Sheet& sheet, const TrimmerPlan& plan);
void draw_travels_note(const Sheet& sheet, const TrimmerPlan& plan);

} // namespace scenes
