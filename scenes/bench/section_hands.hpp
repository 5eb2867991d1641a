#pragma once

#include "scenes/view/camera.hpp"
#include "sim/rig.hpp"

#include <vector>

namespace scenes {

/// A thing in the drawing that a hand can work.
struct Hand {
    enum class Kind { cord, bulb, tap, cap };
    Kind kind = Kind::cord;
    Place low; ///< where it can be taken hold of, metres of the drawing
    Place high;
    Place pivot;        ///< of the tap's handle; where the cord comes out
    double drawn = 1.0; ///< of the cord: metres in the drawing for a metre of it
    double side = 1.0;  ///< of the cord: 1 when it is pulled to the right, -1 to the left
};

/// What can be worked in the drawing of a rig.
std::vector<Hand> hands_of(const sim::Rig& rig);

} // namespace scenes
