#pragma once

#include "scenes/present/phrase.hpp"

#include <span>
#include <string>
#include <variant>
#include <vector>

namespace shop {

/// Titles of the machine's or the workshop's data, as English has them.
using Titles = std::vector<std::string>;

/// A sentence that says why, kept apart from its figures and titles so that it can be read in any
/// language.
struct Reason {
    scenes::Phrase sentence;                            ///< with {0}, {1}... for the pieces
    std::vector<std::variant<double, Titles>> pieces{}; ///< four at most
};

/// The sentences one after the other, in the chosen language; figures are rounded to whole ones.
std::string text_of(std::span<const Reason> reasons);

} // namespace shop
