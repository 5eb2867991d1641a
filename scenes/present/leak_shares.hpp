#pragma once

#include <span>

namespace scenes {

/// Shares out what the floor has gained among the mouths it can have come from.
///
/// Flows are what the mouths let out, kg/s; those that run in count for nothing. A mouth whose flow
/// no reading tells is negative infinity: it gets what the others do not account for. Without any
/// flow and without such a mouth the first gets all.
///
/// shape:   flows and masses have one entry per mouth
/// unit:    gained in kg, from 0 on; seconds in which it came
void share_leak(double gained, double seconds, std::span<const double> flows,
                std::span<double> masses);

} // namespace scenes
