#include "scenes/present/engine_sound.hpp"

#include "scenes/present/chance.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>

// A firing is a sum of decaying tones, kept in two tables: the body, which a puff has too, and the
// bright part that only a burning charge gives. Hiss and rush are noise on a lattice of hashed
// numbers: noise without a memory, so that a sample depends on its own time alone.

namespace scenes {
namespace {

struct Tone {
    double pitch;  ///< Hz, of a 190 mL engine
    double decay;  ///< s
    double weight; ///< share of full scale
};
constexpr std::array body_tones{Tone{82.0, 0.022, 0.42}, Tone{164.0, 0.016, 0.26}};
constexpr std::array bright_tones{Tone{410.0, 0.009, 0.17}, Tone{930.0, 0.005, 0.09}};
constexpr double onset = 0.0012; ///< s in which a bang rises: none is a click
constexpr double hiss_pitch = 3000.0;
constexpr double hiss_weight = 0.12;
constexpr double rush_pitch = 700.0;
constexpr double rush_weight = 0.09;
constexpr double puff = 0.14; ///< of a charge that does not light, over one that does

constexpr std::size_t table_size = 4096;
constexpr double table_step = firing_tail / static_cast<double>(table_size - 1);
using Table = std::array<float, table_size>;

template <std::size_t N>
Table make_table(const std::array<Tone, N>& tones)
{
    Table table{};
    for (std::size_t i = 0; i < table_size; ++i) {
        const double t = static_cast<double>(i) * table_step;
        const double rise = 1.0 - std::exp(-t / onset);
        const double left = 1.0 - t / firing_tail; // ends at nothing, without an edge
        double sum = 0.0;
        for (const Tone& tone : tones) {
            sum += tone.weight * std::exp(-t / tone.decay) *
                   std::sin(2.0 * std::numbers::pi * tone.pitch * t);
        }
        table[i] = static_cast<float>(sum * rise * rise * left * left);
    }
    return table;
}

/// The value at a time after the firing; a small engine rings higher and shorter.
float look_up(const Table& table, double t)
{
    const double place = t / table_step;
    const auto at = static_cast<std::size_t>(place);
    if (at + 1 >= table_size) {
        return 0.0F;
    }
    const auto share = static_cast<float>(place - static_cast<double>(at));
    return table[at] + share * (table[at + 1] - table[at]);
}

/// A number from -1 to 1 that a seed and a place on the lattice always have.
double hashed(std::uint64_t seed, std::int64_t place)
{
    return 2.0 * chance(seed, static_cast<std::uint64_t>(place)) - 1.0;
}

double noise(std::uint64_t seed, double place)
{
    const double whole = std::floor(place);
    const double t = place - whole;
    const auto at = static_cast<std::int64_t>(whole);
    const double smooth = t * t * (3.0 - 2.0 * t);
    const double from = hashed(seed, at);
    return from + smooth * (hashed(seed, at + 1) - from);
}

struct Pulse {
    double seconds = 0.0;
    double body = 0.0;
    double bright = 0.0;
    std::uint64_t seed = 0;
};

/// How a charge sounds: a full one loud; a rich one dull; no two alike, the less so the further
/// from a good mixture.
Pulse pulse_of(const Firing& firing)
{
    const double strength = 0.25 + 0.75 * std::clamp(firing.load, 0.0, 1.0);
    if (firing.is_misfire) {
        return {firing.seconds, puff * strength, 0.0, firing.number};
    }
    const double off = std::abs(firing.richness - 1.1);
    const double rough = std::clamp(0.05 + 0.5 * off, 0.05, 0.35);
    const double varied = strength * (1.0 + rough * hashed(firing.number, -1));
    const double dull = std::clamp(1.0 - 0.8 * (firing.richness - 1.15), 0.3, 1.0);
    return {firing.seconds, varied, varied * dull, firing.number};
}

double sound_of(const Pulse& pulse, double after, double size)
{
    static const Table body = make_table(body_tones);
    static const Table bright = make_table(bright_tones);
    const double t = after * size;
    if (t >= firing_tail) {
        return 0.0;
    }
    double sound = pulse.body * static_cast<double>(look_up(body, t));
    if (pulse.bright > 0.0) {
        const double rise = 1.0 - std::exp(-t / onset);
        const double left = 1.0 - t / firing_tail;
        sound += pulse.bright * (static_cast<double>(look_up(bright, t)) +
                                 hiss_weight * rise * left * left * std::exp(-t / 0.010) *
                                     noise(pulse.seed, after * hiss_pitch));
    }
    return sound;
}

double speed_at(std::span<const EngineMoment> moments, std::size_t& next, double seconds)
{
    while (next < moments.size() && moments[next].seconds <= seconds) {
        ++next;
    }
    if (moments.empty()) {
        return 0.0;
    }
    if (next == 0 || next == moments.size()) {
        return moments[next == 0 ? 0 : next - 1].speed;
    }
    const EngineMoment& from = moments[next - 1];
    const EngineMoment& to = moments[next];
    const double share = (seconds - from.seconds) / (to.seconds - from.seconds);
    return from.speed + share * (to.speed - from.speed);
}

/// Keeps everything within full scale without an edge, and leaves what is quiet as it is.
double limit(double sound)
{
    return sound / std::sqrt(1.0 + sound * sound);
}

} // namespace

void render(const SoundSpan& span, std::span<float> samples)
{
    constexpr double gain = 2.6;
    std::size_t first = 0; // firing that is still heard
    std::size_t next = 0;  // moment
    for (std::size_t i = 0; i < samples.size(); ++i) {
        const double now =
            static_cast<double>(span.first_sample + static_cast<std::int64_t>(i)) / sound_rate;
        const double speed = speed_at(span.moments, next, now);
        const double relative = std::clamp(speed / span.rated_speed, 0.0, 1.5);
        double sound = rush_weight * relative * relative * noise(0, now * rush_pitch);
        while (first < span.firings.size() && span.firings[first].seconds < now - firing_tail) {
            ++first;
        }
        for (std::size_t k = first; k < span.firings.size() && span.firings[k].seconds <= now;
             ++k) {
            const Pulse pulse = pulse_of(span.firings[k]);
            sound += sound_of(pulse, now - pulse.seconds, span.size);
        }
        samples[i] = static_cast<float>(limit(sound * gain * span.volume));
    }
}

} // namespace scenes
