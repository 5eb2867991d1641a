#include "scenes/present/sample_store.hpp"

#include <algorithm>

namespace scenes {

void SampleStore::put(std::size_t sample, std::span<const double> values)
{
    if (sample > end_ + page_length) {
        begin_at(sample);
    }
    Page& page = own_page(sample / page_length);
    const std::size_t place = sample % page_length;
    const std::size_t block = place / block_length;
    for (std::size_t i = 0; i < readings_; ++i) {
        const auto value = static_cast<float>(values[i]);
        page.samples[i * page_length + place] = value;
        if (std::isfinite(value)) {
            page.blocks[i * blocks_per_page + block].include(value);
        }
    }
    end_ = sample + 1;
    drop_oldest();
}

void SampleStore::begin_at(std::size_t sample)
{
    std::ranges::fill(pages_, nullptr);
    first_ = end_ = sample;
}

SampleStore::Page& SampleStore::own_page(std::size_t number)
{
    if (number >= pages_.size()) {
        pages_.resize(number + 1);
    }
    std::shared_ptr<Page>& page = pages_[number];
    if (!page) {
        page = std::make_shared<Page>(readings_);
    } else if (page.use_count() > 1) {
        page = std::make_shared<Page>(*page);
    }
    return *page;
}

void SampleStore::drop_oldest()
{
    const std::size_t count = (end_ + page_length - 1) / page_length;
    if (count <= most_pages_) {
        return;
    }
    const std::size_t first = count - most_pages_;
    for (std::size_t i = first_ / page_length; i < first; ++i) {
        pages_[i].reset();
    }
    first_ = std::max(first_, first * page_length);
}

void SampleStore::renew_block(Page& page, std::size_t reading, std::size_t block)
{
    Extremes seen;
    const auto begin = page.samples.begin() +
                       static_cast<std::ptrdiff_t>(reading * page_length + block * block_length);
    for (auto sample = begin; sample != begin + block_length; ++sample) {
        if (std::isfinite(*sample)) {
            seen.include(*sample);
        }
    }
    page.blocks[reading * blocks_per_page + block] = seen;
}

void SampleStore::truncate(std::size_t end)
{
    if (end >= end_) {
        return;
    }
    end_ = end;
    first_ = std::min(first_, end);
    pages_.resize(std::min(pages_.size(), (end + page_length - 1) / page_length));
    const std::size_t place = end % page_length;
    if (place == 0 || pages_.size() <= end / page_length || !pages_.back()) {
        return;
    }
    Page& page = own_page(end / page_length);
    for (std::size_t i = 0; i < readings_; ++i) {
        const auto row = page.samples.begin() + static_cast<std::ptrdiff_t>(i * page_length);
        std::fill(row + static_cast<std::ptrdiff_t>(place), row + page_length, std::nanf(""));
        for (std::size_t block = place / block_length; block < blocks_per_page; ++block) {
            renew_block(page, i, block);
        }
    }
}

Extremes SampleStore::extremes(std::size_t reading, std::size_t from, std::size_t to) const
{
    from = std::max(from, first_);
    to = std::min(to, end_);
    Extremes found;
    while (from < to) {
        const Page* page = find_page(from);
        const std::size_t stop = std::min(to, (from / page_length + 1) * page_length);
        for (; page != nullptr && from < stop;) {
            const std::size_t place = from % page_length;
            if (place % block_length == 0 && from + block_length <= stop) {
                found.include(page->blocks[reading * blocks_per_page + place / block_length]);
                from += block_length;
                continue;
            }
            const float sample = page->samples[reading * page_length + place];
            if (std::isfinite(sample)) {
                found.include(sample);
            }
            ++from;
        }
        from = stop;
    }
    return found;
}

std::size_t SampleStore::size() const
{
    const std::size_t page = sizeof(Page) + readings_ * (page_length * sizeof(float) +
                                                         blocks_per_page * sizeof(Extremes));
    const auto held = static_cast<std::size_t>(
        std::ranges::count_if(pages_, [](const auto& place) { return place != nullptr; }));
    return held * page + pages_.size() * sizeof(pages_.front());
}

} // namespace scenes
