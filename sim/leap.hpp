#pragma once

#include "turn.hpp"

namespace sim {

/// A leap over many turns of the crank, from top dead centre to top dead centre.
///
/// It knows the state at four turns, both ends among them; `at_turn` gives it at any turn between,
/// by the cubic through the four. Linear invariants hold there as exactly as at the ends. Some
/// turns that were gone through before it lie between its origin and its start.
class Leap {
public:
    explicit Leap(std::size_t state_count);
    [[nodiscard]] double origin() const { return origin_; }
    [[nodiscard]] std::span<const double> origin_state() const { return origin_state_; }
    [[nodiscard]] double start() const { return start_; }
    [[nodiscard]] double end() const { return start_ + points_[3].back(); }
    [[nodiscard]] double turns() const { return turns_[3]; }
    [[nodiscard]] std::span<const double> last() const;
    /// unit:    bytes of memory beside the object's own
    [[nodiscard]] std::size_t heap_size() const
    {
        return (origin_state_.size() + 4 * points_[0].size()) * sizeof(double);
    }
    /// The last turn that begins no later than a time, which is after its start.
    [[nodiscard]] double turn_at(double time) const;
    [[nodiscard]] double time_of(double turn) const;
    void at_turn(double turn, std::span<double> state) const;

private:
    friend class Leaper;
    /// The shares of the four points in a turn between them.
    [[nodiscard]] std::array<double, 4> shares(double turn) const;

    double origin_ = 0.0;
    std::vector<double> origin_state_;
    double start_ = 0.0;
    std::array<double, 4> turns_{};
    std::array<std::vector<double>, 4> points_; ///< states and, last, the time since the start
};

/// How closely turns are followed among leaps: what one gets wrong is multiplied, and turns
/// followed by different tolerances would disturb each other.
Tolerance turn_tolerance(Tolerance tolerance);

/// Leaps over turns that resemble each other: a stabilised explicit Runge-Kutta-Chebyshev method of
/// second order on the map from one turn to the next.
///
/// Every stage is one turn resolved through its steps; s stages carry over some 0.65 s^2 turns.
/// What settles within a turn or a few stays settled, what changes slowly is followed to the
/// tolerance, and the error estimate decides how far a leap goes. Where turns do not resemble each
/// other (a start, a change of load) no leap is taken. Needs the map's multipliers to be near real
/// and within the unit circle, as those of an engine that runs are.
/// source:  B. P. Sommeijer, L. F. Shampine, J. G. Verwer, RKC: an explicit solver for parabolic
///          PDEs, J. Comput. Appl. Math. 88, 1998 (formulas from memory; tested
///          against an exact solution), its second-order condition changed from a derivative's to
///          a difference's
class Leaper {
public:
    Leaper(const Network& network, Tolerance tolerance);

    /// Tries to leap from a state at top dead centre, ending before `limit`; true when it did.
    ///
    /// A leap that begins where the last one ended takes its turns by the same steps; others learn
    /// theirs from the first turn.
    /// `turns` is how far to try and becomes how far to try next time, leapt or not.
    bool leap(Network& network, Leap& leap, double time, std::span<const double> state,
              double& turns, double limit);
    /// Whatever comes next does not begin where the last leap ended.
    void forget() { has_pattern_ = false; }

    /// The steps by which the next leap would take its turns; none when it would learn its own.
    [[nodiscard]] std::vector<double> pattern() const
    {
        return has_pattern_ ? map_.pattern() : std::vector<double>();
    }
    /// Goes on with a pattern; with none the next leap learns its own.
    void set_pattern(const std::vector<double>& pattern)
    {
        map_.set_pattern(pattern);
        has_pattern_ = !pattern.empty();
    }

    [[nodiscard]] const Work& work() const { return map_.work(); }

private:
    /// Lets turns go by one after the other.
    bool settle(Network& network, std::vector<double>& point, std::size_t turns);
    enum class Verdict { leapt, too_short, lost };
    /// Leaps as far as the error allows, in tries each shorter than the last. Lost is the way when
    /// the steps learnt from another turn do no longer; turns that they are learnt from go by
    /// first.
    Verdict find_leap(Network& network, Leap& leap, bool must_learn, double& turns, double limit);
    /// Leaps over so many turns; gives the error, 1 being the most that is allowed, or nothing when
    /// the way is lost.
    std::optional<double> attempt(Network& network, Leap& leap, double turns);
    /// The change over one turn from a point.
    bool change(Network& network, std::span<const double> point, std::span<double> out);
    bool run_stages(Network& network, Leap& leap, double turns);
    [[nodiscard]] double error_norm(const Leap& leap) const;
    [[nodiscard]] bool stays_in_bounds(const Leap& leap);

    Tolerance tolerance_;
    std::vector<StateInfo> states_;
    TurnMap map_;
    bool has_pattern_ = false;
    // Each holds the states and, last, the time since the start.
    std::vector<double> from_change_;
    std::vector<double> before_;
    std::vector<double> stage_;
    std::vector<double> next_;
    std::vector<double> change_;
};

} // namespace sim
