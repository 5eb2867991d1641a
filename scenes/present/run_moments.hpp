#pragma once

#include "sim/simulator.hpp"

#include <algorithm>
#include <memory>
#include <optional>
#include <vector>

namespace scenes {

/// Where a machine, its twin and their gauges stand.
struct RunMoment {
    sim::MachineMoment machine;
    std::optional<sim::MachineMoment> twin; ///< absent while the twin is one with the machine
    bool has_twin = true;
    sim::Tick gauged = 0;
    std::vector<float> gauges;
    std::vector<float> twin_gauges;

    /// unit:    bytes
    [[nodiscard]] std::size_t size() const
    {
        return sizeof(RunMoment) + machine.size() + (twin ? twin->size() : 0) +
               (gauges.size() + twin_gauges.size()) * sizeof(float);
    }
};

/// The moments that a run can be put back to. Copies share them.
class RunMoments {
public:
    /// Takes a moment after all others; one of the same tick takes the other's place.
    void keep(RunMoment moment)
    {
        if (!moments_.empty() && moments_.back()->machine.at() == moment.machine.at()) {
            moments_.pop_back();
        }
        moments_.push_back(std::make_shared<const RunMoment>(std::move(moment)));
        if (moments_.size() > most) {
            thin_out();
        }
    }

    /// The latest moment not after a tick.
    ///
    /// valid:   there is one: the first of all is never dropped
    [[nodiscard]] const RunMoment& before(sim::Tick at) const
    {
        const auto later = std::ranges::upper_bound(
            moments_, at, {}, [](const auto& moment) { return moment->machine.at(); });
        return later == moments_.begin() ? **later : **(later - 1);
    }

    void truncate(sim::Tick at)
    {
        while (moments_.size() > 1 && moments_.back()->machine.at() > at) {
            moments_.pop_back();
        }
    }

    [[nodiscard]] std::size_t count() const { return moments_.size(); }
    /// unit:    bytes, those shared with copies included
    [[nodiscard]] std::size_t size() const
    {
        std::size_t sum = 0;
        for (const auto& moment : moments_) {
            sum += moment->size();
        }
        return sum;
    }

private:
    /// Ten minutes of a trimmer at full speed, at the work between two moments that a run keeps.
    static constexpr std::size_t most = 8000;

    /// Drops every other moment of the older half: going back there takes longer.
    void thin_out()
    {
        std::size_t kept = 1;
        for (std::size_t i = 1; i < moments_.size(); ++i) {
            if (i % 2 == 0 || i > moments_.size() / 2) {
                moments_[kept++] = moments_[i];
            }
        }
        moments_.resize(kept);
    }

    std::vector<std::shared_ptr<const RunMoment>> moments_;
};

} // namespace scenes
