#pragma once

#include "sim/simulator.hpp"
#include "tests/reference/cvode_solver.hpp"

namespace tests {

/// A machine run by CVODE instead of the simulator's own stepper.
///
/// Equations and commands are those of `Simulator`: one that stays at its first tick keeps the
/// parameters, and its network gives the rates. Commands are done at their ticks, and there CVODE
/// begins afresh.
class CvodeMachine {
public:
    CvodeMachine(std::shared_ptr<const sim::Rig> rig, std::vector<sim::TimedCommand> commands,
                 CvodeOptions options = {}, sim::Weather weather = {});

    /// Goes on to a tick; the commands of that tick are done.
    ///
    /// throws:  std::runtime_error when CVODE gives up
    void advance(sim::Tick to);

    [[nodiscard]] std::span<const double> state() const { return solver_.state(); }
    /// The readings now, in the order of `Simulator::readings()`; those of its audit are 0.
    void read(std::span<double> values);
    [[nodiscard]] CvodeWork work() const { return solver_.work(); }

private:
    void apply(const sim::Command& command, std::span<double> state);
    void stop_at_next_command();

    std::shared_ptr<const sim::Rig> rig_;
    sim::Simulator parameters_; ///< at tick 0 for ever: it holds what the commands have set
    CvodeSolver solver_;
    std::vector<sim::TimedCommand> commands_;
    std::size_t next_ = 0;
};

} // namespace tests
