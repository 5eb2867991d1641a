#pragma once

#include "scenes/view/mesh.hpp"

#include <span>
#include <vector>

namespace scenes {

using Polygon = std::vector<Point>;

/// A half plane: the points whose way from `edge` has a positive part along `inwards`.
struct HalfPlane {
    Point edge;
    Point inwards; ///< any length
};

/// The pieces of a simple polygon inside a half plane, each a simple polygon of its own.
///
/// This is how a liquid fills a chamber of any shape up to its level: with `inwards` along gravity.
/// A chamber with a pillar gives two pieces when the level is below the pillar's top.
std::vector<Polygon> clip(std::span<const Point> polygon, const HalfPlane& plane);

/// The stretches of a straight line inside a simple polygon, as pairs of points: a liquid's
/// surface.
std::vector<std::pair<Point, Point>> stretches_inside(std::span<const Point> polygon,
                                                      const HalfPlane& plane);

} // namespace scenes
