#include "scenes/present/readout.hpp"

#include "scenes/present/phrase.hpp"
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
    const auto words = [](std::string_view part) {
        std::string text(part);
        std::ranges::replace(text, '_', ' ');
        return std::string(translated(text));
    };
    const std::size_t dot = name.find('.');
    if (dot == std::string_view::npos) {
        return words(name);
    }
    return filled(phrase("{0} {1}|a part and what is read there: main jet, flow"),
                  {words(name.substr(0, dot)), words(name.substr(dot + 1))});
}

std::string capitalised(std::string text)
{
    constexpr unsigned char latin = 0xc3; // the first byte of é, ñ and their like in UTF-8
    if (text.size() > 1 && static_cast<unsigned char>(text[0]) == latin) {
        const auto second = static_cast<unsigned char>(text[1]);
        text[1] = static_cast<char>(second >= 0xa0 ? second - 0x20 : second);
    } else if (!text.empty()) {
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
    return minutes + ":" + two_figures(part(100, 60)) + decimal_sign() + two_figures(part(1, 100));
}

} // namespace scenes
