#include "scenes/present/departures.hpp"

#include "scenes/present/readout.hpp"
#include "sim/error.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace scenes {
namespace {

constexpr double interval = static_cast<double>(History::fine_ticks) * sim::tick_length;
/// Samples that a reading must stay out of the band: a tenth of a second.
constexpr std::size_t out_count = 5;
constexpr double mean_seconds = 1.0;
constexpr double band_of_wander = 4.0;
/// What a gauge of class 1 may be off by. source: EN 837-1, accuracy classes (from memory)
constexpr double band_of_value = 0.01;

} // namespace

void Departures::begin(const BenchRun& run)
{
    const auto& readings = run.machine().readings();
    watches_.assign(readings.size(), {});
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const Readout readout = readout_of(readings[i]);
        watches_[i].least_band = std::pow(10.0, -readout.decimals) * std::abs(readout.factor);
        watches_[i].zero = readout.offset;
        watches_[i].is_watched = !readings[i].name.starts_with("audit.");
    }
    list_.clear();
    ticks_.reset();
    next_ = run.history().fine().first();
}

void Departures::follow(const BenchRun& run, int number, std::size_t most)
{
    if (number != number_ || run.edition() != edition_ || run.history().fine().end() < next_) {
        number_ = number;
        edition_ = run.edition();
        begin(run);
    }
    next_ = std::max(next_, run.history().fine().first());
    const std::size_t end =
        std::min({run.history().fine().end(), run.twin_history().fine().end(), next_ + most});
    while (next_ < end) {
        compare(next_++, run);
    }
}

double Departures::seconds() const
{
    return interval * static_cast<double>(next_);
}

void Departures::compare(std::size_t sample, const BenchRun& run)
{
    const SampleStore& machine = run.history().fine();
    const SampleStore& twin = run.twin_history().fine();
    const std::size_t count = list_.size();
    for (std::size_t i = 0; i < watches_.size(); ++i) {
        const auto value = static_cast<double>(machine.at(i, sample));
        const auto healthy = static_cast<double>(twin.at(i, sample));
        if (watches_[i].is_watched && std::isfinite(value) && std::isfinite(healthy)) {
            watch(i, sample, value, healthy, run);
        }
    }
    if (list_.size() > count) {
        sort();
    }
}

void Departures::sort()
{
    std::ranges::stable_sort(list_, {}, &Departure::at);
    for (std::size_t i = 0; i < list_.size(); ++i) {
        watches_[list_[i].reading].departure = static_cast<std::ptrdiff_t>(i);
    }
}

void Departures::note_exit(Watch& watch, std::size_t sample, double share,
                           const BenchRun& run) const
{
    const auto at = static_cast<double>(sample);
    const std::size_t gap = watch.seen ? sample - *watch.seen : 1;
    const auto tick = static_cast<sim::Tick>(sample) * History::fine_ticks;
    const sim::Tick loose = run.looseness(tick);
    watch.first = sample;
    watch.first_at = std::max(0.0, interval * (at - 1.0 + share));
    watch.first_off_by = interval;
    watch.is_open = gap == 1 && loose == 0;
    if (gap > 1) { // somewhere in the time that was passed over
        watch.first_off_by = interval * static_cast<double>(gap) / 2.0;
        watch.first_at = interval * at - watch.first_off_by;
    } else if (loose > 0) {
        watch.first_off_by = static_cast<double>(loose) * sim::tick_length;
    }
}

void Departures::watch(std::size_t reading, std::size_t sample, double value, double twin,
                       const BenchRun& run)
{
    Watch& watch = watches_[reading];
    const double difference = value - twin;
    if (watch.departure >= 0) {
        Departure& departure = list_[static_cast<std::size_t>(watch.departure)];
        if (std::abs(difference) > std::abs(departure.amount)) {
            departure.amount = difference;
        }
        return;
    }
    constexpr double follow = interval / mean_seconds;
    watch.mean = watch.is_known ? watch.mean + follow * (twin - watch.mean) : twin;
    watch.is_known = true;
    watch.wander += follow * (std::abs(twin - watch.mean) - watch.wander);
    const double of_value = band_of_value * std::abs(twin - watch.zero);
    const double band = std::max({watch.least_band, of_value, band_of_wander * watch.wander});
    const double before = std::exchange(watch.distance, std::abs(difference));
    if (!(std::abs(difference) > band)) {
        watch.out = 0;
        watch.seen = sample;
        return;
    }
    if (watch.out == 0) {
        const double step = std::abs(difference) - before;
        const double share = step > 0.0 ? std::clamp((band - before) / step, 0.0, 1.0) : 1.0;
        note_exit(watch, sample, share, run);
        watch.first_band = band;
        watch.first_amount = difference;
    }
    if (std::abs(difference) > std::abs(watch.first_amount)) {
        watch.first_amount = difference;
    }
    watch.seen = sample;
    if (++watch.out < out_count) {
        return;
    }
    watch.departure = static_cast<std::ptrdiff_t>(list_.size());
    list_.push_back(
        {reading, watch.first_at, watch.first_off_by, watch.first_amount, watch.first_band});
}

bool Departures::is_refined() const
{
    return std::ranges::none_of(
        list_, [this](const Departure& each) { return watches_[each.reading].is_open; });
}

void Departures::refine(const BenchRun& run, const std::function<bool()>& has_leave)
{
    while (has_leave()) {
        try {
            if (!ticks_) {
                seek_next(run);
            }
            if (!ticks_ || !ticks_->work(has_leave)) {
                return;
            }
            take_found();
        } catch (const sim::NumericsError&) { // then the sample's time has to do
            for (const DepartureTicks::Sought& each : ticks_->sought()) {
                watches_[each.reading].is_open = false;
            }
        }
        ticks_.reset();
    }
}

void Departures::seek_next(const BenchRun& run)
{
    std::size_t sample = next_;
    std::vector<DepartureTicks::Sought> sought;
    for (const Departure& each : list_) {
        const Watch& watch = watches_[each.reading];
        if (watch.is_open && watch.first <= sample) {
            if (watch.first < sample) {
                sought.clear();
            }
            sample = watch.first;
            sought.push_back({each.reading, each.band});
        }
    }
    if (!sought.empty()) {
        const auto by = static_cast<sim::Tick>(sample) * History::fine_ticks;
        ticks_.emplace(run, by - History::fine_ticks, by, std::move(sought));
    }
}

void Departures::take_found()
{
    for (const DepartureTicks::Sought& each : ticks_->sought()) {
        Watch& watch = watches_[each.reading];
        Departure& departure = list_[static_cast<std::size_t>(watch.departure)];
        departure.at = static_cast<double>(each.left) * sim::tick_length;
        departure.off_by = 0.0;
        watch.is_open = false;
    }
    sort();
}

} // namespace scenes
