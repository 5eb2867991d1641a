#pragma once

#include <SFML/Graphics/RectangleShape.hpp>
#include <SFML/Graphics/RenderTexture.hpp>
#include <SFML/Graphics/RenderWindow.hpp>

#include <cstdint>
#include <span>
#include <vector>

struct ImDrawList;

namespace scenes {

/// An opaque panel of this frame and what it is drawn by.
struct PanelPicture {
    std::uint32_t id = 0;
    sf::FloatRect box;
    std::vector<ImDrawList*> lists;
};

/// Draws panels by way of a picture that is only drawn anew when something in the panel changed:
/// with software rendering this saves most of a panel's cost, since most do not change.
class PanelCache {
public:
    /// Draws the panels into the window. Returns how many were drawn anew.
    int draw(sf::RenderWindow& window, std::span<const PanelPicture> panels);

    /// Makes every panel be drawn anew: after a change of fonts.
    void forget() { known_.clear(); }

private:
    struct Known {
        std::uint32_t id;
        sf::FloatRect box;
        std::uint64_t hash;
    };

    bool make_room(sf::Vector2u size);
    bool refresh(const PanelPicture& panel);

    sf::RenderTexture picture_;
    bool is_usable_ = false;
    std::vector<Known> known_;
};

/// Draws the widget library's lists into the active target, at once and in order.
void draw_lists(std::span<ImDrawList* const> lists, sf::Vector2u size);

} // namespace scenes
