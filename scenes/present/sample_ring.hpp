#pragma once

#include <algorithm>
#include <array>
#include <atomic>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <span>

namespace scenes {

/// Samples on their way from the window's thread to the loudspeaker's, without a lock.
///
/// One thread pushes, one pulls. When the ring runs dry the sound fades within milliseconds, and
/// fades in again when there is more: no pause is a click.
class SampleRing {
public:
    static constexpr std::size_t capacity = 16384; // a power of two

    [[nodiscard]] std::size_t fill() const
    {
        return written_.load(std::memory_order_acquire) - read_.load(std::memory_order_acquire);
    }

    /// Takes as many samples as there is room for.
    void push(std::span<const float> samples)
    {
        const std::size_t at = written_.load(std::memory_order_relaxed);
        const std::size_t room = capacity - (at - read_.load(std::memory_order_acquire));
        const std::size_t count = std::min(room, samples.size());
        for (std::size_t i = 0; i < count; ++i) {
            ring_[(at + i) % capacity] = samples[i];
        }
        written_.store(at + count, std::memory_order_release);
    }

    /// Fills all of `out`, with what has been pushed as far as that goes.
    void pull(std::span<std::int16_t> out)
    {
        const std::size_t at = read_.load(std::memory_order_relaxed);
        const std::size_t there = written_.load(std::memory_order_acquire) - at;
        const std::size_t count = std::min(there, out.size());
        for (std::size_t i = 0; i < out.size(); ++i) {
            const bool is_dry = i >= count;
            if (is_dry && gain_ > 0.0F) {
                gain_ = 0.0F;
                tail_ = last_;
            }
            tail_ -= tail_ * fade;
            last_ = tail_;
            if (!is_dry) {
                gain_ += (1.0F - gain_) * fade;
                last_ += ring_[(at + i) % capacity] * gain_;
            }
            last_ = std::clamp(last_, -1.0F, 1.0F);
            out[i] = static_cast<std::int16_t>(std::lround(last_ * 32767.0F));
        }
        read_.store(at + count, std::memory_order_release);
    }

private:
    static constexpr float fade = 0.01F; ///< per sample: some 2 ms

    std::array<float, capacity> ring_{};
    std::atomic<std::size_t> written_{0};
    std::atomic<std::size_t> read_{0};
    float last_ = 0.0F;
    float tail_ = 0.0F; ///< what is left of the sound that broke off
    float gain_ = 0.0F; ///< of the sound that came back
};

} // namespace scenes
