#include "leap.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace sim {
namespace {
/// Leaps shorter than this are not worth their turns.
constexpr double shortest_leap = 12.0;
/// Longest leap, turns.
constexpr double longest_leap = 8000.0;
/// A leap as long as this does not mind the turns it takes; were many shorter in a row, another
/// Jacobian may be worth its own turns. Patience doubles when it was not.
constexpr double long_leap = 400.0;
constexpr int most_patience = 512;
/// Turns there must be before a command is due, for a leap and for one that needs a Jacobian first.
constexpr double least_room = 30.0;
constexpr double room_for_jacobian = 200.0;
/// Shares of the tolerance by which turns are followed, those of leaps and those of Jacobians.
constexpr double turn_share = 0.1;
constexpr double rough_share = 0.3;
/// Turns let go by after steps have been learnt, whose own errors are not those of the steps
/// before.
constexpr std::size_t turns_after_learning = 8;
/// Turns let go by after a leap.
constexpr std::size_t turns_after_leap = 3;

/// Turns that follow each other resemble each other when their changes differ by less than this
/// many tolerances; so many are let go by at most until they do.
constexpr double resemblance = 0.1;
constexpr std::size_t most_turns_to_wait = 40;
/// A leap shorter than this share of what was expected is worth a look for what is out of date.
constexpr double share_worth_it = 0.25;

Tolerance scaled(Tolerance tolerance, double share)
{
    return {share * tolerance.relative, share * tolerance.absolute};
}

/// By how many tolerances a leap may be off: as much as the same turns are that are followed one by
/// one, each in some thirty steps.
double error_allowed(double turns)
{
    constexpr double turns_of_tolerance = 100.0;
    return 1.0 + turns / turns_of_tolerance;
}

/// The method's coefficients for a leap over so many turns; see the source named in the header.
struct Rosenbrock {
    /// After n turns a mode of change w has grown by (1 + w)^n, not by e^(n w): its second-order
    /// term is n (n - 1) / 2 w^2.
    explicit Rosenbrock(double turns) : place(1.0 - 1.0 / turns) {}

    double place; ///< of the second stage, along the first
    double gamma =
        1.0 - std::sqrt(1.0 - 0.5 * place); ///< so that what settles fast is damped wholly

    /// Weights of the two stages at a share of the leap; 3/2 and 1/2 at its end.
    [[nodiscard]] std::array<double, 2> weights(double share) const
    {
        const double second = share * (share - 2.0 * gamma) / (2.0 - 4.0 * gamma);
        return {share + second, second};
    }
};
} // namespace

Leap::Leap(std::size_t state_count) : origin_state_(state_count)
{
    for (auto& point : points_) {
        point.resize(state_count + 1);
    }
}

std::span<const double> Leap::last() const
{
    return std::span(points_[3]).first(origin_state_.size());
}

std::array<double, 4> Leap::shares(double turn) const
{
    std::array<double, 4> share{1.0, 1.0, 1.0, 1.0};
    for (std::size_t p = 0; p < 4; ++p) {
        for (std::size_t q = 0; q < 4; ++q) {
            share[p] *= p == q ? 1.0 : (turn - turns_[q]) / (turns_[p] - turns_[q]);
        }
    }
    return share;
}

double Leap::time_of(double turn) const
{
    const auto share = shares(turn);
    return start_ + share[1] * points_[1].back() + share[2] * points_[2].back() +
           share[3] * points_[3].back();
}

double Leap::turn_at(double time) const
{
    double low = 0.0;
    double high = turns();
    while (high - low > 1.0) {
        const double middle = std::floor(0.5 * (low + high));
        (time_of(middle) <= time ? low : high) = middle;
    }
    return low;
}

void Leap::at_turn(double turn, std::span<double> state) const
{
    const auto share = shares(turn);
    for (std::size_t i = 0; i < state.size(); ++i) {
        state[i] = share[0] * points_[0][i] + share[1] * points_[1][i] + share[2] * points_[2][i] +
                   share[3] * points_[3][i];
    }
}

Tolerance turn_tolerance(Tolerance tolerance)
{
    return scaled(tolerance, turn_share);
}

