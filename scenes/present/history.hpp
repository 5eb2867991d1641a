#pragma once

#include "scenes/view/series.hpp"
#include "sim/command.hpp"

#include <array>
#include <span>

namespace scenes {

/// The readings of a run so far: the last seconds in full detail, the last ten minutes finely, ten
/// days coarsely. Copies share what they have in common.
///
/// Where readings swing with every turn of the engine only the finest samples show the swing; the
/// others are what slow gauges say.
class History {
public:
    static constexpr sim::Tick swift_ticks = 2;
    static constexpr sim::Tick fine_ticks = 20;
    static constexpr sim::Tick coarse_ticks = 1000;

    explicit History(std::size_t readings)
        : stores_{store(readings, swift_ticks, 10.0), store(readings, fine_ticks, fine_seconds),
                  store(readings, coarse_ticks, 4.0 * 3600.0),
                  store(readings, 60000, 10.0 * 86400.0)}
    {
    }

    /// Takes readings as they are at a tick, for machines whose readings swing. Where samples were
    /// left out, those before are forgotten.
    ///
    /// valid:   a multiple of `swift_ticks` after the last one
    void record_swift(sim::Tick at, std::span<const double> values)
    {
        const auto sample = static_cast<std::size_t>(at / swift_ticks);
        if (sample > stores_[0].end()) {
            stores_[0].begin_at(sample);
        }
        put(0, at, values);
        has_swift_ = true;
    }
    /// Takes the readings at a tick into every store that has a sample there; into the coarse ones
    /// only when a long time is passed over.
    ///
    /// valid:   a multiple of `fine_ticks` after the last one
    void record(sim::Tick at, std::span<const double> values, bool is_coarse = false)
    {
        for (std::size_t i = is_coarse ? 2 : 1; i < stores_.size(); ++i) {
            if (at % step(i) == 0) {
                put(i, at, values);
            }
        }
    }
    /// Forgets what was taken after a tick.
    void truncate(sim::Tick at)
    {
        for (std::size_t i = 0; i < stores_.size(); ++i) {
            stores_[i].truncate(static_cast<std::size_t>(at / step(i)) + 1);
        }
    }

    /// The store that shows a span of time best: the finest that goes back so far and has no more
    /// samples in it than a chart can use.
    ///
    /// unit:    seconds
    [[nodiscard]] const SampleStore& store_for(double from, double to) const
    {
        const double wanted = std::max(0.0, from);
        const double end = static_cast<double>(stores_[1].end()) * stores_[1].interval();
        for (std::size_t i = has_swift_ ? 0 : 1; i + 1 < stores_.size(); ++i) {
            const SampleStore& each = stores_[i];
            const double span = static_cast<double>(most_samples) * each.interval();
            const double begins = static_cast<double>(each.first()) * each.interval();
            const double ends = static_cast<double>(each.end()) * each.interval();
            // Swift samples are left out while the engine leaps.
            const bool is_behind = ends + stores_[1].interval() < std::min(to, end);
            if (to - from <= span && begins <= wanted && each.end() > each.first() && !is_behind) {
                return each;
            }
        }
        return stores_.back().end() > 2 ? stores_.back() : stores_[stores_.size() - 2];
    }
    [[nodiscard]] Series series(std::size_t reading, double from, double to) const
    {
        return {store_for(from, to), reading};
    }
    /// The samples that are compared with the twin's.
    [[nodiscard]] const SampleStore& fine() const { return stores_[1]; }

    /// unit:    bytes, those shared with copies included
    [[nodiscard]] std::size_t size() const
    {
        std::size_t sum = 0;
        for (const SampleStore& each : stores_) {
            sum += each.size();
        }
        return sum;
    }

private:
    static constexpr double fine_seconds = 630.0;
    /// More than this many samples in a chart cost time and show nothing more.
    static constexpr std::size_t most_samples = 32000;

    static SampleStore store(std::size_t readings, sim::Tick ticks, double seconds)
    {
        const double interval = static_cast<double>(ticks) * sim::tick_length;
        return {readings, interval, static_cast<std::size_t>(seconds / interval)};
    }
    [[nodiscard]] sim::Tick step(std::size_t store) const
    {
        constexpr std::array<sim::Tick, 4> steps{swift_ticks, fine_ticks, coarse_ticks, 60000};
        return steps[store];
    }
    void put(std::size_t store, sim::Tick at, std::span<const double> values)
    {
        const auto sample = static_cast<std::size_t>(at / step(store));
        if (sample >= stores_[store].end()) {
            stores_[store].put(sample, values);
        }
    }

    std::array<SampleStore, 4> stores_;
    bool has_swift_ = false;
};

} // namespace scenes
