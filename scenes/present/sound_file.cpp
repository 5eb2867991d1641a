#include "scenes/present/sound_file.hpp"

#include "scenes/present/engine_sound.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace scenes {
namespace {

/// Appends a number in as many bytes, the lowest first.
void put(std::string& bytes, std::uint32_t number, int count)
{
    for (int i = 0; i < count; ++i) {
        bytes.push_back(static_cast<char>((number >> (8 * i)) & 0xffU));
    }
}

} // namespace

std::string wav_bytes(std::span<const float> samples)
{
    constexpr std::uint32_t bytes_per_sample = 2;
    constexpr auto rate = static_cast<std::uint32_t>(sound_rate);
    const auto size = static_cast<std::uint32_t>(samples.size()) * bytes_per_sample;
    std::string bytes = "RIFF";
    put(bytes, 36 + size, 4);
    bytes += "WAVEfmt ";
    put(bytes, 16, 4);
    put(bytes, 1, 2); // PCM
    put(bytes, 1, 2); // channels
    put(bytes, rate, 4);
    put(bytes, rate * bytes_per_sample, 4);
    put(bytes, bytes_per_sample, 2);
    put(bytes, 8 * bytes_per_sample, 2);
    bytes += "data";
    put(bytes, size, 4);
    for (const float sample : samples) {
        const long level = std::lround(std::clamp(sample, -1.0F, 1.0F) * 32767.0F);
        put(bytes, static_cast<std::uint32_t>(level), 2);
    }
    return bytes;
}

} // namespace scenes
