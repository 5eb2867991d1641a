#include "scenes/shop/search_quality.hpp"

#include <algorithm>

namespace shop {
namespace {

/// A check after a repair, of those the machine is judged by.
bool is_verifying(const Order& order, const Policy& policy, const std::string& check)
{
    return policy.has_repaired() && std::ranges::find(order.solved, check) != order.solved.end();
}

double share_of_best(const Policy& policy, const std::string& check)
{
    if (policy.is_clear()) {
        return 0.0; // there was nothing left to find
    }
    const auto worths = policy.worths();
    const auto own =
        std::ranges::find_if(worths, [&](const Worth& worth) { return worth.check->id == check; });
    if (own == worths.end()) {
        return 0.0; // done already, with nothing changed since
    }
    const double best = worths.front().rate();
    return best > 0.0 ? own->rate() / best : 0.0;
}

} // namespace

SearchQuality quality_of_search(const Order& order, const Table& table,
                                const std::vector<JobLine>& lines)
{
    Policy policy(order, table);
    SearchQuality quality;
    double told = 0.0;
    double weight = 0.0;
    for (const JobLine& line : lines) {
        if (const auto* done = std::get_if<DoCheck>(&line.action);
            done != nullptr && !is_verifying(order, policy, done->check)) {
            const double share = share_of_best(policy, done->check);
            const double minutes = std::max(line.minutes, 0.1); // a look takes some time, too
            told += share * minutes;
            weight += minutes;
            ++quality.checks;
            if (share < quality.least_share) {
                quality.least_share = share;
                quality.least = order.workshop->find_check(done->check)->title;
            }
        }
        policy.note(line);
    }
    quality.share = weight > 0.0 ? told / weight : 0.0;
    return quality;
}

} // namespace shop
