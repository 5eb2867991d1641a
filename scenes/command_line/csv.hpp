#pragma once

#include <string>
#include <string_view>
#include <vector>

// Comma-separated values as RFC 4180 has them.

namespace scenes {

/// A cell, in quotes when it holds a comma, a quote or a line end.
///
/// source:  Y. Shafranovich, RFC 4180, 2005, section 2
std::string csv_cell(std::string_view text);

/// A line of cells with its CRLF.
std::string csv_line(const std::vector<std::string>& cells);

/// A number of nine digits at most; empty for one that is not finite, as there is nothing to read.
std::string csv_number(double value);

} // namespace scenes
