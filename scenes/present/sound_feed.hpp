#pragma once

#include "scenes/present/engine_ear.hpp"
#include "scenes/present/firing_clock.hpp"
#include "scenes/present/sample_ring.hpp"

#include <vector>

namespace scenes {

/// Whether the engine can be heard at a pace: down to a tenth of real time every firing is heard,
/// slower and lower; slower than that, and faster than real time, there is nothing to hear.
bool is_heard_at(double pace);

/// Turns what a machine does from frame to frame into samples for the loudspeaker.
class SoundFeed {
public:
    /// Follows another machine from now on.
    void listen_to(const sim::Simulator& machine);

    /// Renders what went by since the last call into the ring.
    ///
    /// unit:    seconds on the machine's clock; values in SI as in `EngineEar::hear`; volume 0 to 1
    /// A clock that stands, jumps or goes back leaves a pause.
    void go_on(double seconds, std::span<const double> values, double pace, double volume,
               SampleRing& ring);

    /// The firings of the last span, for captions.
    [[nodiscard]] std::span<const Firing> new_firings() const { return new_firings_; }
    [[nodiscard]] const std::vector<float>& last_samples() const { return samples_; }

private:
    void pause();
    [[nodiscard]] std::size_t samples_for(double passed, std::size_t fill) const;

    std::optional<EngineEar> ear_;
    std::optional<FiringClock> clock_;
    std::vector<Firing> firings_; ///< those still heard
    std::vector<Firing> new_firings_;
    std::vector<float> samples_;
    std::int64_t next_sample_ = 0;
    std::optional<EngineMoment> last_;
    double seconds_ = 0.0;
};

} // namespace scenes
