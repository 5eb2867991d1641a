#pragma once

#include "scenes/bench/section_room.hpp"

#include "sim/geometry.hpp"

namespace scenes {

/// What a chamber holds.
///
/// unit: fill and water are shares of its volume; water is part of fill
struct Contained {
    double fill = 0.0;
    double water = 0.0;
    bool is_marked = false; ///< with the level mark of drawing practice
};

/// How steep things lie in the drawing: `up` as it shows there, at its true length in the plane.
struct Lie {
    Spot up{0.0, 1.0};
    double across = 0.0; ///< the part of `up` out of the plane
};
/// In the plane of bowl and tank: machine x to the right.
Lie lie_of_bowl(sim::Vector up);
/// In the throat's plane, turned into the drawing: machine y to the left.
Lie lie_of_throat(sim::Vector up);

/// The part of a chamber below the surface that its volume reaches, where the section cuts it.
///
/// The surface is the model's own: level, at height (fill - 1/2) times the room's tilted height
/// over the room's middle.
HalfPlane below_surface(const Sheet& sheet, const RoomPlan& room, const Reduction& view,
                        double fill, const Lie& lie);

/// Fills a chamber's cut with gas, fuel and water, and draws the surfaces.
void draw_contained(const Sheet& sheet, const RoomPlan& room, const Reduction& view,
                    const Contained& contained, const Lie& lie);

/// Fills a passage with fuel along a part of its line.
void draw_passage(const Sheet& sheet, const Outline& line, double bore, double share);

/// Moving marks along a line: how fast something flows there.
///
/// unit: strength 0 (none) to 1 (all the marks at full length); phase in millimetres
void draw_flow_marks(const Sheet& sheet, const Outline& line, double strength, double phase,
                     Rgba colour);

} // namespace scenes
