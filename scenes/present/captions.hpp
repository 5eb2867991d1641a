#pragma once

#include "scenes/present/engine_sound.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string_view>

namespace scenes {

/// Says in words what there is to hear, for people who cannot or do not want to hear it.
///
/// It listens to the machine, not to the samples: captions come with the sound switched off, too.
class Captions {
public:
    enum class Event { none, cord_pulled, starts, stops, hunts, misfires };

    /// Takes what went by since the last call.
    ///
    /// unit:    seconds on the machine's clock; cord is what is left to pull, m
    void take(double seconds, const EngineMoment& moment, std::span<const Firing> firings,
              double cord, bool was_touched);
    /// What there is to say now; it stays for some seconds.
    [[nodiscard]] Event now() const { return now_; }
    /// The words for it; empty when there is nothing to say.
    [[nodiscard]] std::string_view words() const;
    void forget() { *this = Captions(); }

private:
    void say(Event event, double seconds);
    void follow_speed(double seconds, double speed, bool was_touched);
    void count(double seconds, std::span<const Firing> firings, bool was_touched);
    [[nodiscard]] bool hunts(double seconds) const;

    struct Swing {
        double seconds = 0.0;
        double speed = 0.0;
    };
    Event now_ = Event::none;
    double until_ = 0.0;
    double seconds_ = 0.0;
    bool has_begun_ = false;
    bool is_running_ = false;
    double cord_ = 0.0;
    double extreme_ = 0.0; ///< speed at the turn that is being sought
    double extreme_at_ = 0.0;
    bool is_rising_ = true;
    std::array<Swing, 6> swings_{}; ///< the last turning points of the speed
    std::size_t swing_count_ = 0;
    double fired_ = 0.0; ///< firings and misfires of late
    double missed_ = 0.0;
    double settles_ = 0.0; ///< when firings count again
};

} // namespace scenes
