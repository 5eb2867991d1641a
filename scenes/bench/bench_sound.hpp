#pragma once

#include "scenes/bench/sound_player.hpp"
#include "scenes/present/bench_model.hpp"
#include "scenes/present/captions.hpp"
#include "scenes/present/sound_feed.hpp"

#include <memory>
#include <vector>

namespace scenes {

/// What there is to hear of the bench: by loudspeaker where there is one, and in words.
class BenchSound {
public:
    /// Looks for a loudspeaker; false, and silence from then on, when there is none.
    bool open();

    /// Follows the machine to where it is now.
    ///
    /// unit: loudness 0 to 1
    void go_on(const BenchModel& model, double loudness);
    /// Words for what is heard now; empty when there are none.
    [[nodiscard]] std::string_view caption() const { return captions_.words(); }

private:
    void take_run(const BenchModel& model);
    [[nodiscard]] bool was_touched(const BenchModel& model);

    std::unique_ptr<SampleRing> ring_ = std::make_unique<SampleRing>();
    std::unique_ptr<SoundPlayer> player_; ///< after the ring: it stops before the ring goes
    SoundFeed feed_;
    std::optional<EngineEar> ear_;
    std::optional<FiringClock> clock_; ///< of the machine's own time, for captions at any pace
    std::optional<std::size_t> cord_;  ///< reading of what is left to pull
    Captions captions_;
    std::vector<Firing> firings_;
    std::vector<double> controls_;
    int run_number_ = -1;
};

} // namespace scenes
