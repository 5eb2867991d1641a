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
    Grain{"rpm", 0, 200.0}, Grain{"mm", 2, 1.0},   Grain{"mL/min", 1, 5.0},
    Grain{"kPa", 3, 0.05},  Grain{"degC", 1, 2.0}, Grain{"W", 0, 100.0},
    Grain{"%", 0, 10.0},    Grain{"mL", 1, 5.0},   Grain{"g/s", 2, 0.5},
    Grain{"N m", 1, 1.0},   Grain{"mg", 4, 0.001}, Grain{"mmol", 6, 1e-6},
    Grain{"m", 2, 0.5},     Grain{"in", 4, 0.04},  Grain{"fl oz/min", 3, 0.2},
    Grain{"psi", 4, 0.01},  Grain{"degF", 1, 4.0}, Grain{"hp", 3, 0.2},
    Grain{"fl oz", 3, 0.2}, Grain{"lb/h", 2, 4.0}, Grain{"lbf ft", 2, 1.0},
    Grain{"ft", 2, 2.0},
};

/// What stands for a unit where US customary units are chosen.
struct Customary {
    std::string_view si;
    std::string_view us;
};
constexpr std::array customaries{
    Customary{"mm", "in"},     Customary{"m", "ft"},       Customary{"kPa", "psi"},
    Customary{"degC", "degF"}, Customary{"mL", "fl oz"},   Customary{"mL/min", "fl oz/min"},
    Customary{"g/s", "lb/h"},  Customary{"N m", "lbf ft"}, Customary{"W", "hp"},
};

UnitSet& units()
{
    static UnitSet chosen = UnitSet::si;
    return chosen;
}

std::string two_figures(int number)
{
    return (number < 10 ? "0" : "") + std::to_string(number);
}

} // namespace

void choose_units(UnitSet chosen)
{
    units() = chosen;
    age_wording();
}

UnitSet chosen_units()
{
    return units();
}

std::string Readout::text(double si) const
{
    const std::string number = fixed_text(shown(si), decimals);
    return sign.empty() ? number : number + ' ' + sign;
}

int head_decimals()
{
    return units() == UnitSet::si ? 0 : 2;
}

std::string unit_sign(std::string_view unit)
{
    constexpr std::string_view degrees = "deg";
    return unit.starts_with(degrees) ? "\u00B0" + std::string(unit.substr(degrees.size()))
                                     : std::string(unit);
}

Readout readout_of(const sim::Network::Reading& reading)
{
    return readout_of(std::string_view(reading.unit));
}

Readout readout_of(std::string_view unit)
{
    const auto* const customary = std::ranges::find(customaries, unit, &Customary::si);
    if (units() == UnitSet::us_customary && customary != customaries.end()) {
        unit = customary->us;
    }
    for (int i = 0; i <= static_cast<int>(sim::Dimension::angle); ++i) {
        const sim::Unit* known = sim::find_unit(unit, static_cast<sim::Dimension>(i));
        if (known == nullptr) {
            continue;
        }
        Readout readout{std::string(unit), unit_sign(unit), known->factor, known->offset, 2, 0.1};
        const auto* const grain = std::ranges::find(grains, unit, &Grain::unit);
        if (grain != grains.end()) {
            readout.decimals = grain->decimals;
            readout.least_span = grain->least_span;
        }
        return readout;
    }
    throw std::logic_error("the unit \"" + std::string(unit) + "\" of a reading is unknown");
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

std::string tick_clock_text(double seconds)
{
    const auto ticks = std::llround(seconds * 1000.0);
    return clock_text(static_cast<double>(ticks / 10) / 100.0) + std::to_string(ticks % 10);
}

std::string whole_clock_text(double seconds)
{
    const std::string text = clock_text(seconds);
    return text.substr(0, text.rfind(decimal_sign()));
}

} // namespace scenes
