#include "scenes/present/leak_shares.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace scenes {

void share_leak(double gained, double seconds, std::span<const double> flows,
                std::span<double> masses)
{
    std::ranges::fill(masses, 0.0);
    if (gained <= 0.0 || flows.empty()) {
        return;
    }
    double told = 0.0;
    std::size_t untold = flows.size();
    std::size_t last = 0; // takes what rounding leaves
    for (std::size_t i = 0; i < flows.size(); ++i) {
        if (std::isinf(flows[i])) {
            untold = i;
        } else if (flows[i] > 0.0) {
            told += flows[i] * seconds;
            last = i;
        }
    }
    // Flows are looked at once a frame: a small difference tells nothing about another mouth.
    constexpr double told_well = 0.1;
    const bool has_untold = untold < flows.size() && gained > told * (1.0 + told_well);
    if (has_untold) {
        last = untold;
    }
    const double factor = has_untold ? 1.0 : told > 0.0 ? gained / told : 0.0;
    double given = 0.0;
    for (std::size_t i = 0; i < flows.size(); ++i) {
        if (i != last && std::isfinite(flows[i]) && flows[i] > 0.0) {
            masses[i] = flows[i] * seconds * factor;
            given += masses[i];
        }
    }
    masses[last] = std::max(0.0, gained - given);
}

} // namespace scenes
