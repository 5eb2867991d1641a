#pragma once

#include "sim/units.hpp"

#include <cstdint>
#include <map>
#include <string>

namespace shop {

/// What a reading is taken with: a cup, a gauge, a watch, an eye.
struct Instrument {
    std::string id;
    std::string title;
    sim::Unit unit;
    /// All in `unit`: what it can show, the step it is read to, and the standard deviation of what
    /// it shows about what there is, as `noise` plus `noise_share` of the value.
    double low = 0.0;
    double high = 0.0;
    double resolution = 0.0;
    double noise = 0.0;
    double noise_share = 0.0;

    [[nodiscard]] double in_unit(double si) const { return (si - unit.offset) / unit.factor; }
    [[nodiscard]] double in_si(double value) const { return value * unit.factor + unit.offset; }
    /// Standard deviation of what is shown where `value` is, both in its unit.
    [[nodiscard]] double deviation(double value) const;
    /// What it shows of a value in its unit, without noise: within its range, to its resolution.
    [[nodiscard]] double shown(double value) const;
    /// Places after the point that its resolution needs.
    [[nodiscard]] int decimals() const;
};

using Instruments = std::map<std::string, Instrument, std::less<>>;

/// All instruments of a folder of files.
///
/// throws:  AssetError naming file, pointer, what is wrong and what is allowed
Instruments load_instruments(const std::string& folder);

/// A number about 0 with standard deviation 1, the same for the same seed and place.
///
/// source:  G. Box, M. Muller, A note on the generation of random normal deviates, 1958
double normal_deviate(std::uint64_t seed, std::uint64_t place);

/// A seed that texts and numbers decide.
///
/// source:  FNV-1a, 64 bits (from memory)
std::uint64_t seed_of(std::string_view text, std::uint64_t from = 0xcbf29ce484222325ULL);

} // namespace shop
