#pragma once

#include <cstdint>

namespace scenes {

/// The number at a place of the endless sequence that a seed stands for, 0 to below 1.
///
/// source:  finaliser of SplitMix64, G. Steele et al., Fast Splittable Pseudorandom Number
///          Generators, 2014
inline double chance(std::uint64_t seed, std::uint64_t place)
{
    std::uint64_t x = seed + (place + 1) * 0x9e3779b97f4a7c15ULL;
    x = (x ^ (x >> 30U)) * 0xbf58476d1ce4e5b9ULL;
    x = (x ^ (x >> 27U)) * 0x94d049bb133111ebULL;
    x ^= x >> 31U;
    return static_cast<double>(x >> 11U) * 0x1.0p-53;
}

} // namespace scenes
