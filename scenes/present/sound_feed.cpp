#include "scenes/present/sound_feed.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace scenes {
namespace {

/// Samples kept ahead of the loudspeaker: some frames of the window, 50 ms.
constexpr std::size_t ahead = 2205;
/// A longer step of the listener's clock is a jump.
constexpr double longest_step = 0.25;

} // namespace

bool is_heard_at(double pace)
{
    constexpr double slack = 1e-9;
    return pace <= 1.0 + slack && pace >= 0.1 - slack;
}

void SoundFeed::listen_to(const sim::Simulator& machine)
{
    ear_.emplace(machine);
    clock_.emplace(std::max(1.0, ear_->turns_per_firing()));
    last_.reset();
    seconds_ = machine.seconds();
}

void SoundFeed::pause()
{
    if (clock_) {
        clock_->leave_gap();
    }
    last_.reset();
    new_firings_.clear();
    samples_.clear();
}

/// As many as time has passed, a little more or less so that the ring stays filled; many more when
/// the machine cannot keep up, which is then heard lower.
std::size_t SoundFeed::samples_for(double passed, std::size_t fill) const
{
    const double lack =
        (static_cast<double>(ahead) - static_cast<double>(fill)) / static_cast<double>(ahead);
    const double stretch =
        1.0 + 0.01 * std::clamp(lack, -1.0, 1.0) + std::pow(std::max(0.0, lack), 6.0);
    const auto wanted = static_cast<std::size_t>(std::llround(passed * sound_rate * stretch));
    return std::min(wanted, SampleRing::capacity - std::min(fill, SampleRing::capacity));
}

void SoundFeed::go_on(double seconds, std::span<const double> values, double pace, double volume,
                      SampleRing& ring)
{
    const double passed = (seconds - seconds_) / pace;
    seconds_ = seconds;
    if (passed == 0.0) {
        new_firings_.clear();
        samples_.clear();
        return; // a frame without a tick; the ring bridges it
    }
    if (!ear_ || !ear_->has_engine() || !is_heard_at(pace) || passed < 0.0 ||
        passed > longest_step) {
        pause();
        return;
    }
    if (!last_) {
        samples_.assign(ahead - std::min(ahead, ring.fill()), 0.0F);
        ring.push(samples_);
        next_sample_ += static_cast<std::int64_t>(samples_.size());
        last_ = ear_->hear(values, static_cast<double>(next_sample_) / sound_rate, pace);
        clock_->take(*last_, new_firings_);
        return;
    }
    const std::size_t count = samples_for(passed, ring.fill());
    if (count == 0) {
        return;
    }
    const auto end = next_sample_ + static_cast<std::int64_t>(count);
    const double heard = passed * pace / (static_cast<double>(count) / sound_rate);
    const EngineMoment now = ear_->hear(values, static_cast<double>(end) / sound_rate, heard);
    new_firings_.clear();
    clock_->take(now, new_firings_);
    const double oldest = last_->seconds - firing_tail;
    std::erase_if(firings_, [oldest](const Firing& firing) { return firing.seconds < oldest; });
    firings_.insert(firings_.end(), new_firings_.begin(), new_firings_.end());
    samples_.resize(count);
    const std::array moments{*last_, now};
    render({.first_sample = next_sample_,
            .firings = firings_,
            .moments = moments,
            .size = ear_->size(),
            .rated_speed = ear_->rated_speed(),
            .volume = volume},
           samples_);
    ring.push(samples_);
    next_sample_ = end;
    last_ = now;
}

} // namespace scenes
