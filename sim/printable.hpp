#pragma once

#include <string>
#include <string_view>

namespace sim {

/// The text on one line and harmless to a terminal.
///
/// Control characters, characters that turn the direction of writing or break a line, and bytes
/// that are not UTF-8 come out as escapes such as \x1b and \u202e.
std::string printable(std::string_view text);

/// The text in quotes, printable, cut short after 60 bytes or so.
std::string in_quotes(std::string_view text);

} // namespace sim
