#pragma once

#include "scenes/present/engine_sound.hpp"
#include "sim/simulator.hpp"

#include <span>

namespace scenes {

/// Finds in a machine's readings what its engine's sound follows.
class EngineEar {
public:
    /// A machine without an engine stays silent.
    explicit EngineEar(const sim::Simulator& machine);

    [[nodiscard]] bool has_engine() const { return turns_per_firing_ > 0.0; }
    /// 2 of a four-stroke, 1 of a two-stroke; 0 without an engine.
    [[nodiscard]] double turns_per_firing() const { return turns_per_firing_; }
    [[nodiscard]] double size() const { return size_; }
    [[nodiscard]] double rated_speed() const { return rated_speed_; }

    /// What a machine's values say, at a time of the listener's clock.
    ///
    /// unit:    values in SI, in the order of the machine's readings; pace as a factor: at 0.1 the
    ///          engine is heard turning ten times as slowly
    [[nodiscard]] EngineMoment hear(std::span<const double> values, double seconds,
                                    double pace = 1.0) const;

private:
    double turns_per_firing_ = 0.0;
    double size_ = 1.0;
    double rated_speed_ = 320.0;
    double full_charge_ = 1.0; ///< kg of air
    std::size_t speed_ = 0;
    std::size_t ratio_ = 0;
    std::size_t fuel_rate_ = 0;
    std::size_t excess_air_ = 0;
    std::size_t burning_ = 0;
    std::optional<std::size_t> crank_angle_;
};

} // namespace scenes
