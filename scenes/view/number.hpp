#pragma once

#include "scenes/present/phrase.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <string>
#include <vector>

// Numbers as they stand on scales and in readings. No SFML here, and no locale but the language's
// decimal sign.

namespace scenes {

/// A number with a fixed count of decimals and a real minus sign; never "-0.0".
inline std::string fixed_text(double value, int decimals)
{
    if (!std::isfinite(value)) {
        return "\u2013"; // an en dash stands for "no value"
    }
    std::array<char, 64> digits{};
    const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), std::abs(value),
                                   std::chars_format::fixed, decimals);
    if (end.ec != std::errc{}) {
        return "\u2013";
    }
    std::string text(digits.data(), end.ptr);
    const bool is_zero = text.find_first_not_of("0.") == std::string::npos;
    std::ranges::replace(text, '.', decimal_sign());
    return value < 0.0 && !is_zero ? "\u2212" + text : text;
}

/// Marks of a scale at round values.
struct Ticks {
    std::vector<double> values;
    double step = 1.0;
    int decimals = 0; ///< that the labels need
};

/// Marks at multiples of 1, 2 or 5 times a power of ten, inside the range and at most `most` many.
///
/// valid: low < high, most at least 2
inline Ticks nice_ticks(double low, double high, int most)
{
    const double rough = (high - low) / most;
    const double power = std::pow(10.0, std::floor(std::log10(rough)));
    Ticks ticks;
    ticks.step = 10.0 * power;
    for (const double factor : {1.0, 2.0, 5.0}) {
        if (factor * power >= rough * (1.0 - 1e-9)) {
            ticks.step = factor * power;
            break;
        }
    }
    ticks.decimals = std::max(0, static_cast<int>(-std::floor(std::log10(ticks.step) + 1e-9)));
    const double slack = ticks.step * 1e-6;
    for (double k = std::ceil((low - slack) / ticks.step); k * ticks.step <= high + slack; ++k) {
        ticks.values.push_back(k * ticks.step);
    }
    return ticks;
}

} // namespace scenes
