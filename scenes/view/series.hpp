#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <vector>

namespace scenes {

/// The least and the greatest of some values; empty while low is above high.
struct Extremes {
    float low = std::numeric_limits<float>::infinity();
    float high = -std::numeric_limits<float>::infinity();

    [[nodiscard]] bool is_empty() const { return low > high; }
    void include(float value)
    {
        low = std::min(low, value);
        high = std::max(high, value);
    }
    void include(const Extremes& other)
    {
        low = std::min(low, other.low);
        high = std::max(high, other.high);
    }
};

/// The latest samples of one reading, taken at a fixed interval, in a ring of fixed size.
///
/// Blocks of samples keep their extremes, so that a long span is drawn without reading every
/// sample. A value that is not finite is a gap. Samples are counted from the beginning of the run.
class Series {
public:
    /// unit: interval in seconds
    Series(double interval, std::size_t capacity)
        : interval_(interval),
          block_count_((capacity + block_size - 1) / block_size + 1),
          samples_(block_count_ * block_size),
          blocks_(block_count_)
    {
    }

    [[nodiscard]] double interval() const { return interval_; }
    /// The oldest sample still held, and one past the newest.
    [[nodiscard]] std::size_t first() const { return first_; }
    [[nodiscard]] std::size_t end() const { return end_; }
    [[nodiscard]] bool is_empty() const { return first_ == end_; }

    [[nodiscard]] double time_of(std::size_t sample) const
    {
        return interval_ * static_cast<double>(sample);
    }
    /// valid: first() <= sample < end()
    [[nodiscard]] float at(std::size_t sample) const { return samples_[sample % samples_.size()]; }

    /// The sample nearest to a time, kept inside what is held.
    ///
    /// valid: the series is not empty
    [[nodiscard]] std::size_t nearest(double time) const
    {
        const double index = std::round(std::max(0.0, time / interval_));
        return std::clamp(static_cast<std::size_t>(std::min(index, 1e15)), first_, end_ - 1);
    }

    void append(float value)
    {
        const std::size_t block = end_ / block_size;
        if (end_ % block_size == 0) {
            blocks_[block % block_count_] = {};
            if (block >= block_count_) {
                first_ = (block - block_count_ + 1) * block_size;
            }
        }
        samples_[end_ % samples_.size()] = value;
        if (std::isfinite(value)) {
            blocks_[block % block_count_].include(value);
        }
        ++end_;
    }

    /// Forgets the samples from `end` on: what a new branch of a run overwrites.
    void truncate(std::size_t end)
    {
        end_ = std::clamp(end, first_, end_);
        const std::size_t block_begin = end_ / block_size * block_size;
        if (block_begin < end_) {
            Extremes& block = blocks_[end_ / block_size % block_count_];
            block = {};
            include_samples(block, block_begin, end_);
        }
    }

    /// The extremes of samples `from` up to, not including, `to`; both are kept inside what is
    /// held.
    [[nodiscard]] Extremes extremes(std::size_t from, std::size_t to) const
    {
        from = std::max(from, first_);
        to = std::min(to, end_);
        Extremes found;
        while (from < to) {
            if (from % block_size == 0 && from + block_size <= to) {
                found.include(blocks_[from / block_size % block_count_]);
                from += block_size;
            } else {
                const std::size_t stop = std::min(to, (from / block_size + 1) * block_size);
                include_samples(found, from, stop);
                from = stop;
            }
        }
        return found;
    }

private:
    static constexpr std::size_t block_size = 32;

    void include_samples(Extremes& found, std::size_t from, std::size_t to) const
    {
        for (std::size_t i = from; i < to; ++i) {
            if (std::isfinite(at(i))) {
                found.include(at(i));
            }
        }
    }

    double interval_;
    std::size_t block_count_;
    std::size_t first_ = 0;
    std::size_t end_ = 0;
    std::vector<float> samples_;
    std::vector<Extremes> blocks_;
};

} // namespace scenes
