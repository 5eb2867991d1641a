#pragma once

#include "scenes/present/fault_list.hpp"

#include <string>

namespace scenes {

/// A command in a person's words: "Load: 50 %", "Pull the cord", "Bowl vent plugged: 100 %". A
/// fault that is hidden is not named.
std::string command_text(const sim::Rig& rig, const sim::Command& command,
                         const HiddenFaults& hidden = {});

} // namespace scenes
