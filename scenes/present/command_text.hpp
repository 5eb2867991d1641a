#pragma once

#include "sim/rig.hpp"

#include <string>

namespace scenes {

/// A command in a person's words: "Load: 50 %", "Pull the cord", "Bowl vent plugged: 100 %".
std::string command_text(const sim::Rig& rig, const sim::Command& command);

} // namespace scenes
