#include "scenes/shop/observation.hpp"
#include "scenes/shop/plain_number.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace shop {
namespace {

/// Chance that something happens which the model holds impossible.
constexpr double trace = 1e-3;

/// Chance that a normal deviate lies below.
///
/// source:  M. Abramowitz, I. Stegun, Handbook of Mathematical Functions, 26.2.29, by erfc
double normal_below(double deviate)
{
    return 0.5 * std::erfc(-deviate / std::numbers::sqrt2);
}

/// Chance that a value about `mean` lies between two limits; a deviation of nothing is a step.
double chance_between(double low, double high, double mean, double deviation)
{
    if (!(deviation > 0.0)) {
        return mean >= low && mean < high ? 1.0 : 0.0;
    }
    return normal_below((high - mean) / deviation) - normal_below((low - mean) / deviation);
}

Observation shown(const Reading& reading, double in_unit)
{
    const Instrument& tool = *reading.instrument;
    if (!reading.words.empty()) {
        return {{}, reading.word_of(tool.in_si(in_unit))};
    }
    return {tool.shown(in_unit), {}};
}

/// What the instrument would have shown between: the range of values that round to a number.
std::pair<double, double> range_of(const Instrument& tool, double number)
{
    const double half = 0.5 * tool.resolution;
    constexpr double endless = 1e300;
    return {number <= tool.low + half ? -endless : number - half,
            number >= tool.high - half ? endless : number + half};
}

std::string number_text(const Instrument& tool, double number)
{
    return plain_number(number, tool.decimals());
}

std::string with_unit(const Instrument& tool, const std::string& number)
{
    return tool.unit.name.empty() ? number : number + " " + std::string(tool.unit.name);
}

} // namespace

Observation observe(const Reading& reading, std::optional<double> value, std::uint64_t seed,
                    std::uint64_t place)
{
    if (!value) {
        return {};
    }
    const Instrument& tool = *reading.instrument;
    const double there = tool.in_unit(*value);
    return shown(reading, there + tool.deviation(there) * normal_deviate(seed, place));
}

Observation observe_exactly(const Reading& reading, std::optional<double> value)
{
    return value ? shown(reading, reading.instrument->in_unit(*value)) : Observation{};
}

std::string observation_text(const Reading& reading, const Observation& observation)
{
    if (observation.word) {
        return reading.words[*observation.word].say;
    }
    if (observation.number) {
        return with_unit(*reading.instrument,
                         number_text(*reading.instrument, *observation.number));
    }
    return "not read";
}

std::string sound_text(const Reading& reading)
{
    if (!reading.sound_words.empty()) {
        std::string text;
        for (const std::string& word : reading.sound_words) {
            text += (text.empty() ? "" : " / ") + word;
        }
        return text;
    }
    const Instrument& tool = *reading.instrument;
    const auto limit = [&](double si) { return number_text(tool, tool.in_unit(si)); };
    if (reading.least && reading.most) {
        return with_unit(tool, limit(*reading.least) + " to " + limit(*reading.most));
    }
    if (reading.least) {
        return "at least " + with_unit(tool, limit(*reading.least));
    }
    return reading.most ? "at most " + with_unit(tool, limit(*reading.most)) : "";
}

double likelihood(const Reading& reading, const Observation& observation,
                  std::optional<double> value, double slack)
{
    if (!value || !observation.is_taken()) {
        return value.has_value() == observation.is_taken() ? 1.0 : trace;
    }
    const Instrument& tool = *reading.instrument;
    const double there = tool.in_unit(*value);
    const double deviation = std::hypot(tool.deviation(there), slack * there);
    double low = 0.0;
    double high = 0.0;
    if (observation.word) {
        const std::size_t word = *observation.word;
        low = word == 0 ? -1e300 : tool.in_unit(reading.words[word - 1].below);
        high = word + 1 == reading.words.size() ? 1e300 : tool.in_unit(reading.words[word].below);
    } else {
        std::tie(low, high) = range_of(tool, *observation.number);
    }
    return std::max(chance_between(low, high, there, deviation), trace);
}

} // namespace shop
