#pragma once

#include "scenes/present/departure_ticks.hpp"

#include <functional>
#include <optional>
#include <vector>

namespace scenes {

/// A reading that has left its healthy twin's band.
struct Departure {
    std::size_t reading = 0;
    double at = 0.0;     ///< s, when it left
    double off_by = 0.0; ///< s, by how much that may be wrong either way; 0 when true to the tick
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
///
/// Samples tell the time to 20 ms. `refine` then has that stretch done again and finds the tick.
/// Where the history has no samples of its own, as in leaps or where hours were passed over, the
/// time stays as loose as it is, and says so.
class Departures {
public:
    /// Looks at the samples that have been added to a run since the last time, `most` of them at
    /// once; begins anew when the run is another one or has forgotten something.
    ///
    /// valid:   number is that of the run: `BenchModel::run_number()`
    void follow(const BenchRun& run, int number, std::size_t most = 500);

    /// Works at the ticks of departures known to the sample only, as long as it has leave.
    ///
    /// valid:   run is the one that was followed last
    void refine(const BenchRun& run, const std::function<bool()>& has_leave);
    /// Whether every time is as good as it will be.
    [[nodiscard]] bool is_refined() const;

    /// In the order of their times.
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
        bool is_open = false;  ///< the tick of its departure can be found still
        std::size_t first = 0; ///< the first sample out of the band
        std::size_t out = 0;   ///< samples out of the band, without a break
        std::ptrdiff_t departure = -1;
        double zero = 0.0;                    ///< SI at shown zero
        std::optional<std::size_t> seen = {}; ///< the sample it was last compared at
        double distance = 0.0;                ///< from the twin at the last sample
        double first_at = 0.0;
        double first_off_by = 0.0;
        double first_amount = 0.0;
        double first_band = 0.0;
    };

    void begin(const BenchRun& run);
    void compare(std::size_t sample, const BenchRun& run);
    void watch(std::size_t reading, std::size_t sample, double value, double twin,
               const BenchRun& run);
    /// When a reading left that is out of its band at a sample for the first time.
    void note_exit(Watch& watch, std::size_t sample, double share, const BenchRun& run) const;
    /// The readings whose tick is sought between the earliest open sample and the one before.
    void seek_next(const BenchRun& run);
    void take_found();
    void sort();

    std::vector<Watch> watches_;
    std::vector<Departure> list_;
    std::optional<DepartureTicks> ticks_; ///< the search in hand
    std::size_t next_ = 0;
    int number_ = -1;
    int edition_ = -1;
};

} // namespace scenes
