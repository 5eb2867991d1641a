#include "scenes/view/triangulate.hpp"

#include "scenes/view/vector_maths.hpp"

#include <algorithm>
#include <numeric>

namespace scenes {

float twice_area(std::span<const sf::Vector2f> polygon)
{
    float sum = 0.0F;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        sum += cross_product(polygon[i], polygon[(i + 1) % polygon.size()]);
    }
    return sum;
}

bool Triangulator::is_ear(std::span<const sf::Vector2f> polygon, std::size_t at) const
{
    const std::size_t count = left_.size();
    const std::uint32_t ia = left_[(at + count - 1) % count];
    const std::uint32_t ib = left_[at];
    const std::uint32_t ic = left_[(at + 1) % count];
    const sf::Vector2f a = polygon[ia];
    const sf::Vector2f b = polygon[ib];
    const sf::Vector2f c = polygon[ic];
    if (cross_product(b - a, c - b) <= 0.0F) {
        return false;
    }
    return std::none_of(left_.begin(), left_.end(), [&](std::uint32_t index) {
        const sf::Vector2f p = polygon[index];
        if (index == ia || index == ib || index == ic || p == a || p == b || p == c) {
            return false;
        }
        return cross_product(b - a, p - a) >= 0.0F && cross_product(c - b, p - b) >= 0.0F &&
               cross_product(a - c, p - c) >= 0.0F;
    });
}

std::span<const std::uint32_t> Triangulator::triangles(std::span<const sf::Vector2f> polygon)
{
    triangles_.clear();
    left_.resize(polygon.size());
    std::iota(left_.begin(), left_.end(), 0U);
    if (twice_area(polygon) < 0.0F) {
        std::reverse(left_.begin(), left_.end());
    }
    std::size_t at = 0;
    std::size_t failures = 0;
    while (left_.size() > 3) {
        const std::size_t count = left_.size();
        // A whole round without an ear means doubled or crossing points: cut anyway, so as to end.
        if (is_ear(polygon, at) || failures > count) {
            triangles_.insert(triangles_.end(), {left_[(at + count - 1) % count], left_[at],
                                                 left_[(at + 1) % count]});
            left_.erase(left_.begin() + static_cast<std::ptrdiff_t>(at));
            failures = 0;
        } else {
            ++at;
            ++failures;
        }
        at %= left_.size();
    }
    if (left_.size() == 3) {
        triangles_.insert(triangles_.end(), left_.begin(), left_.end());
    }
    return triangles_;
}

} // namespace scenes
