#pragma once

#include <string>

// Where this person's own files lie on this platform.

namespace scenes {

/// The folder for what the program remembers; empty when the platform names none.
///
/// source:  XDG Base Directory Specification 0.8; on other systems the places their own
///          documentation names, from memory
std::string settings_folder();

/// The folder for what a person makes; empty when the platform names none.
std::string data_folder();

/// The folder for what can be worked out again; empty when the platform names none.
std::string cache_folder();

} // namespace scenes
