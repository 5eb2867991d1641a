#pragma once

#include "scenes/bench/section_pieces.hpp"
#include "scenes/bench/section_plan.hpp"
#include "scenes/present/phrase.hpp"

// The pieces the section of a float-bowl machine is put together from, one file each. `_still`
// draws what stands still; `_moving` draws over it what the readings move, and the edges that would
// else be covered.

namespace scenes {

void draw_tank_still(const Sheet& sheet, const SectionPlan& plan);
void draw_tank_moving(const Sheet& sheet, const SectionPlan& plan, const Moment& moment);
void draw_cap(const Sheet& sheet, const SectionPlan& plan, double loose);
void draw_tap_handle(const Sheet& sheet, const SectionPlan& plan, double open);

/// Where the tap's handle turns.
Spot tap_hub(const SectionPlan& plan);
/// Tap, filter and hose.
void draw_hose_still(const Sheet& sheet, const SectionPlan& plan);
void draw_hose_moving(const Sheet& sheet, const SectionPlan& plan, const Moment& moment);

/// The name of the water in the bowl, which is there or not.
inline constexpr Phrase bowl_water_name = phrase("water");
inline constexpr double least_water = 1e-7; ///< m3 that are drawn and named

/// The body with bowl and throat, the lid and the gasket between them.
void draw_body_still(const Sheet& sheet, const SectionPlan& plan);
/// What is in the bowl, but for the float.
void draw_bowl_moving(const Sheet& sheet, const SectionPlan& plan, const Moment& moment);

void draw_float_moving(const Sheet& sheet, const SectionPlan& plan, const Moment& moment);

/// Jets, well, nozzle and the idle passage.
void draw_circuits_still(const Sheet& sheet, const SectionPlan& plan);
void draw_circuits_moving(const Sheet& sheet, const SectionPlan& plan, const Moment& moment);

/// Air filter, choke, venturi, throttle, runner.
void draw_throat_still(const Sheet& sheet, const SectionPlan& plan);
void draw_throat_moving(const Sheet& sheet, const SectionPlan& plan, const Moment& moment);
/// Half the venturi's wall, from mouth to flange: `side` -1 for the floor, 1 for the roof.
Outline throat_wall(const SectionPlan& plan, double side);

void draw_bulb_still(const Sheet& sheet, const SectionPlan& plan);
void draw_bulb_moving(const Sheet& sheet, const SectionPlan& plan, const Moment& moment);

/// The cord is drawn 1:20, as the note in the drawing says.
inline constexpr double cord_reduction = 0.05;
/// Where the cord comes out, its handle to the left of it.
Spot cord_guide(const SectionPlan& plan);
void draw_cord_still(const Sheet& sheet, const SectionPlan& plan);
void draw_cord_moving(const Sheet& sheet, const SectionPlan& plan, const Moment& moment);

/// The floor, and fuel that spills inside the throat.
void draw_floor_still(const Sheet& sheet, const SectionPlan& plan);
void draw_floor_moving(const Sheet& sheet, const SectionPlan& plan, const Moment& moment);

/// The frame that shows needle and seat again, four times as large.
void draw_detail_still(const Sheet& sheet, const SectionPlan& plan);
void draw_detail_moving(const Sheet& sheet, const SectionPlan& plan, const Moment& moment);

/// What is seen to move from outside.
void draw_outside_parts(const Sheet& sheet, const SectionPlan& plan, const Moment& moment);

/// What is drawn at which scale.
void draw_scales(const Sheet& sheet, const SectionPlan& plan);

} // namespace scenes
