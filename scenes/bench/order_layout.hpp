#pragma once

#include "scenes/view/theme.hpp"

#include <SFML/Graphics/Rect.hpp>
#include <SFML/System/Vector2.hpp>

namespace scenes {

/// What a work order can show; in a small window one page at a time.
enum class OrderPage { order, machine, sheet, checks, repairs, suspects, finding, marks };

/// Where everything of a work order lies, in pixels. A box without height is not shown.
///
/// A window with room shows the customer's card over the machine at the left, the job sheet in the
/// middle, and what the page chooses at the right.
struct OrderLayout {
    bool is_compact = false;
    sf::FloatRect pages;
    sf::FloatRect card;
    sf::FloatRect machine;
    sf::FloatRect sheet;
    sf::FloatRect work;
    sf::FloatRect status;
};

/// A small window has no line of messages unless there is something to say.
OrderLayout lay_out_order(sf::Vector2f window, const Look& look, OrderPage page, bool has_message);

/// Where the shelf's list and the card of the order chosen in it lie.
struct ShelfLayout {
    bool is_compact = false;
    sf::FloatRect list;
    sf::FloatRect card;
};
ShelfLayout lay_out_shelf(sf::Vector2f window, const Look& look);

} // namespace scenes