Leaper::Leaper(const Network& network, Tolerance tolerance)
    : tolerance_(tolerance),
      states_(network.states().begin(), network.states().end()),
      map_(network, turn_tolerance(tolerance)),
      rough_map_(network, scaled(tolerance, rough_share)),
      first_change_(states_.size() + 1),
      last_change_(first_change_),
      change_before_(first_change_),
      k1_(first_change_),
      k2_(first_change_),
      stage_(first_change_),
      weights_(first_change_)
{
}

bool Leaper::settle(Network& network, std::vector<double>& point, std::size_t turns, double slack)
{
    for (std::size_t turn = 0; turn < turns; ++turn) {
        if (!map_.change(network, point, last_change_, slack)) {
            return false;
        }
        for (std::size_t i = 0; i < point.size(); ++i) {
            point[i] += last_change_[i];
        }
    }
    return true;
}

bool Leaper::wait_for_resemblance(Network& network, std::vector<double>& point)
{
    for (std::size_t turn = 0; turn < most_turns_to_wait; ++turn) {
        change_before_.swap(last_change_);
        if (!settle(network, point, 1)) {
            return false;
        }
        if (turn > 0 && distance(change_before_, last_change_) < resemblance) {
            break;
        }
    }
    return true;
}

double Leaper::distance(std::span<const double> a, std::span<const double> b) const
{
    double worst = 0.0;
    for (std::size_t i = 0; i < states_.size(); ++i) {
        worst = std::max(worst, std::abs(a[i] - b[i]) / weights_[i]);
    }
    return worst;
}

bool Leaper::leap(Network& network, Leap& leap, double time, std::span<const double> state,
                  double& turns, double limit)
{
    leap.origin_ = time;
    std::ranges::copy(state, leap.origin_state_.begin());
    turns = std::clamp(turns, shortest_leap, longest_leap);
    judge_jacobian(turns);
    const double room = (limit - time) * state[network.crank()->speed] / (2.0 * std::numbers::pi);
    if (room < (knows_.jacobian ? least_room : room_for_jacobian)) {
        return false;
    }
    const double worth_it = std::max(shortest_leap, share_worth_it * turns);
    const auto tries = [&](double least) { return find_leap(network, leap, turns, least, limit); };
    bool has_leapt = knows_.jacobian && !knows_.pattern.empty() && begin(network, leap, false) &&
                     tries(worth_it);
    if (!has_leapt && begin(network, leap, true)) {
        has_leapt = (knows_.jacobian && tries(worth_it)) ||
                    (learn_jacobian(network, leap) && tries(shortest_leap));
    }
    knows_.leaps += has_leapt ? 1 : 0;
    knows_.pattern = has_leapt ? map_.pattern() : std::vector<double>();
    return has_leapt;
}

void Leaper::judge_jacobian(double turns)
{
    if (turns >= long_leap) {
        knows_.patience = first_patience;
    } else if (knows_.leaps >= knows_.patience) {
        knows_.jacobian.reset();
        knows_.patience = std::min(2 * knows_.patience, most_patience);
    }
}

bool Leaper::begin(Network& network, Leap& leap, bool must_learn)
{
    std::vector<double>& from = leap.points_[0];
    std::ranges::copy(leap.origin_state_, from.begin());
    from.back() = 0.0;
    weigh(from);
    if (must_learn &&
        !(map_.learn(network, std::span(from).first(states_.size()), from.back()) &&
          settle(network, from, turns_after_learning) && wait_for_resemblance(network, from))) {
        return false;
    }
    leap.start_ = leap.origin_ + from.back();
    from.back() = 0.0;
    return map_.change(network, from, first_change_);
}

bool Leaper::learn_jacobian(Network& network, const Leap& leap)
{
    const auto from = std::span(leap.points_[0]).first(states_.size());
    std::ranges::copy(from, stage_.begin());
    double time = 0.0;
    knows_.leaps = 0;
    knows_.jacobian = rough_map_.learn(network, std::span(stage_).first(states_.size()), time)
                          ? TurnJacobian::find(network, rough_map_, from, weights_)
                          : nullptr;
    return knows_.jacobian != nullptr;
}

