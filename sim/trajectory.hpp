#pragma once

#include "leap.hpp"

namespace sim {

/// The way of a machine's state through time, in strides: steps, each as long as the equations
/// allow, and, if wanted, leaps over many turns of the crank.
///
/// Which strides are taken depends on the state alone, never on how often anyone looks.
class Trajectory {
public:
    Trajectory(const Network& network, Tolerance tolerance);

    /// Begins anew from a state that something has changed.
    void begin(double time, std::span<const double> state);
    /// Whether it may leap; counts from `begin` on.
    void allow_leaps(bool are_allowed);
    [[nodiscard]] bool may_leap() const { return may_leap_; }

    /// Goes on until the last stride covers a time.
    ///
    /// throws:  NumericsError when the equations cannot be carried on
    void reach(Network& network, double time);
    /// The same, and ends just there: a stride that goes beyond is undone and taken again up to it.
    void land(Network& network, double time);

    /// The state at a time that the last stride covers. Within a leap the turn that the time falls
    /// into is gone through anew, from its beginning.
    void at(Network& network, double time, std::span<double> state);
    [[nodiscard]] double end() const { return has_leapt_ ? leap_.end() : step_.end(); }
    [[nodiscard]] std::span<const double> last() const;

    [[nodiscard]] Work work() const;

    /// All of a trajectory that outlives a stride: going on from it repeats the strides bit for
    /// bit.
    struct Moment;
    [[nodiscard]] Moment keep() const;
    void restore(const Moment& moment);

private:
    void stride(Network& network, double limit);
    /// Both go on from `state_`, the state at top dead centre, if the crank has just stood there.
    [[nodiscard]] bool try_leap(Network& network, double limit);
    void take_step(Network& network, double limit);
    void undo();
    void look_into_leap(Network& network, double time);

    /// What chooses the next stride, and is put back when a stride is undone.
    struct Pace {
        double length = 1e-4;      ///< step to try
        double turns = 0.0;        ///< leap to try
        int wait = 0;              ///< turns to let go by before a leap is tried
        int patience = 1;          ///< turns to let go by after one that failed
        std::optional<double> top; ///< when the last stride put the crank at top dead centre
    };

    Tolerance tolerance_;
    Stepper stepper_;
    Leaper leaper_;
    Step step_;
    Leap leap_;
    Pace pace_;
    Pace pace_before_;
    bool may_leap_ = false;
    bool has_leapt_ = false;
    std::vector<double> state_;
    Step view_; ///< the step of a turn within a leap that was last looked at
    double view_origin_ = -1.0;
    double view_length_ = 0.0;
};

struct Trajectory::Moment {
    Step step;
    std::optional<Leap> leap; ///< when the last stride was one
    Leaper::Knowledge knowledge;
    Pace pace;
    Pace pace_before;
    bool may_leap = false;

    /// unit:    bytes of memory beside the object's own
    [[nodiscard]] std::size_t heap_size() const
    {
        return step.heap_size() + (leap ? leap->heap_size() : 0) +
               knowledge.pattern.size() * sizeof(double);
    }
};

} // namespace sim
