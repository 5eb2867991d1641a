#pragma once

#include "scenes/present/settings.hpp"
#include "scenes/present/without.hpp"

#include <string>
#include <vector>

// The settings on disk. A file that was damaged is kept beside the new one, never overwritten.

namespace scenes {

/// The file of this person's settings; empty when the platform has no place for it.
std::string settings_path();

struct LoadedSettings {
    Settings settings;
    std::vector<Without> without; ///< empty when all is well, or nothing was there before
    bool may_save = true;         ///< false when a damaged file could not be put aside
};

/// The settings in a file; what it lacks is as in `usual`.
///
/// A file that cannot be made sense of, wholly or in part, is renamed, and what made sense is kept.
LoadedSettings load_settings(const std::string& path, const Settings& usual);

/// throws:  RequestError when the file cannot be written
void save_settings(const Settings& settings, const std::string& path);

} // namespace scenes
