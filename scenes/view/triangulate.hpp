#pragma once

#include <SFML/System/Vector2.hpp>

#include <cstdint>
#include <span>
#include <vector>

namespace scenes {

/// Twice the signed area: positive when the points run clockwise on the screen (y downwards).
float twice_area(std::span<const sf::Vector2f> polygon);

/// Cuts simple polygons into triangles by clipping ears. Keeps its memory between polygons.
class Triangulator {
public:
    /// Indices into the polygon, three per triangle. Valid until the next call.
    ///
    /// valid: simple polygons; one that crosses itself still ends, with a wrong picture
    std::span<const std::uint32_t> triangles(std::span<const sf::Vector2f> polygon);

private:
    [[nodiscard]] bool is_ear(std::span<const sf::Vector2f> polygon, std::size_t at) const;

    std::vector<std::uint32_t> left_;
    std::vector<std::uint32_t> triangles_;
};

} // namespace scenes
