#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <string_view>

// The text of a file people wrote, hostile or not, as JSON values. JsonNode is the way to read
// them.

namespace sim {

/// The text of a file, no more of it than shows that it is too long.
///
/// throws:  AssetError when it cannot be read
std::string read_json_file(const std::string& path);

/// The value that a text stands for; `name` stands for the file in messages.
///
/// throws:  AssetError when it is over 4 MB, is not JSON (with line and column), is nested over 64
///          levels deep, gives a key twice or holds a number too large
nlohmann::json parse_json(const std::string& text, const std::string& name);

/// A key as it stands in a JSON pointer.
///
/// source:  P. Bryan, K. Zyp, M. Nottingham, RFC 6901, 2013, section 3
std::string pointer_step(std::string_view key);

/// The pointer for a message, short and on one line whatever the keys are.
std::string shown_pointer(std::string_view pointer);

} // namespace sim
