#pragma once

#include "scenes/bench/section_pieces.hpp"

#include <span>

// Damage as it looks when you look closely, from parameters as they stand beside those of the
// healthy machine. No fault is known here.

namespace scenes {

/// How much of a hole is shut: 0 as it should be, 1 shut.
double shut_share(const MachineView& machine, std::string_view part, std::string_view area);
/// How much a value has grown over the healthy one, 1 as it should be.
double growth(const MachineView& machine, std::string_view part, std::string_view name);

/// Dirt that shuts a share of a passage along a piece of its line.
void draw_blockage(const Sheet& sheet, const Outline& line, double bore, double share);
/// A hole between two places that dirt has shut by a share of its area.
struct Hole {
    std::string_view part;
    std::string_view area;
    Outline line;
    double bore;
};
/// Dirt in each hole, as much as its part has of it.
void draw_blockages(const Sheet& sheet, const MachineView& machine, std::span<const Hole> holes);
/// A crack through a wall, as wide as its area asks; nothing without area.
///
/// unit:    area in square metres
void draw_crack(const Sheet& sheet, Spot from, Spot to, double area);
/// Specks of dirt over a filter or screen that is shut by a share.
void draw_dirt(const Sheet& sheet, Spot low, Spot high, double share);
/// Varnish on both walls of a passage, as it lies there.
///
/// unit:    bore as drawn and thickness in millimetres; a thin film is drawn thick enough to be
/// seen
void draw_film(const Sheet& sheet, const Outline& line, double bore, double thickness);
/// Amber on a tank's bottom and walls, up to where fuel that went stale has stood.
void draw_tide_mark(const Sheet& sheet, Spot low, Spot high, const MachineView& machine);
/// Whether a filter has been taken out: nothing then holds back what it should.
bool is_filter_out(const MachineView& machine, std::string_view part, std::string_view measure);
/// Lumps along a sheet that has gone hard.
void draw_stiffness(const Sheet& sheet, const Outline& line, double growth);
/// A pinhole through a sheet at a share of its length.
void draw_pinhole(const Sheet& sheet, const Outline& line, double at, double area);

/// All of a machine's damage, over what is drawn of it.
void draw_wear(const Sheet& sheet, const SectionPlan& plan, const Moment& moment);
void draw_wear(const Sheet& sheet, const TrimmerPlan& plan, const Moment& moment);

} // namespace scenes
