#pragma once

#include "sim/command.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace scenes {

/// How fast the machine's clock runs against the real one.
class Pace {
public:
    /// Times real time.
    static constexpr std::array<double, 6> speeds{0.001, 0.01, 0.1, 1.0, 10.0, 60.0};
    static constexpr std::size_t real_time = 3;

    bool is_paused = false;

    [[nodiscard]] std::size_t chosen() const { return chosen_; }
    [[nodiscard]] double speed() const { return speeds[chosen_]; }
    void choose(std::size_t index)
    {
        chosen_ = std::min(index, speeds.size() - 1);
        owed_ = 0.0;
        reached_ = 1.0;
    }

    /// Ticks that the machine owes after more real time has passed; none when paused.
    sim::Tick owe(double real_seconds)
    {
        if (is_paused) {
            owed_ = 0.0;
            return 0;
        }
        // A window that was dragged or hidden must not make the machine leap.
        wanted_ = std::clamp(real_seconds, 0.0, longest_frame) * speed() / sim::tick_length;
        owed_ += wanted_;
        return static_cast<sim::Tick>(owed_);
    }

    /// Notes how many of the owed ticks were done; what is left is let go.
    void pay(sim::Tick owed, sim::Tick done)
    {
        owed_ = done < owed ? 0.0 : owed_ - static_cast<double>(done);
        if (wanted_ > 0.0) {
            const double share =
                owed == 0 ? 1.0 : static_cast<double>(done) / static_cast<double>(owed);
            reached_ += (share - reached_) * 0.05;
        }
    }

    /// How much of the chosen speed was reached of late, up to 1.
    [[nodiscard]] double reached() const { return reached_; }
    [[nodiscard]] bool is_late() const { return !is_paused && reached_ < 0.9; }

private:
    static constexpr double longest_frame = 0.1;

    std::size_t chosen_ = real_time;
    double owed_ = 0.0;
    double wanted_ = 0.0;
    double reached_ = 1.0;
};

} // namespace scenes
