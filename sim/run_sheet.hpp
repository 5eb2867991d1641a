#pragma once

#include "rig.hpp"

#include <span>

namespace sim {

/// The latest time of a command, and the longest run, s: ten days.
inline constexpr double longest_run = 10.0 * 86400.0;

/// Reads a run sheet and checks it against its rig.
///
/// {"format":1,"rig":"mower","faults":[{"id":"...","severity":1}],
///  "commands":[{"at":"5 s","do":"pull_cord"},{"at":"8 s","do":"set","control":"choke","to":0},
///              {"at":"9 s","do":"refuel","to":0.9},{"at":"9 s","do":"fault","id":"...","to":1},
///              {"at":"20 s","do":"leaps","to":1},{"at":"30 s","do":"hidden","what":"..."}]}
/// Work on a part: {"at":"40 s","do":"mend","part":"main_jet","parameter":"open","restore":true},
/// or in place of restore "scale", "add" or "set" with a number in SI units. A hidden fault is one
/// whose name is not to be read in the file (`veil.hpp`). Faults listed at the top are there from
/// the first tick. Both lists may be left out. Commands come out in the order of their times, those
/// of one tick in the order of the file; times count to the nearest tick. throws:  AssetError
/// naming file, pointer, what is wrong and what is allowed
RunSheet load_run_sheet(const std::string& path, const Rig& rig);
/// The id of the rig that a run sheet's file is for.
///
/// throws:  AssetError when the file names none, or one that there is not
std::string rig_of_run_sheet(const std::string& path);
/// The same from text; `name` stands for the file in messages.
RunSheet parse_run_sheet(const std::string& text, const std::string& name, const Rig& rig);

/// A run sheet of a rig as JSON text that `parse_run_sheet` reads back equal.
///
/// Faults whose ids are in `hidden` are not named in it.
/// valid:   commands in the order of their times, each one that the rig knows
std::string write_run_sheet(const RunSheet& sheet, const Rig& rig,
                            std::span<const std::string> hidden = {});

/// Writes it to a file, replacing the file in one step.
///
/// throws:  RequestError when it cannot be written; the old file is then untouched
void save_run_sheet(const RunSheet& sheet, const Rig& rig, const std::string& path,
                    std::span<const std::string> hidden = {});

} // namespace sim
