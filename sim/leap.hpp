#pragma once

#include "turn_jacobian.hpp"

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

/// Leaps over turns that resemble each other: a Rosenbrock method of second order on the map from
/// one turn to the next.
///
/// A leap takes two resolved turns and a few to settle, however far it goes: the Jacobian of the
/// turn damps what settles fast and lets what changes slowly be followed to the tolerance. The
/// method keeps its order with any Jacobian, so one is used until a leap fails with it. The error
/// estimate decides how far a leap goes. Where turns do not resemble each other (a start, a change
/// of load) no leap is taken.
/// source:  J. G. Verwer, E. J. Spee, J. G. Blom, W. Hundsdorfer, A second-order Rosenbrock method
///          applied to photochemical dispersion problems, SIAM J. Sci. Comput. 20, 1999 (formulas
///          from memory; tested against an exact solution), its second-order condition changed
///          from a derivative's to a difference's
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
    void forget() { knows_.pattern.clear(); }

    static constexpr int first_patience = 16;
    /// What the last leap leaves for the next, which goes on from it bit for bit.
    struct Knowledge {
        std::vector<double> pattern; ///< steps of a turn; none when the next leap learns its own
        std::shared_ptr<const TurnJacobian> jacobian;
        int leaps = 0;                 ///< with this Jacobian
        int patience = first_patience; ///< leaps to take with a Jacobian that makes them short
    };
    [[nodiscard]] const Knowledge& knowledge() const { return knows_; }
    void set_knowledge(const Knowledge& knowledge)
    {
        knows_ = knowledge;
        map_.set_pattern(knowledge.pattern);
    }

    [[nodiscard]] Work work() const { return map_.work() + rough_map_.work(); }

private:
    /// Puts the leap's start at its origin; or, to learn the steps of a turn, some turns after it,
    /// when they resemble each other. False when the turns cannot be followed.
    bool begin(Network& network, Leap& leap, bool must_learn);
    bool learn_jacobian(Network& network, const Leap& leap);
    /// Forgets a Jacobian with which leaps have long been short.
    void judge_jacobian(double turns);
    /// Leaps as far as the error allows, in tries each shorter than the last, the first over
    /// `turns` if that ends before `limit`; false when none of at least so many turns is allowed.
    bool find_leap(Network& network, Leap& leap, double& turns, double least, double limit);
    /// Leaps over so many turns; gives the error, 1 being the most that is allowed, or nothing when
    /// the turns cannot be followed.
    std::optional<double> attempt(Network& network, Leap& leap, double turns);
    /// Lets so many turns go by, one after the other; the last one's change is kept.
    bool settle(Network& network, std::vector<double>& point, std::size_t turns,
                double slack = 1.0);
    /// Lets turns go by until one changes the states as the one before did, or a good many did not.
    bool wait_for_resemblance(Network& network, std::vector<double>& point);
    /// Takes the states' tolerances at a point for weights.
    void weigh(std::span<const double> point);
    /// How far two changes are apart: of the state that is worst, in its tolerances.
    [[nodiscard]] double distance(std::span<const double> a, std::span<const double> b) const;
    [[nodiscard]] double error_norm(const Leap& leap, const TurnSolver& solver);
    [[nodiscard]] bool stays_in_bounds(const Leap& leap);

    Tolerance tolerance_;
    std::vector<StateInfo> states_;
    TurnMap map_;
    TurnMap rough_map_; ///< for Jacobians
    Knowledge knows_;
    // Each holds the states and, last, the time since the start.
    std::vector<double> first_change_;
    std::vector<double> last_change_;
    std::vector<double> change_before_;
    std::vector<double> k1_;
    std::vector<double> k2_;
    std::vector<double> stage_;
    std::vector<double> weights_; ///< a tolerance each
};

} // namespace sim
