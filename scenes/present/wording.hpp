#pragma once

#include <string>
#include <string_view>

namespace scenes {

/// What the model or the system says about a trouble, in the chosen language.
///
/// The model says it in English, to a terminal as well as to a window. Each of its sentences has a
/// pattern here, {0} for what varies; what varies is worded in turn. What assets say, alone or as a
/// list with commas and an "and", is read in the language; names in quotes and anything without a
/// pattern stay as they are.
std::string worded(std::string_view message);

} // namespace scenes
