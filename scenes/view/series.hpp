#pragma once

#include "scenes/present/sample_store.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace scenes {

/// One reading's samples in a store, as a chart wants them; a view that owns nothing.
///
/// A value that is not finite is a gap. Samples are counted from the beginning of the run.
class Series {
public:
    /// Without samples.
    Series() = default;
    Series(const SampleStore& store, std::size_t reading) : store_(&store), reading_(reading) {}

    [[nodiscard]] bool is_empty() const { return store_ == nullptr || first() == end(); }
    [[nodiscard]] double interval() const { return store_->interval(); }
    /// The oldest sample still held, and one past the newest.
    [[nodiscard]] std::size_t first() const { return store_->first(); }
    [[nodiscard]] std::size_t end() const { return store_->end(); }

    [[nodiscard]] double time_of(std::size_t sample) const
    {
        return interval() * static_cast<double>(sample);
    }
    [[nodiscard]] float at(std::size_t sample) const { return store_->at(reading_, sample); }

    /// The sample nearest to a time, kept inside what is held.
    ///
    /// valid: the series is not empty
    [[nodiscard]] std::size_t nearest(double time) const
    {
        const double index = std::round(std::max(0.0, time / interval()));
        return std::clamp(static_cast<std::size_t>(std::min(index, 1e15)), first(), end() - 1);
    }

    /// The extremes of samples `from` up to, not including, `to`; both are kept inside what is
    /// held.
    [[nodiscard]] Extremes extremes(std::size_t from, std::size_t to) const
    {
        return store_->extremes(reading_, from, to);
    }

private:
    const SampleStore* store_ = nullptr;
    std::size_t reading_ = 0;
};

} // namespace scenes
