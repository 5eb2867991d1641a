#pragma once

#include "sim/command.hpp"

#include <optional>
#include <string>
#include <vector>

namespace scenes {

/// Writes the sound of a machine's engine.
///
/// unit:    from_seconds on the machine's clock; length_seconds of listening; pace from 0.1 to 1
struct SoundRequest {
    std::string rig;
    std::vector<sim::SetFault> faults;
    std::optional<std::string> sheet; ///< the run sheet's file; the rig's default run when absent
    double from_seconds = 0.0;
    double length_seconds = 10.0;
    double pace = 1.0;
    std::string file; ///< the WAV file to write
};

/// throws:  RequestError for an unknown rig, fault or silent pace, or a file that cannot be
///          written; AssetError when an asset or the run sheet is wrong
void write_sound(const SoundRequest& request);

} // namespace scenes
