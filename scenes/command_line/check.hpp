#pragma once

#include "sim/command.hpp"

#include <functional>
#include <string>
#include <vector>

namespace scenes {

/// Asks what workshop checks read on a machine as its faults have it.
struct CheckRequest {
    std::string rig;
    std::vector<std::string> checks; ///< all the machine can be given when none is named
    std::vector<sim::SetFault> faults;
    double ambient = 293.15;
};

/// Does each check on a machine fresh from the shelf and gives a table: check, reading, what its
/// instrument shows without noise, what a sound machine's would.
///
/// throws:  RequestError when there is no such rig, check or fault; AssetError when a file is wrong
std::string check_text(const CheckRequest& request);

} // namespace scenes
