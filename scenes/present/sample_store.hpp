#pragma once

#include "scenes/present/extremes.hpp"

#include <cmath>
#include <cstddef>
#include <memory>
#include <span>
#include <vector>

namespace scenes {

/// Samples of several readings, taken together at a fixed interval; the latest ones only.
///
/// They lie in pages that copies of a store have in common until one of them writes: branches of a
/// run share their past. Within a page, blocks of samples keep their extremes, so that a long span
/// is drawn without reading every sample. Samples are counted from the beginning of the run; those
/// that were never taken, or are held no longer, read as "not a number".
class SampleStore {
public:
    static constexpr std::size_t page_length = 256;
    static constexpr std::size_t block_length = 32;

    /// unit:    interval in seconds
    SampleStore(std::size_t readings, double interval, std::size_t capacity)
        : readings_(readings),
          interval_(interval),
          most_pages_((capacity + page_length - 1) / page_length + 1)
    {
    }

    [[nodiscard]] double interval() const { return interval_; }
    /// The oldest sample still held, and one past the newest.
    [[nodiscard]] std::size_t first() const { return first_; }
    [[nodiscard]] std::size_t end() const { return end_; }

    [[nodiscard]] float at(std::size_t reading, std::size_t sample) const
    {
        const Page* page = find_page(sample);
        return page == nullptr ? std::nanf("")
                               : page->samples[reading * page_length + sample % page_length];
    }

    /// Takes all readings as sample number `sample`. A few samples left out before it stay empty;
    /// where more than a page is left out, everything before it is forgotten.
    ///
    /// valid:   sample is not before end()
    void put(std::size_t sample, std::span<const double> values);

    /// Forgets every sample; the next one taken is number `sample`.
    ///
    /// valid:   sample is not before end()
    void begin_at(std::size_t sample);
    /// Forgets the samples from `end` on.
    void truncate(std::size_t end);

    /// The extremes of a reading's samples `from` up to, not including, `to`.
    [[nodiscard]] Extremes extremes(std::size_t reading, std::size_t from, std::size_t to) const;

    /// Memory of the pages, those shared with copies included.
    ///
    /// unit:    bytes
    [[nodiscard]] std::size_t size() const;

private:
    struct Page {
        explicit Page(std::size_t readings)
            : samples(readings * page_length, std::nanf("")), blocks(readings * blocks_per_page)
        {
        }
        std::vector<float> samples;   ///< a row for each reading
        std::vector<Extremes> blocks; ///< likewise
    };
    static constexpr std::size_t blocks_per_page = page_length / block_length;

    [[nodiscard]] const Page* find_page(std::size_t sample) const
    {
        const std::size_t number = sample / page_length;
        return sample < first_ || sample >= end_ || number >= pages_.size() ? nullptr
                                                                            : pages_[number].get();
    }
    Page& own_page(std::size_t number);
    static void renew_block(Page& page, std::size_t reading, std::size_t block);
    void drop_oldest();

    std::size_t readings_;
    double interval_;
    std::size_t most_pages_;
    std::size_t first_ = 0;
    std::size_t end_ = 0;
    std::vector<std::shared_ptr<Page>> pages_; ///< by number; null where nothing is held
};

} // namespace scenes
