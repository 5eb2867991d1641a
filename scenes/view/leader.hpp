#pragma once

#include "scenes/view/mesh.hpp"
#include "scenes/view/text.hpp"
#include "scenes/view/theme.hpp"

#include <string_view>

namespace scenes {

/// A name that points at a part: a dot on the part, a thin line, a short level piece, the words.
struct Leader {
    Point part;
    Point words; ///< where the level piece begins; the words stand beyond it, away from the part
    std::string_view name;
    std::string_view figure = {}; ///< a dimension after the name, in the second ink
    bool is_strong = false;       ///< pointed at: bold words, accent line
};

/// Draws it and returns the box of the words.
sf::FloatRect draw_leader(Mesh& mesh, Text& text, const Look& look, const Leader& leader);

} // namespace scenes
