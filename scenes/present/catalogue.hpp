#pragma once

#include <functional>
#include <map>
#include <string>

namespace scenes {

/// The texts of one language.
struct Catalogue {
    std::string id;                                          ///< its file's name
    std::string title;                                       ///< in the language itself
    char decimal_sign = '.';                                 ///< or a comma
    std::map<std::string, std::string, std::less<>> phrases; ///< by their English
};

/// Reads a language's file.
///
/// throws:  AssetError when it is no catalogue, or a text has other places to fill than its English
Catalogue load_catalogue(const std::string& path);

/// Which places to fill a text has: {0}, {1}, in order and once each.
std::string places_of(std::string_view text);

} // namespace scenes
