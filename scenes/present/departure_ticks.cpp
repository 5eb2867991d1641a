#include "scenes/present/departure_ticks.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace scenes {

DepartureTicks::DepartureTicks(const BenchRun& run, sim::Tick after, sim::Tick by,
                               std::vector<Sought> sought)
    : run_(run), after_(std::max<sim::Tick>(0, after)), by_(by), sought_(std::move(sought))
{
    for (Sought& each : sought_) {
        each.left = std::min(after + 1, by);
    }
    run_.restart_before(after_);
}

bool DepartureTicks::work(const std::function<bool()>& has_leave)
{
    do {
        const sim::Tick now = run_.machine().now();
        if (now >= by_) {
            return true;
        }
        if (now < after_) {
            run_.advance_some(after_);
        } else {
            run_.advance_some(now + 1);
            run_.look();
            compare();
        }
    } while (has_leave());
    return run_.machine().now() >= by_;
}

void DepartureTicks::compare()
{
    const sim::Tick now = run_.machine().now();
    for (Sought& each : sought_) {
        const double difference = run_.gauges()[each.reading] - run_.twin_gauges()[each.reading];
        if (!(std::abs(difference) > each.band)) {
            each.left = std::min(now + 1, by_); // at the later sample it is out
        }
    }
}

} // namespace scenes
