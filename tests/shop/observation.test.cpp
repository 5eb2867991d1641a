#include "tools.hpp"

#include "scenes/shop/belief.hpp"

#include <cmath>

using namespace shop;

namespace {

/// A gauge of 0 to 100 that is read to 1, with noise of 2.
Instrument gauge()
{
    Instrument tool{"gauge", "Gauge", sim::Unit{}};
    tool.high = 100.0;
    tool.resolution = 1.0;
    tool.noise = 2.0;
    return tool;
}

Reading reading_of(const Instrument& tool)
{
    Reading reading;
    reading.id = "reading";
    reading.title = "Reading";
    reading.instrument = &tool;
    return reading;
}

} // namespace

TEST_SUITE_BEGIN("shop");

TEST_CASE("noise is Gaussian, and the same for the same seed and place")
{
    constexpr int count = 20000;
    double sum = 0.0;
    double squares = 0.0;
    int beyond = 0;
    for (int i = 0; i < count; ++i) {
        const double value = normal_deviate(7, static_cast<std::uint64_t>(i));
        CHECK(value == normal_deviate(7, static_cast<std::uint64_t>(i)));
        sum += value;
        squares += value * value;
        beyond += std::abs(value) > 1.959964 ? 1 : 0;
    }
    // Three standard errors about mean 0, variance 1 and 5 % beyond 1.96: M. Abramowitz, I. Stegun,
    // Handbook of Mathematical Functions, table 26.1.
    CHECK(std::abs(sum / count) < 3.0 / std::sqrt(count));
    CHECK(std::abs(squares / count - 1.0) < 3.0 * std::sqrt(2.0 / count));
    CHECK(std::abs(beyond / double{count} - 0.05) < 3.0 * std::sqrt(0.05 * 0.95 / count));
}

TEST_CASE("an instrument shows no more than its range and its resolution")
{
    const Instrument tool = gauge();
    const Reading reading = reading_of(tool);
    CHECK(observe_exactly(reading, 41.7).number == 42.0);
    CHECK(observe_exactly(reading, 300.0).number == 100.0);
    CHECK(observe_exactly(reading, -5.0).number == 0.0);
    CHECK(observation_text(reading, observe_exactly(reading, 41.7)) == "42");
    for (std::uint64_t place = 0; place < 200; ++place) {
        const double shown = observe(reading, 41.7, 1, place).number.value();
        CHECK(shown == std::round(shown));
        CHECK(std::abs(shown - 41.7) < 12.0);
    }
}

TEST_CASE("chances of all that an instrument can show add up to one")
{
    const Instrument tool = gauge();
    const Reading reading = reading_of(tool);
    for (const double there : {3.0, 50.0, 99.5}) {
        double sum = 0.0;
        for (int shown = 0; shown <= 100; ++shown) {
            const double chance = likelihood(reading, {double(shown), {}}, there, 0.0);
            sum += chance > 1.1e-3 ? chance : 0.0; // less is the trace that nothing is below
        }
        CHECK(sum == doctest::Approx(1.0).epsilon(0.01));
    }
}

TEST_CASE("what is seen of a value is as frequent as its likelihood says")
{
    const Instrument tool = gauge();
    const Reading reading = reading_of(tool);
    int hits = 0;
    constexpr int count = 20000;
    for (std::uint64_t place = 0; place < count; ++place) {
        hits += observe(reading, 50.3, 5, place).number == 51.0 ? 1 : 0;
    }
    const double chance = likelihood(reading, {51.0, {}}, 50.3, 0.0);
    CHECK(std::abs(hits / double{count} - chance) <
          3.0 * std::sqrt(chance * (1.0 - chance) / count));
}

TEST_CASE("words are chosen by their limits, noise included, and told whether they are sound")
{
    const Instrument tool = gauge();
    Reading reading = reading_of(tool);
    reading.words = {{10.0, "Little"}, {50.0, "Some"}, {1e300, "Much"}};
    reading.sound_words = {"Some"};
    CHECK(observation_text(reading, observe_exactly(reading, 9.0)) == "Little");
    CHECK(observation_text(reading, observe_exactly(reading, 10.0)) == "Some");
    CHECK(observation_text(reading, observe_exactly(reading, 50.0)) == "Much");
    CHECK(reading.is_sound(20.0));
    CHECK(!reading.is_sound(5.0));
    CHECK(!reading.is_sound(std::nullopt));
    CHECK(likelihood(reading, {{}, 1}, 30.0, 0.0) == doctest::Approx(1.0));
    CHECK(likelihood(reading, {{}, 1}, 10.0, 0.0) == doctest::Approx(0.5).epsilon(1e-3));
}

TEST_SUITE_END();
