#include "scenes/shop/instrument.hpp"

#include "scenes/present/chance.hpp"
#include "scenes/shop/asset_files.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace shop {

double Instrument::deviation(double value) const
{
    return noise + noise_share * std::abs(value);
}

double Instrument::shown(double value) const
{
    const double within = std::clamp(value, low, high);
    return resolution > 0.0 ? std::round(within / resolution) * resolution : within;
}

int Instrument::decimals() const
{
    int places = 0;
    for (double step = resolution; step > 0.0 && step < 0.999 && places < 4; step *= 10.0) {
        ++places;
    }
    return places;
}

namespace {

Instrument read_instrument(const std::string& path)
{
    const sim::JsonNode node = load_named(path);
    node.allow_keys(
        {"format", "id", "title", "unit", "low", "high", "resolution", "noise", "noise_share"});
    Instrument tool{node.at("id").text(), node.at("title").text(), unit_named(node.at("unit"))};
    tool.low = node.at("low").number();
    tool.high = node.at("high").number();
    if (!(tool.low < tool.high)) {
        throw node.at("high").wrong("must be above low");
    }
    tool.resolution = node.at("resolution").number_between(0.0, tool.high - tool.low);
    tool.noise = node.at("noise").number_between(0.0, tool.high - tool.low);
    if (node.has("noise_share")) {
        tool.noise_share = node.at("noise_share").number_between(0.0, 1.0);
    }
    return tool;
}

} // namespace

Instruments load_instruments(const std::string& folder)
{
    Instruments all;
    for (const std::string& path : json_files(folder)) {
        Instrument tool = read_instrument(path);
        all.emplace(tool.id, std::move(tool));
    }
    return all;
}

double normal_deviate(std::uint64_t seed, std::uint64_t place)
{
    const double radius = scenes::chance(seed, 2 * place);
    const double turn = scenes::chance(seed, 2 * place + 1);
    return std::sqrt(-2.0 * std::log1p(-radius)) * std::cos(2.0 * std::numbers::pi * turn);
}

std::uint64_t seed_of(std::string_view text, std::uint64_t from)
{
    std::uint64_t sum = from;
    for (const char each : text) {
        sum ^= static_cast<unsigned char>(each);
        sum *= 0x100000001b3ULL;
    }
    return sum;
}

} // namespace shop
