#pragma once

#include "units.hpp"

#include <array>
#include <cmath>

namespace sim {

/// A place or direction in the machine's axes, metres: x forward, y to the left, z up.
struct Vector {
    double x = 0.0;
    double y = 0.0;
    double z = 0.0;
};
constexpr Vector operator-(Vector a, Vector b)
{
    return {a.x - b.x, a.y - b.y, a.z - b.z};
}
constexpr double dot(Vector a, Vector b)
{
    return a.x * b.x + a.y * b.y + a.z * b.z;
}

/// The room inside a chamber: a box, or the line between two ends of a hose.
///
/// In a box the liquid lies level whichever way the machine is tipped. In a hose (`mixed`) liquid
/// and bubbles stay spread along the bore.
struct Box {
    Vector centre;
    Vector size;
    bool mixed = false;
    Vector end_a;
    Vector end_b;
    [[nodiscard]] bool exists() const { return size.x > 0.0 || mixed; }
    [[nodiscard]] Volume volume() const { return {size.x * size.y * size.z}; }
};

/// Where a passage ends in a chamber.
struct PortPlace {
    Box box;
    Vector point;
};

/// A port under the present tilt: how the liquid surface stands over it.
///
/// Height of the surface over the port = `rise` * fill + `offset`. Exact upright, on its side and
/// at half full in any attitude; between those the box is taken as a prism of its own tilted
/// height, an error of a few per cent of that height.
struct Port {
    double rise = 0.0;
    double offset = -1.0;
    bool mixed = false;
};

/// The port at a place, for a given direction of `up`. A place without a chamber is always bare.
Port find_port(const PortPlace& place, Vector up);

/// How far to tip, nose down and then left side down, so that `up` points away from the earth.
///
/// valid:   any direction but none; forward comes out within a right angle, side within two
struct Tilt {
    Angle forward;
    Angle side;
};
Tilt tilt_for(Vector up);

/// The direction away from the earth, in machine axes, after tipping the nose down by `forward` and
/// then the left side down by `side`.
Vector tilted_up(Angle forward, Angle side);

} // namespace sim
