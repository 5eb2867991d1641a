#pragma once

#include "scenes/view/theme.hpp"

#include <SFML/Graphics/Rect.hpp>
#include <SFML/System/Vector2.hpp>

#include <array>

namespace scenes {

/// What the bench can show; in a small window one page at a time.
enum class Page { machine, grade, charts, controls, faults, run, changes };

/// Where everything on the bench lies, in pixels. A box without height is not shown.
///
/// A window with room shows drawing, grade line and charts at the left and a panel at the right
/// whose part the page chooses. In a small one, or with large text, a row of pages at the top
/// chooses what fills the rest.
struct BenchLayout {
    bool is_compact = false;
    bool is_tall = false; ///< the panel has room for controls and faults at once
    sf::FloatRect pages;
    sf::FloatRect panel;
    sf::FloatRect grade;
    sf::FloatRect section;
    sf::FloatRect standpipes;
    std::array<sf::FloatRect, 3> charts;
    sf::FloatRect status;
};

/// What the layout depends on besides sizes.
struct BenchNeeds {
    float status_height = 0.0F;  ///< pixels that the line of messages takes
    float row_width = 0.0F;      ///< pixels of the widest row of words in the panel
    std::size_t chart_lines = 1; ///< the most lines any chart has
    std::size_t standpipes = 4;  ///< none: neither they nor the grade line are shown
};

BenchLayout lay_out_bench(sf::Vector2f window, const Look& look, Page page,
                          const BenchNeeds& needs);

/// Width that the line of messages has, whatever its height.
float status_width(sf::Vector2f window, const Look& look, float row_width);

/// Where the dial that tips the machine stands: at the drawing's upper left.
sf::FloatRect tilt_dial_box(const sf::FloatRect& section, const Look& look);

} // namespace scenes
