#pragma once

#include "scenes/view/mesh.hpp"

#include <span>
#include <vector>

namespace scenes {

/// Lengths of drawn and left-out pieces of a line, repeated: on, off, on, off.
///
/// unit: pixels; phase shifts the pattern forwards along the line
struct Dashes {
    float on = 8.0F;
    float off = 5.0F;
    float dot = 0.0F; ///< a second, short piece in the middle of each gap; 0 for none
    float phase = 0.0F;
};

/// Draws a broken line through the points.
void dash(Mesh& mesh, std::span<const Point> points, const Pen& pen, const Dashes& dashes);

/// The outline of a box with round corners.
std::vector<Point> rounded_box(const sf::FloatRect& box, float radius);

/// The outline of a box with two opposite corners (upper left, lower right) cut off at 45 degrees,
/// like a chamfered plate: the shape of everything that can be pressed.
std::vector<Point> chamfered_box(const sf::FloatRect& box, float cut);

/// Draws a line that ends in a slim, filled head, as on dimension lines.
///
/// unit: head is the length of the arrowhead in pixels; its width is a third of that
void arrow(Mesh& mesh, Point from, Point to, const Pen& pen, float head);

/// Draws the filled head alone, its tip at a point.
void arrow_head(Mesh& mesh, Point tip, Point direction, float head, Rgba colour);

/// Draws a dimension line between two points: arrows at both ends and short witness lines across.
void dimension(Mesh& mesh, Point from, Point to, const Pen& pen, float head);

/// Points of a smooth curve from `a` to `d` that leaves towards `b` and arrives from `c`.
///
/// source: cubic Bezier curve in Bernstein form (textbook)
std::vector<Point> curve(Point a, Point b, Point c, Point d, int steps = 40);

} // namespace scenes
