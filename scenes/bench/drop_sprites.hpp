#pragma once

#include "scenes/view/mesh.hpp"
#include "scenes/view/theme.hpp"

#include <SFML/Graphics/Texture.hpp>

#include <optional>
#include <string_view>
#include <vector>

namespace scenes {

/// Drops as pieces of one small picture: two triangles each, all in one call.
///
/// A drop of discs takes some eighty triangles, most smaller than a pixel; with software rendering
/// they cost more than all the rest of the drawing.
class DropSprites {
public:
    /// Larger ones, in pixels, are few and belong in a mesh.
    static constexpr float largest = 12.0F;

    /// Forgets the drops; draws the picture anew when colours or scale have changed.
    void begin(const Look& look);
    /// Whether there is a picture: without one drops belong in a mesh.
    [[nodiscard]] bool is_usable() const { return is_usable_; }
    /// valid:   radius from 1 pixel to `largest`
    ///
    /// back:    unit vector to where a falling drop came from; none for one that lies
    void add(Point at, float radius, std::optional<Point> back);
    void draw(sf::RenderTarget& target) const;

private:
    void paint(const Look& look);

    sf::Texture picture_;
    std::vector<sf::Vertex> vertices_;
    std::string_view theme_id_;
    float scale_ = 0.0F;
    bool is_usable_ = false;
};

} // namespace scenes
