#pragma once

#include "scenes/view/vector_maths.hpp"

#include <algorithm>
#include <cmath>
#include <span>
#include <utility>
#include <vector>

namespace scenes {

/// A family of parallel lines.
///
/// unit: angle in degrees, clockwise on the screen from the x axis; gap in pixels
struct Rows {
    float angle = 0.0F;
    float gap = 8.0F;
    sf::Vector2f origin; ///< a point that one row goes through; moves with the drawing
};

/// Clips parallel lines to simple polygons. SFML has no stencil, so hatching is cut by hand.
class RowScanner {
public:
    /// Calls `use(from, to, row)` for every piece of a row inside the polygon, row being the
    /// number counted from the origin.
    template <class Use>
    void scan(std::span<const sf::Vector2f> polygon, const Rows& rows, Use use)
    {
        constexpr float degree = 3.14159265F / 180.0F;
        const sf::Vector2f along{std::cos(rows.angle * degree), std::sin(rows.angle * degree)};
        const sf::Vector2f across = turned(along);
        const float shift = dot_product(rows.origin, across);
        const auto [low, high] = extent(polygon, across);
        const int first = static_cast<int>(std::ceil((low - shift) / rows.gap));
        const int last = static_cast<int>(std::floor((high - shift) / rows.gap));
        for (int row = first; row <= last; ++row) {
            const float height = shift + static_cast<float>(row) * rows.gap;
            cut(polygon, along, across, height);
            for (std::size_t i = 0; i + 1 < cuts_.size(); i += 2) {
                use(along * cuts_[i] + across * height, along * cuts_[i + 1] + across * height,
                    row);
            }
        }
    }

private:
    static std::pair<float, float> extent(std::span<const sf::Vector2f> polygon,
                                          sf::Vector2f across)
    {
        float low = 1e9F;
        float high = -1e9F;
        for (const sf::Vector2f point : polygon) {
            low = std::min(low, dot_product(point, across));
            high = std::max(high, dot_product(point, across));
        }
        return {low, high};
    }

    /// Where the outline crosses one row, in order along it.
    void cut(std::span<const sf::Vector2f> polygon, sf::Vector2f along, sf::Vector2f across,
             float height)
    {
        cuts_.clear();
        for (std::size_t i = 0; i < polygon.size(); ++i) {
            const sf::Vector2f a = polygon[i];
            const sf::Vector2f b = polygon[(i + 1) % polygon.size()];
            const float above_a = dot_product(a, across) - height;
            const float above_b = dot_product(b, across) - height;
            if ((above_a < 0.0F) != (above_b < 0.0F)) {
                const float share = above_a / (above_a - above_b);
                cuts_.push_back(dot_product(a, along) + dot_product(b - a, along) * share);
            }
        }
        std::sort(cuts_.begin(), cuts_.end());
    }

    std::vector<float> cuts_;
};

} // namespace scenes
