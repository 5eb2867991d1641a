#pragma once

#include "scenes/shop/policy.hpp"

#include <string>

namespace shop {

/// How well somebody searched for the cause, whatever came of it.
struct SearchQuality {
    std::size_t checks = 0; ///< done to find the cause, not to verify a repair
    /// What they were expected to tell for their minutes, as a share of what the best check at each
    /// time would have told; a mean over minutes.
    ///
    /// valid:   0 to 1, where there were checks
    double share = 0.0;
    std::string least; ///< title of the one that told least; empty where each was the best
    double least_share = 1.0;
};

SearchQuality quality_of_search(const Order& order, const Table& table,
                                const std::vector<JobLine>& lines);

} // namespace shop
