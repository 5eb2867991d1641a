#include "scenes/present/history.hpp"

#include <doctest/doctest.h>

#include <cmath>

using scenes::History;
using scenes::SampleStore;

namespace {

/// Puts `sin` of its number as every sample's first reading, and the number as its second.
void fill(SampleStore& store, std::size_t from, std::size_t to)
{
    for (std::size_t i = from; i < to; ++i) {
        const std::array values{std::sin(static_cast<double>(i)), static_cast<double>(i)};
        store.put(i, values);
    }
}

void check_extremes(const SampleStore& store, std::size_t from, std::size_t to)
{
    CAPTURE(from);
    CAPTURE(to);
    scenes::Extremes plain;
    for (std::size_t i = std::max(from, store.first()); i < std::min(to, store.end()); ++i) {
        plain.include(store.at(0, i));
    }
    const scenes::Extremes found = store.extremes(0, from, to);
    CHECK(found.is_empty() == plain.is_empty());
    if (!plain.is_empty()) {
        CHECK(found.low == plain.low);
        CHECK(found.high == plain.high);
    }
}

} // namespace

TEST_SUITE("present")
{
    TEST_CASE("extremes of any span of samples are those of its samples one by one")
    {
        SampleStore store(2, 0.02, 2000);
        fill(store, 0, 5000);
        CHECK(store.end() == 5000);
        CHECK(store.first() <= 3000);
        CHECK(store.first() > 2000);
        for (const std::size_t from : {0U, 3000U, 3072U, 3100U, 4607U, 4608U, 4990U}) {
            for (const std::size_t length : {1U, 31U, 32U, 33U, 256U, 700U, 3000U}) {
                check_extremes(store, from, from + length);
            }
        }
        CHECK(std::isnan(store.at(0, 100)));
        CHECK(std::isnan(store.at(0, 5000)));
    }

    TEST_CASE("a copy of a store shares its past and neither writes into the other")
    {
        SampleStore one(2, 0.02, 10000);
        fill(one, 0, 1000);
        SampleStore other = one;
        other.truncate(900);
        CHECK(other.end() == 900);
        const std::array high{7.0, -1.0};
        other.put(900, high);
        CHECK(one.end() == 1000);
        CHECK(one.at(1, 900) == 900.0F);
        CHECK(other.at(1, 900) == -1.0F);
        CHECK(other.at(1, 899) == 899.0F);
        CHECK(std::isnan(other.at(1, 901)));
        check_extremes(one, 850, 1000);
        check_extremes(other, 850, 1000);
        CHECK(other.extremes(0, 896, 2000).high == 7.0F);
    }

    TEST_CASE("a store that is cut back before its oldest sample goes on from there")
    {
        SampleStore store(2, 0.02, 300);
        fill(store, 0, 5000);
        REQUIRE(store.first() > 1000);
        store.truncate(1000);
        CHECK(store.end() == 1000);
        fill(store, 1000, 1100);
        CHECK(store.at(1, 1050) == 1050.0F);
        check_extremes(store, 0, 5000);
    }

    TEST_CASE("what was passed over is a gap, and nothing before it is held")
    {
        SampleStore store(2, 0.02, 3000);
        fill(store, 0, 100);
        fill(store, 103, 200); // a small gap
        CHECK(std::isnan(store.at(0, 101)));
        CHECK(store.at(1, 50) == 50.0F);
        fill(store, 100000, 100010);
        CHECK(store.first() == 100000);
        CHECK(store.at(1, 100005) == 100005.0F);
    }

    TEST_CASE("a history shows a span from the finest samples that go back so far")
    {
        History history(1);
        const std::array<double, 1> value{1.0};
        for (sim::Tick at = 0; at <= 1200000; at += History::fine_ticks) {
            history.record(at, value);
        }
        CHECK(history.store_for(1190.0, 1200.0).interval() == doctest::Approx(0.02));
        CHECK(history.store_for(600.0, 1200.0).interval() == doctest::Approx(0.02));
        CHECK(history.store_for(0.0, 10.0).interval() == doctest::Approx(1.0));
        CHECK(history.store_for(0.0, 1200.0).interval() == doctest::Approx(1.0));
        for (sim::Tick at = 1200000; at <= 1202000; at += History::swift_ticks) {
            history.record_swift(at, value);
        }
        CHECK(history.store_for(1201.0, 1202.0).interval() == doctest::Approx(0.002));
        history.truncate(1201000);
        CHECK(history.store_for(1200.5, 1201.0).end() == 600501);
    }
}
