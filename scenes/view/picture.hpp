#pragma once

#include "scenes/present/contrast.hpp"

#include <SFML/Graphics/Drawable.hpp>
#include <SFML/Graphics/Rect.hpp>
#include <SFML/Graphics/RenderTexture.hpp>

#include <initializer_list>

namespace scenes {

/// A part of the window that is drawn once and shown many times.
///
/// With software rendering triangles are dear and copying pixels is cheap: whatever stands still
/// for several frames (castings, charts between two samples) belongs in a picture.
class Picture {
public:
    /// Draws things into the picture, over an opaque ground.
    ///
    /// unit: box in pixels of the window, where `things` have their coordinates
    void take(const sf::FloatRect& box, Rgba ground,
              std::initializer_list<const sf::Drawable*> things);

    /// Copies the picture to its place in the window, over what is there.
    void show(sf::RenderTarget& target) const;

    /// False until taken, and for good on a machine that cannot draw off the screen; `show` does
    /// nothing then, and the things must be drawn directly.
    [[nodiscard]] bool is_usable() const { return is_usable_; }
    [[nodiscard]] const sf::FloatRect& box() const { return box_; }

private:
    sf::RenderTexture texture_;
    sf::FloatRect box_;
    bool is_usable_ = false;
};

} // namespace scenes
