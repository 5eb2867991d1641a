#pragma once

#include "dual.hpp"

namespace sim {

// Smooth stand-ins for the corners of max, clamp, step and odd square root. Each takes the width
// within which it differs from the corner; the caller gives it from its own part's scale.
// They are built from + - * / and square roots only: IEEE 754 fixes those to the last bit.

/// Close to max(x, 0); zero for x <= -width, x for x >= width, quadratic between.
///
/// error:   at most width/4, at x = 0
template <class S>
S positive_part(const S& x, double width)
{
    const double v = value_of(x);
    if (v >= width) {
        return x;
    }
    if (v <= -width) {
        return x * 0.0;
    }
    const S shifted = x + width;
    return shifted * shifted * (0.25 / width);
}

/// What is there of an amount that must not count as negative: x^2 / (x + trace) for x > 0, else 0.
///
/// A flow in proportion to it ends with the amount, so that nothing is drawn from what is empty.
/// error:   less than `trace`
template <class S>
S amount_there(const S& x, double trace)
{
    if (value_of(x) <= 0.0) {
        return x * 0.0;
    }
    return x * x / (x + trace);
}

/// Near x where |x| is far above `trace`, x |x| / trace far below.
///
/// What decays in proportion to it dies away as 1/t in the end, and never comes to the numbers
/// below 1e-308 that a processor is slow with, as what halves for ever would. error:   less than
/// `trace`
template <class S>
S settling(const S& x, double trace)
{
    const S size = abs(x);
    return x * size / (size + trace);
}

/// Rises from 0 at x <= low to 1 at x >= high as 3 t^2 - 2 t^3.
template <class S>
S smooth_step(const S& x, double low, double high)
{
    const double v = value_of(x);
    if (v <= low) {
        return x * 0.0;
    }
    if (v >= high) {
        return x * 0.0 + 1.0;
    }
    const S t = (x - low) * (1.0 / (high - low));
    return t * t * (3.0 - 2.0 * t);
}

/// Close to the lesser of x and y; the quadratic corner is `width` wide to either side.
template <class S>
S smooth_min(const S& x, const S& y, double width)
{
    return x - positive_part(x - y, width);
}

/// Keeps x between low and high with rounded corners of the given width.
///
/// error:   at most width/4, at the two corners
template <class S>
S smooth_clamp(const S& x, double low, double high, double width)
{
    const double v = value_of(x);
    if (v <= low - width) {
        return x * 0.0 + low;
    }
    if (v >= high + width) { // apart, because the sum below would lose the bound of a far x
        return x * 0.0 + high;
    }
    return low + positive_part(x - low, width) - positive_part(x - high, width);
}

/// What is left of x outside a dead band of half width `band`: friction, a wet screen's bubble
/// pressure, a bead in a bore. Zero inside, x -+ band outside, with corners of the given width.
template <class S>
S dead_band(const S& x, const S& band, double width)
{
    return positive_part(x - band, width) - positive_part(-x - band, width);
}

/// Near |x|, with a rounded bottom: sqrt(x^2 + width^2).
template <class S>
S smooth_abs(const S& x, double width)
{
    return sqrt(x * x + width * width);
}

} // namespace sim
