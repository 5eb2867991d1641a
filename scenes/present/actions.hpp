#pragma once

#include "sim/rig.hpp"

#include <string>
#include <vector>

namespace scenes {

/// Something a person can do to the machine with one button.
struct Action {
    std::string id;
    std::string title;
    std::string release; ///< the doing that lets go again; empty when nothing is held
    double to = 0.0;     ///< the amount, where there is one
};

/// The buttons a rig needs. A doing "release_x" belongs to the one that takes hold of x, such as
/// "press_x" or "squeeze_x", and gets none of its own.
std::vector<Action> actions_of(const sim::Rig& rig);

} // namespace scenes