bool Leaper::find_leap(Network& network, Leap& leap, double& turns, double least, double limit)
{
    const double room = 0.99 * (limit - leap.start_) / first_change_.back() - 6.0;
    double trial = std::floor(std::min(turns, room));
    while (trial >= least || (trial == std::floor(room) && trial >= shortest_leap)) {
        const auto error = attempt(network, leap, trial);
        if (error && *error <= 1.0 && leap.end() < limit) {
            const double growth = std::min(0.8 / std::sqrt(std::max(*error, 1e-6)), 5.0);
            // A limit that cut this leap short says nothing of the next.
            turns = trial < std::floor(turns) ? std::max(turns, growth * trial) : growth * trial;
            return true;
        }
        const double growth = error ? std::clamp(0.8 / std::sqrt(*error), 0.2, 0.8) : 0.3;
        trial = std::floor(growth * trial);
        turns = trial;
    }
    return false;
}

std::optional<double> Leaper::attempt(Network& network, Leap& leap, double turns)
{
    const std::vector<double>& from = leap.points_[0];
    const std::size_t n = from.size();
    const Rosenbrock method(turns);
    const TurnSolver solver(*knows_.jacobian, method.gamma * turns, weights_);
    for (std::size_t i = 0; i < n; ++i) {
        k1_[i] = turns * first_change_[i];
    }
    solver.solve(k1_);
    for (std::size_t i = 0; i < n; ++i) {
        stage_[i] = from[i] + method.place * k1_[i];
    }
    if (!map_.change(network, stage_, k2_, error_allowed(turns))) {
        return {};
    }
    for (std::size_t i = 0; i < n; ++i) {
        k2_[i] = turns * k2_[i] - 2.0 * k1_[i];
    }
    solver.solve(k2_);
    for (std::size_t p = 1; p < 4; ++p) {
        const double share = static_cast<double>(p) / 3.0;
        const auto weight = method.weights(share);
        leap.turns_[p] = share * turns;
        for (std::size_t i = 0; i < n; ++i) {
            leap.points_[p][i] = from[i] + weight[0] * k1_[i] + weight[1] * k2_[i];
        }
    }
    if (!settle(network, leap.points_[3], turns_after_leap, error_allowed(turns))) {
        return {};
    }
    leap.turns_[3] += static_cast<double>(turns_after_leap);
    if (!stays_in_bounds(leap)) {
        return {};
    }
    return error_norm(leap, solver);
}

void Leaper::weigh(std::span<const double> point)
{
    for (std::size_t i = 0; i < states_.size(); ++i) {
        weights_[i] =
            tolerance_.relative * std::abs(point[i]) + tolerance_.absolute * states_[i].scale;
    }
    weights_.back() = 1.0;
}

double Leaper::error_norm(const Leap& leap, const TurnSolver& solver)
{
    // What the trapezoidal rule, through the changes at both ends, makes of the leap: its
    // third-order term is the method's or larger. Filtered of what settles fast.
    const double turns = leap.turns();
    const std::size_t n = first_change_.size();
    for (std::size_t i = 0; i < n; ++i) {
        stage_[i] = leap.points_[3][i] - leap.points_[0][i] -
                    0.5 * ((turns + 1.0) * first_change_[i] + (turns - 1.0) * last_change_[i]);
    }
    solver.solve(stage_);
    // The time may be off by as much as a speed that is off by a tolerance makes of it.
    const double time_off =
        stage_.back() * error_allowed(turns) / (tolerance_.relative * leap.points_[3].back());
    double sum = time_off * time_off;
    for (std::size_t i = 0; i < states_.size(); ++i) {
        const double e = stage_[i] / weights_[i];
        sum += e * e;
    }
    const double norm = std::sqrt(sum / static_cast<double>(n)) / error_allowed(turns);
    return std::isfinite(norm) ? norm : 1e8;
}

bool Leaper::stays_in_bounds(const Leap& leap)
{
    const std::span<double> middle = std::span(stage_).first(states_.size());
    for (const double share : {0.125, 0.25, 0.5, 0.75, 1.0}) {
        leap.at_turn(share * leap.turns(), middle);
        for (std::size_t i = 0; i < states_.size(); ++i) {
            if (!states_[i].allows(middle[i])) {
                return false;
            }
        }
    }
    return true;
}

} // namespace sim
