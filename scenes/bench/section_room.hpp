#pragma once

#include "scenes/bench/section_sheet.hpp"

namespace scenes {

/// A chamber of the machine in the section's plane.
struct RoomPlan {
    Spot low;
    Spot high;
    double depth = 0.0; ///< across the plane
    double zero = 0.0;  ///< height of level zero over the floor
    [[nodiscard]] double width() const { return high.x - low.x; }
    [[nodiscard]] double height() const { return high.y - low.y; }
    [[nodiscard]] Spot middle() const { return (low + high) * 0.5; }
};

/// How a chamber lies in the drawing: its own millimetres, reduced about a place.
struct Reduction {
    Spot from; ///< in the machine
    Spot to;   ///< in the drawing
    double scale = 1.0;
    [[nodiscard]] Spot operator()(Spot spot) const { return to + (spot - from) * scale; }
};

/// Bore of a round hole of an area.
///
/// unit: metres squared in, millimetres out
double bore_of(double area);

} // namespace scenes
