#pragma once

#include "scenes/present/bench_run.hpp"

#include <vector>

namespace scenes {

/// A reading that has left its healthy twin's band.
struct Departure {
    std::size_t reading = 0;
    double at = 0.0;     ///< s, when it left
    double amount = 0.0; ///< the greatest difference from the twin since, with its sign, SI
    double band = 0.0;   ///< how far it could be from the twin when it left, SI
};

/// What changed first: the readings in the order in which they left the twin's band.
///
/// Both runs are compared sample by sample. The band about the twin's reading is what the display
/// can tell apart, one percent of what it shows, or four times what the twin's own reading
/// wanders about its mean of the last second, whichever is widest. Where readings swing with every
/// turn of the engine, slow gauges are compared, not the swing. A reading has left when it stays
/// out for a tenth of a second.
class Departures {
public:
    /// Looks at the samples that have been added to a run since the last time, `most` of them at
    /// once; begins anew when the run is another one or has forgotten something.
    ///
    /// valid:   number is that of the run: `BenchModel::run_number()`
    void follow(const BenchRun& run, int number, std::size_t most = 500);

    /// In the order of their times, which are interpolated between samples.
    [[nodiscard]] const std::vector<Departure>& list() const { return list_; }
    /// How far the samples have been looked at, s.
    [[nodiscard]] double seconds() const;

private:
    /// What is known of one reading.
    struct Watch {
        double least_band = 0.0; ///< SI
        bool is_watched = true;
        bool is_known = false; ///< the twin's reading has been seen
        double mean = 0.0;     ///< of the twin over the last second
        double wander = 0.0;   ///< its mean distance from that
        std::size_t out = 0;   ///< samples out of the band, without a break
        std::ptrdiff_t departure = -1;
        double zero = 0.0;     ///< SI at shown zero
        double distance = 0.0; ///< from the twin at the last sample
        double first_at = 0.0;
        double first_amount = 0.0;
        double first_band = 0.0;
    };

    void begin(const BenchRun& run);
    void compare(std::size_t sample, const BenchRun& run);
    void watch(std::size_t reading, std::size_t sample, double value, double twin);

    std::vector<Watch> watches_;
    std::vector<Departure> list_;
    std::size_t next_ = 0;
    int number_ = -1;
    int edition_ = -1;
};

} // namespace scenes
