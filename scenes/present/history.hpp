#pragma once

#include "scenes/view/series.hpp"
#include "sim/command.hpp"

#include <cmath>
#include <span>
#include <vector>

namespace scenes {

/// The readings of a run so far: the last minutes finely, the last hours coarsely.
class History {
public:
    static constexpr sim::Tick fine_ticks = 20;
    static constexpr sim::Tick coarse_ticks = 1000;

    explicit History(std::size_t readings)
        : fine_(readings, Series(fine_ticks * sim::tick_length, fine_count)),
          coarse_(readings, Series(coarse_ticks * sim::tick_length, coarse_count))
    {
    }

    /// Takes the readings at a tick.
    ///
    /// valid:   called for every multiple of `fine_ticks`, from zero on, in order
    void record(sim::Tick at, std::span<const double> values)
    {
        for (std::size_t i = 0; i < fine_.size(); ++i) {
            fine_[i].append(static_cast<float>(values[i]));
            if (at % coarse_ticks == 0) {
                coarse_[i].append(static_cast<float>(values[i]));
            }
        }
    }

    /// A reading's samples, fit for showing the last seconds of the run.
    [[nodiscard]] const Series& series(std::size_t reading, double last_seconds) const
    {
        return last_seconds <= fine_seconds ? fine_[reading] : coarse_[reading];
    }

private:
    static constexpr std::size_t fine_count = 15000;
    static constexpr std::size_t coarse_count = 18000;
    static constexpr double fine_seconds = fine_count * fine_ticks * sim::tick_length;

    std::vector<Series> fine_;
    std::vector<Series> coarse_;
};

} // namespace scenes
