#pragma once

#include "scenes/present/bench_run.hpp"

#include <functional>
#include <vector>

namespace scenes {

/// Finds the very ticks at which readings left their twin's band, by having machine and twin do
/// the time between two samples again, tick by tick, from the moment kept before it.
class DepartureTicks {
public:
    /// A reading that is within its band at one sample and out of it at the next.
    struct Sought {
        std::size_t reading = 0;
        double band = 0.0;  ///< SI
        sim::Tick left = 0; ///< found: the first tick out of the band, without a break
    };

    /// Looks between two samples: after a tick, and at another at the latest.
    DepartureTicks(const BenchRun& run, sim::Tick after, sim::Tick by, std::vector<Sought> sought);

    /// Works as long as it has leave, and at least a little; true when all are found.
    ///
    /// throws:  NumericsError when the equations cannot be carried on
    bool work(const std::function<bool()>& has_leave);

    [[nodiscard]] const std::vector<Sought>& sought() const { return sought_; }

private:
    void compare();

    BenchRun run_; ///< done again
    sim::Tick after_;
    sim::Tick by_;
    std::vector<Sought> sought_;
};

} // namespace scenes
