#pragma once

#include <algorithm>
#include <limits>

namespace scenes {

/// The least and the greatest of some values; empty while low is above high.
struct Extremes {
    float low = std::numeric_limits<float>::infinity();
    float high = -std::numeric_limits<float>::infinity();

    [[nodiscard]] bool is_empty() const { return low > high; }
    void include(float value)
    {
        low = std::min(low, value);
        high = std::max(high, value);
    }
    void include(const Extremes& other)
    {
        low = std::min(low, other.low);
        high = std::max(high, other.high);
    }
};

} // namespace scenes
