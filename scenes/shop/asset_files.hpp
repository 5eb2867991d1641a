#pragma once

#include "sim/json_reader.hpp"

#include <string>
#include <vector>

// What the readers of the workshop's files share.

namespace shop {

/// The .json files of a folder, sorted; none when there is no such folder.
std::vector<std::string> json_files(const std::string& folder);

/// All of a file; nothing of one that cannot be read.
std::string file_text(const std::string& path);

/// A file of format 1 whose "id" is its own name.
///
/// throws:  AssetError
sim::JsonNode load_named(const std::string& path);

/// The unit that a node names, of whatever dimension.
///
/// throws:  AssetError
sim::Unit unit_named(const sim::JsonNode& node);

/// The same by its name; a pure number's when it is none we know.
sim::Unit unit_of(std::string_view name);

/// The texts of a list under a key; none when the key is left out.
std::vector<std::string> texts_at(const sim::JsonNode& node, std::string_view key);

} // namespace shop
