#pragma once

#include <cstdint>
#include <optional>
#include <span>

namespace scenes {

inline constexpr double sound_rate = 44100.0; ///< samples a second

/// What the engine's sound follows, at one time.
///
/// unit:    seconds on the listener's clock; speed as heard, rad/s; load, burning are shares
struct EngineMoment {
    double seconds = 0.0;
    double speed = 0.0;
    double load = 0.0;                      ///< charge drawn in, as a share of a full one
    double burning = 0.0;                   ///< share of the charges that light
    double richness = 1.0;                  ///< equivalence ratio of what burns
    std::optional<double> crank_angle = {}; ///< rad from top dead centre, where it is known
};

/// One charge of the engine at its top dead centre.
struct Firing {
    double seconds = 0.0;
    double load = 1.0;
    double richness = 1.0;
    bool is_misfire = false;
    std::uint64_t number = 0; ///< seeds what differs from one to the next
};

/// What to render: samples from `first_sample` on, counted from the listener's zero.
///
/// valid:   firings and moments in order of time; a firing is heard for `firing_tail`, so those of
///          that long before the first sample belong to it as well
struct SoundSpan {
    std::int64_t first_sample = 0;
    std::span<const Firing> firings;
    std::span<const EngineMoment> moments; ///< for the rush of what the engine turns
    double size = 1.0;                     ///< pitch of the exhaust against that of a 190 mL engine
    double rated_speed = 320;              ///< rad/s, where the rush is loudest
    double volume = 1.0;                   ///< 0 to 1
};
inline constexpr double firing_tail = 0.07; ///< s

/// Fills samples with the engine's sound, each between -1 and 1.
///
/// Every firing rings the exhaust; a misfire is a puff without the bang. The result depends on
/// nothing but the span: the same input gives the same samples bit for bit, and a span rendered in
/// pieces is the span rendered whole.
/// source:  pitches and decays of the exhaust are chosen, not measured; the rhythm and the strength
///          are the machine's
void render(const SoundSpan& span, std::span<float> samples);

} // namespace scenes
