#pragma once

#include "scenes/bench/section_sheet.hpp"
#include "scenes/view/leader.hpp"

#include <string>
#include <utility>
#include <vector>

namespace scenes {

enum class NamePass {
    words, ///< words, leaders and scales: they stand still
    lines, ///< the leaders again, over what moves
};

/// A part's name and where it may stand.
struct Name {
    std::string name; ///< English, a literal that comes first between braces: a test looks for it
    std::string figure;
    Spot part;
    std::vector<Spot> words; ///< where the words may begin, best first; ink runs away from the part
};

/// Puts names where nothing is yet. Both passes come to the same places.
class NamePlacer {
public:
    /// `low` and `high` are the corners of the page.
    NamePlacer(const Sheet& sheet, Spot low, Spot high, NamePass pass);

    void keep_clear(Spot low, Spot high);

    /// Tries the name with its figure, then without; leaves it out when there is no room.
    void place(const Name& name);

private:
    void draw(const Leader& leader) const;
    [[nodiscard]] sf::FloatRect box(Spot low, Spot high) const;
    /// The box that draw_leader fills with words, level piece included.
    [[nodiscard]] sf::FloatRect box_of(const Leader& leader) const;
    [[nodiscard]] bool is_free(const Leader& leader, const sf::FloatRect& ink) const;

    const Sheet& sheet_;
    NamePass pass_;
    sf::FloatRect page_;
    std::vector<sf::FloatRect> taken_;
    std::vector<sf::FloatRect> words_;
    std::vector<std::pair<Point, Point>> lines_;
};

} // namespace scenes
