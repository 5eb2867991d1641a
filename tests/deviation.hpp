#pragma once

#include <cmath>

/// How far `got` is from `wanted`, as a share of `wanted`.
inline double deviation(double got, double wanted)
{
    return std::abs(got - wanted) / std::abs(wanted);
}
