#pragma once

#include "scenes/app.hpp"
#include "sim/command.hpp"

#include <optional>
#include <string>
#include <vector>

// The values of options. All throw RequestError that names the option, what is wrong and what is
// allowed.

namespace scenes {

/// A time from `least` seconds to ten days, in seconds.
double read_duration(const std::string& option, const std::string& text, double least);

/// A temperature from -40 to 60 degC, in kelvin.
double read_ambient(const std::string& text);

/// Faults as ID[=SEVERITY], the severity 1 where it is left out, each fault once.
std::vector<sim::SetFault> read_faults(const std::vector<std::string>& texts);

/// A number of threads from 1 to 256; 0 for none given.
unsigned read_threads(const std::optional<std::string>& text);

/// A pace at which an engine is heard: a share of real time from 0.1 to 1.
double read_pace(const std::string& text);

/// Paper or blackboard.
Ground read_theme(const std::string& text);

/// WIDTHxHEIGHT in pixels.
PixelSize read_size(const std::string& text);

/// A scale in per cent, from 100 to 200.
int read_scale(const std::string& text);

/// The id of a language there is.
std::string read_language(const std::string& text);

/// si or us.
UnitSet read_units(const std::string& text);

} // namespace scenes
