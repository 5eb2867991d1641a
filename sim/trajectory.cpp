#include "trajectory.hpp"

#include <algorithm>
#include <limits>

namespace sim {

namespace {
/// Step to try after a change: short, since anything may have happened.
constexpr double first_length = 1e-3;
/// Leap to try first, turns.
constexpr double first_leap = 50.0;
/// Most turns to let go by between two tries to leap.
constexpr int most_patience = 32;
/// Times closer than this are the same, s.
constexpr double same_time = 1e-9;
constexpr double never = -1.0;
constexpr double no_limit = std::numeric_limits<double>::infinity();
} // namespace

Trajectory::Trajectory(const Network& network, Tolerance tolerance)
    : tolerance_(tolerance),
      stepper_(network, tolerance),
      leaper_(network, tolerance),
      step_(network.state_count()),
      leap_(network.state_count()),
      state_(network.state_count()),
      view_(network.state_count())
{
}

void Trajectory::begin(double time, std::span<const double> state)
{
    Stepper::begin(step_, time, state);
    has_leapt_ = false;
    leaper_.forget();
    pace_ = {.length = std::min(pace_.length, first_length), .turns = first_leap, .top = {}};
    pace_before_ = pace_;
}

void Trajectory::allow_leaps(bool are_allowed)
{
    may_leap_ = are_allowed;
    stepper_.set_tolerance(are_allowed ? turn_tolerance(tolerance_) : tolerance_);
}

std::span<const double> Trajectory::last() const
{
    return has_leapt_ ? leap_.last() : step_.last();
}

Work Trajectory::work() const
{
    return stepper_.work() + leaper_.work();
}

Trajectory::Moment Trajectory::keep() const
{
    return {.step = step_,
            .leap = has_leapt_ ? std::optional(leap_) : std::nullopt,
            .knowledge = leaper_.knowledge(),
            .pace = pace_,
            .pace_before = pace_before_,
            .may_leap = may_leap_};
}

void Trajectory::restore(const Moment& moment)
{
    allow_leaps(moment.may_leap);
    step_ = moment.step;
    has_leapt_ = moment.leap.has_value();
    if (moment.leap) {
        leap_ = *moment.leap;
    }
    leaper_.set_knowledge(moment.knowledge);
    pace_ = moment.pace;
    pace_before_ = moment.pace_before;
    view_origin_ = never;
}

void Trajectory::reach(Network& network, double time)
{
    while (end() < time - same_time) {
        stride(network, no_limit);
    }
}

void Trajectory::land(Network& network, double time)
{
    reach(network, time);
    if (end() > time + same_time) {
        undo();
        while (end() < time - same_time) {
            stride(network, time);
        }
    }
}

void Trajectory::undo()
{
    if (has_leapt_) {
        Stepper::begin(step_, leap_.origin(), leap_.origin_state());
        has_leapt_ = false;
        leaper_.forget();
    } else {
        state_.assign(step_.first().begin(), step_.first().end());
        Stepper::begin(step_, step_.start(), state_);
    }
    pace_ = pace_before_;
}

void Trajectory::stride(Network& network, double limit)
{
    pace_before_ = pace_;
    if (has_leapt_) {
        std::ranges::copy(leap_.last(), state_.begin());
    } else if (pace_.top) {
        step_.at(*pace_.top, state_);
    }
    if (may_leap_ && pace_.top && pace_.wait == 0 && try_leap(network, limit)) {
        return;
    }
    take_step(network, limit);
}

bool Trajectory::try_leap(Network& network, double limit)
{
    if (leaper_.leap(network, leap_, *pace_.top, state_, pace_.turns, limit)) {
        has_leapt_ = true;
        view_origin_ = never;
        pace_.patience = 1;
        pace_.top = leap_.end();
        return true;
    }
    pace_.wait = pace_.patience;
    pace_.patience = std::min(2 * pace_.patience, most_patience);
    return false;
}

void Trajectory::take_step(Network& network, double limit)
{
    if (has_leapt_) {
        Stepper::begin(step_, *pace_.top, state_);
        pace_.length = first_step_of_turn(state_[network.crank()->speed]);
        has_leapt_ = false;
    }
    pace_.top = {};
    stepper_.advance(network, step_, pace_.length, limit);
    if (may_leap_ && network.crank()) {
        pace_.top = top_dead_centre(step_, *network.crank());
        pace_.wait -= pace_.top && pace_.wait > 0 ? 1 : 0;
    }
}

void Trajectory::at(Network& network, double time, std::span<double> state)
{
    if (!has_leapt_) {
        step_.at(time, state);
    } else if (time >= leap_.end() - same_time) {
        std::ranges::copy(leap_.last(), state.begin());
    } else {
        look_into_leap(network, time);
        view_.at(time, state);
    }
}

void Trajectory::look_into_leap(Network& network, double time)
{
    double origin = leap_.origin();
    std::span<const double> from = leap_.origin_state();
    if (time >= leap_.start()) {
        const double turn = leap_.turn_at(time);
        origin = leap_.time_of(turn);
        leap_.at_turn(turn, state_);
        from = state_;
    }
    if (origin != view_origin_ || time < view_.start()) {
        Stepper::begin(view_, origin, from);
        view_origin_ = origin;
        view_length_ = first_step_of_turn(from[network.crank()->speed]);
    }
    while (view_.end() < time) {
        stepper_.advance(network, view_, view_length_, no_limit);
    }
}

} // namespace sim
