#pragma once

#include "stepper.hpp"

namespace sim {

/// The time within a step at which the crank passes top dead centre; nothing when it does not.
std::optional<double> top_dead_centre(const Step& step, const Network::Crank& crank);

/// The step to try first at top dead centre, s, at a speed in rad/s.
double first_step_of_turn(double speed);

/// One turn of a crank as a map: from the state at top dead centre to that of a turn later.
///
/// It repeats a pattern of steps, stretched by the speed, so that the map is as smooth as the
/// equations: a pattern made anew each turn would add the scatter of its step control.
class TurnMap {
public:
    TurnMap(const Network& network, Tolerance tolerance);

    /// Finds a pattern by going through a turn; state and time become those of its end.
    bool learn(Network& network, std::span<double> state, double& time);

    /// state becomes the state a turn later; gives the time the turn takes, or nothing when it
    /// cannot be followed with the pattern learnt: bounds left, steps too rough, the engine too
    /// slow.
    /// \param slack  times the error that a step of the pattern may usually have
    std::optional<double> apply(Network& network, std::span<double> state, double slack = 1.0);

    /// The change over one turn: of the states and, last, of the time; false when it cannot be
    /// followed. `from` may have the time at its end.
    bool change(Network& network, std::span<const double> from, std::span<double> change,
                double slack = 1.0);

    /// The pattern learnt: angles of its steps. Another map that is given it takes the same turns.
    [[nodiscard]] const std::vector<double>& pattern() const { return angles_; }
    void set_pattern(std::vector<double> pattern) { angles_ = std::move(pattern); }

    [[nodiscard]] const Work& work() const { return stepper_.work(); }

private:
    Stepper stepper_;
    Step step_;
    std::vector<double> angles_; ///< of the pattern's steps
};

} // namespace sim
