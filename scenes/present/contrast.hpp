#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace scenes {

/// A screen colour: sRGB with straight (not premultiplied) alpha. Knows nothing of any window, so
/// that tests can judge colours without a display.
struct Rgba {
    std::uint8_t red = 0;
    std::uint8_t green = 0;
    std::uint8_t blue = 0;
    std::uint8_t alpha = 255;
    constexpr bool operator==(const Rgba&) const = default;
};

/// The same colour at another opacity.
constexpr Rgba with_alpha(Rgba colour, std::uint8_t alpha)
{
    colour.alpha = alpha;
    return colour;
}

/// A colour on the straight line between two, in sRGB values.
///
/// unit: share 0 gives `a`, 1 gives `b`
constexpr Rgba mix(Rgba a, Rgba b, double share)
{
    const auto blend = [share](std::uint8_t x, std::uint8_t y) {
        return static_cast<std::uint8_t>(x + (y - x) * share + 0.5);
    };
    return {blend(a.red, b.red), blend(a.green, b.green), blend(a.blue, b.blue),
            blend(a.alpha, b.alpha)};
}

/// What is seen when `top` lies on an opaque ground.
constexpr Rgba over(Rgba top, Rgba ground)
{
    const double share = top.alpha / 255.0;
    return with_alpha(mix(with_alpha(ground, 255), with_alpha(top, 255), share), 255);
}

/// Relative luminance of an opaque colour: 0 for black, 1 for white.
///
/// source: W3C, Web Content Accessibility Guidelines 2.2, definition of relative luminance
inline double relative_luminance(Rgba colour)
{
    const auto linear = [](std::uint8_t channel) {
        const double share = channel / 255.0;
        return share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear(colour.red) + 0.7152 * linear(colour.green) +
           0.0722 * linear(colour.blue);
}

/// Contrast of two opaque colours: 1 for equal ones, 21 for black on white.
///
/// source: W3C, Web Content Accessibility Guidelines 2.2, definition of contrast ratio
inline double contrast_ratio(Rgba a, Rgba b)
{
    const double la = relative_luminance(a);
    const double lb = relative_luminance(b);
    return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

} // namespace scenes
