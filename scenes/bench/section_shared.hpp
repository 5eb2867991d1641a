#pragma once

#include "scenes/bench/section_pieces.hpp"

// Pieces that machines of every family have.

namespace scenes {

/// A plumb line when the machine is tipped; its words stand on the side of `end` and stop short of
/// it.
void draw_plumb_line(const Sheet& sheet, Spot hook, double end, const Moment& moment);

/// The outline of a bulb's dome at a share of its volume at rest: the thumb dents its crown.
Outline bulb_dome(Spot foot, double radius, double share, double shrink);

/// A plate on its shaft in a round bore.
struct PlateShape {
    Spot shaft;
    double half = 10.0;   ///< half its length
    double thick = 0.55;  ///< half its thickness
    double shut = 0.0;    ///< 0 along the bore to 1 across it
    double opening = 0.0; ///< share of its length that is left out when shut
};
void draw_plate(const Sheet& sheet, const PlateShape& plate);

/// A body seen from outside.
void draw_body(const Sheet& sheet, const Outline& outline, Material material);
/// The bodies of a machine as they look shut: plain, told apart by their shade.
void draw_outside(const Sheet& sheet, const SectionOutlines& outlines);

/// The words of a scale bar of so many metres.
std::string bar_words(double metres);

/// How far the choke is shut: as far as it is told to, within its stops.
double choke_shut(const MachineView& machine);

/// Drops that fall from a place to a height, while fuel leaves there.
void draw_drops(const Sheet& sheet, Spot from, double to, double seconds);

/// Liquid in a line with gas in plugs, as long and as wide as makes their share of the area right.
///
/// unit:    liquid is its share of the volume; drift is how far the plugs have come, millimetres
void draw_plugs(const Sheet& sheet, const Outline& line, double bore, double liquid, double drift);

} // namespace scenes
