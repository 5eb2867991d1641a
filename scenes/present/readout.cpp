#include "scenes/present/readout.hpp"

#include "scenes/view/number.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>
#include <stdexcept>

namespace scenes {
namespace {

/// Decimals and chart spans fit for a small engine. source: chosen for looks
struct Grain {
    std::string_view unit;
    int decimals;
    double least_span;
};
constexpr std::array grains{
    Grain{"rpm", 0, 200.0}, Grain{"mm", 2, 1.0},  Grain{"mL/min", 1, 5.0}, Grain{"kPa", 3, 0.05},
    Grain{"degC", 1, 2.0},  Grain{"W", 0, 100.0}, Grain{"%", 0, 10.0},     Grain{"mL", 1, 5.0},
    Grain{"g/s", 2, 0.5},   Grain{"N m", 1, 1.0}, Grain{"mg", 4, 0.001},   Grain{"mmol", 6, 1e-6},
    Grain{"m", 2, 0.5},
};

std::string two_figures(int number)
{
    return (number < 10 ? "0" : "") + std::to_string(number);
}

} // namespace

Readout readout_of(const sim::Network::Reading& reading)
{
    for (int i = 0; i <= static_cast<int>(sim::Dimension::angle); ++i) {
        const sim::Unit* unit = sim::find_unit(reading.unit, static_cast<sim::Dimension>(i));
        if (unit == nullptr) {
            continue;
        }
        Readout readout{reading.unit, unit->factor, unit->offset, 2, 0.1};
        const auto* const grain = std::ranges::find(grains, reading.unit, &Grain::unit);
        if (grain != grains.end()) {
            readout.decimals = grain->decimals;
            readout.least_span = grain->least_span;
        }
        return readout;
    }
    throw std::logic_error("reading " + reading.name + " has the unknown unit \"" + reading.unit +
                           "\"");
}

std::string reading_title(std::string_view name)
{
    std::string words(name);
    std::ranges::replace_if(
        words, [](char c) { return c == '.' || c == '_'; }, ' ');
    return words;
}

std::string capitalised(std::string text)
{
    if (!text.empty()) {
        text[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(text[0])));
    }
    return text;
}

std::string clock_text(double seconds)
{
    // In whole hundredths, cut off rather than rounded: a clock must not be ahead.
    const auto hundredths = static_cast<long long>(std::floor(seconds * 100.0 + 1e-6));
    const auto part = [&](long long size, long long count) {
        return static_cast<int>(hundredths / size % count);
    };
    const auto hours = hundredths / 360000;
    const std::string minutes = hours > 0
                                    ? std::to_string(hours) + ":" + two_figures(part(6000, 60))
                                    : std::to_string(part(6000, 60));
    return minutes + ":" + two_figures(part(100, 60)) + "." + two_figures(part(1, 100));
}

} // namespace scenes
