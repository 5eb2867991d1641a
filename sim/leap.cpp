#include "leap.hpp"

#include <algorithm>
#include <cmath>

namespace sim {
namespace {
/// Leaps shorter than this are not worth their turns.
constexpr double shortest_leap = 12.0;
/// Longest leap, turns: of 123 stages.
constexpr double longest_leap = 8000.0;
/// The map's changes lie between 0 and this, times minus one; 1 if all multipliers are positive.
constexpr double spectral_radius = 1.2;
/// Turns let go by after steps have been learnt, whose own errors are not those of the steps
/// before.
constexpr std::size_t turns_after_learning = 8;
/// A leap may be off by as many tolerances as it has this many turns: turns followed one by one,
/// each of some thirty steps, are off by more.
constexpr double turns_of_tolerance = 30.0;
/// Turns let go by after a leap.
constexpr std::size_t turns_after_leap = 2;

/// The coefficients of a method of `stages` stages; see the source named in the header.
class Chebyshev {
public:
    Chebyshev(std::size_t stages, double turns)
        : w0_(1.0 + damping / static_cast<double>(stages * stages))
    {
        T_.assign(stages + 1, 1.0);
        std::vector<double> first(stages + 1, 0.0);
        std::vector<double> second(stages + 1, 0.0);
        T_[1] = w0_;
        first[1] = 1.0;
        for (std::size_t j = 2; j <= stages; ++j) {
            T_[j] = 2.0 * w0_ * T_[j - 1] - T_[j - 2];
            first[j] = 2.0 * T_[j - 1] + 2.0 * w0_ * first[j - 1] - first[j - 2];
            second[j] = 4.0 * first[j - 1] + 2.0 * w0_ * second[j - 1] - second[j - 2];
        }
        // After n turns a mode of change w has grown by (1 + w)^n, not by e^(n w): its second-order
        // term is n (n - 1) / 2 w^2.
        const double discrete = 1.0 - 1.0 / turns;
        w1_ = discrete * first[stages] / second[stages];
        b_.resize(stages + 1);
        for (std::size_t j = 2; j <= stages; ++j) {
            b_[j] = second[j] / (discrete * first[j] * first[j]);
        }
        b_[0] = b_[1] = b_[2];
        place_.resize(stages + 1);
        for (std::size_t j = 0; j <= stages; ++j) {
            place_[j] = b_[j] * w1_ * first[j];
        }
    }
    [[nodiscard]] double first_weight() const { return b_[1] * w1_; }
    [[nodiscard]] double mu(std::size_t j) const { return 2.0 * b_[j] * w0_ / b_[j - 1]; }
    [[nodiscard]] double nu(std::size_t j) const { return -b_[j] / b_[j - 2]; }
    [[nodiscard]] double mu_change(std::size_t j) const { return 2.0 * b_[j] * w1_ / b_[j - 1]; }
    /// Where a stage stands, as a share of the leap.
    [[nodiscard]] double place(std::size_t j) const { return place_[j]; }
    [[nodiscard]] double gamma_change(std::size_t j) const
    {
        return -(1.0 - b_[j - 1] * T_[j - 1]) * mu_change(j);
    }

private:
    static constexpr double damping = 2.0 / 13.0;
    double w0_;
    double w1_ = 0.0;
    std::vector<double> T_;
    std::vector<double> b_;
    std::vector<double> place_;
};

std::size_t stages_for(double turns)
{
    constexpr double reach = 0.653; // of s^2, with the damping above
    return std::max<std::size_t>(
        3, static_cast<std::size_t>(std::ceil(std::sqrt(1.0 + turns * spectral_radius / reach))));
}
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
    constexpr double share = 0.1;
    return {share * tolerance.relative, share * tolerance.absolute};
}

Leaper::Leaper(const Network& network, Tolerance tolerance)
    : tolerance_(tolerance),
      states_(network.states().begin(), network.states().end()),
      map_(network, turn_tolerance(tolerance)),
      from_change_(states_.size() + 1),
      before_(from_change_),
      stage_(from_change_),
      next_(from_change_),
      change_(from_change_)
{
}

bool Leaper::change(Network& network, std::span<const double> point, std::span<double> out)
{
    std::ranges::copy(point, out.begin());
    const auto period = map_.apply(network, out.first(states_.size()));
    if (!period) {
        return false;
    }
    for (std::size_t i = 0; i < states_.size(); ++i) {
        out[i] -= point[i];
    }
    out.back() = *period;
    return true;
}

bool Leaper::settle(Network& network, std::vector<double>& point, std::size_t turns)
{
    for (std::size_t k = 0; k < turns; ++k) {
        const auto period = map_.apply(network, std::span(point).first(states_.size()));
        if (!period) {
            return false;
        }
        point.back() += *period;
    }
    return true;
}

bool Leaper::run_stages(Network& network, Leap& leap, double turns)
{
    const std::size_t stages = stages_for(turns);
    const Chebyshev method(stages, turns);
    const std::vector<double>& from = leap.points_[0];
    const std::size_t n = from.size();
    std::ranges::copy(from, before_.begin());
    for (std::size_t i = 0; i < n; ++i) {
        stage_[i] = from[i] + method.first_weight() * turns * from_change_[i];
    }
    std::size_t point = 1;
    for (std::size_t j = 2; j <= stages; ++j) {
        if (!change(network, stage_, change_)) {
            return false;
        }
        const double mu = method.mu(j);
        const double nu = method.nu(j);
        const double mu_change = method.mu_change(j) * turns;
        const double gamma_change = method.gamma_change(j) * turns;
        for (std::size_t i = 0; i < n; ++i) {
            next_[i] = (1.0 - mu - nu) * from[i] + mu * stage_[i] + nu * before_[i] +
                       mu_change * change_[i] + gamma_change * from_change_[i];
        }
        before_.swap(stage_);
        stage_.swap(next_);
        // Two stages on the way, at about a quarter and over a half of it, are kept.
        if (point < 3 && 4 * j >= (point + 1) * stages) {
            leap.turns_[point] = method.place(j) * turns;
            std::ranges::copy(stage_, leap.points_[point].begin());
            ++point;
        }
    }
    leap.turns_[3] = turns;
    std::ranges::copy(stage_, leap.points_[3].begin());
    return true;
}

bool Leaper::leap(Network& network, Leap& leap, double time, std::span<const double> state,
                  double& turns, double limit)
{
    leap.origin_ = time;
    std::ranges::copy(state, leap.origin_state_.begin());
    turns = std::clamp(turns, shortest_leap, longest_leap);
    Verdict verdict = has_pattern_ ? find_leap(network, leap, false, turns, limit) : Verdict::lost;
    if (verdict == Verdict::lost) {
        verdict = find_leap(network, leap, true, turns, limit);
    }
    has_pattern_ = verdict == Verdict::leapt;
    return has_pattern_;
}

Leaper::Verdict Leaper::find_leap(Network& network, Leap& leap, bool must_learn, double& turns,
                                  double limit)
{
    std::vector<double>& from = leap.points_[0];
    std::ranges::copy(leap.origin_state_, from.begin());
    from.back() = 0.0;
    if (must_learn && !(map_.learn(network, std::span(from).first(states_.size()), from.back()) &&
                        settle(network, from, turns_after_learning))) {
        return Verdict::lost;
    }
    leap.start_ = leap.origin_ + from.back();
    from.back() = 0.0;
    if (!change(network, from, from_change_)) {
        return Verdict::lost;
    }
    const double room = 0.99 * (limit - leap.start_) / from_change_.back() - 4.0;
    double trial = std::floor(std::min(turns, room));
    while (trial >= shortest_leap) {
        const auto error = attempt(network, leap, trial);
        if (!error && !must_learn) {
            return Verdict::lost;
        }
        const double growth =
            error ? std::clamp(0.8 / std::sqrt(std::max(*error, 1e-6)), 0.2, 3.0) : 0.3;
        if (error && *error <= 1.0 && leap.end() < limit) {
            // A limit that cut this leap short says nothing of the next.
            turns = trial < std::floor(turns) ? std::max(turns, growth * trial) : growth * trial;
            return Verdict::leapt;
        }
        trial = std::floor(std::min(growth, 0.8) * trial);
        turns = trial;
    }
    return Verdict::too_short;
}

std::optional<double> Leaper::attempt(Network& network, Leap& leap, double turns)
{
    // Turns let go by settle what a Chebyshev method damps but little.
    if (!run_stages(network, leap, turns) || !settle(network, leap.points_[3], turns_after_leap)) {
        return {};
    }
    leap.turns_[3] += static_cast<double>(turns_after_leap);
    if (!stays_in_bounds(leap)) {
        return {};
    }
    return error_norm(leap);
}

double Leaper::error_norm(const Leap& leap) const
{
    // The cubic's third derivative; the method has 0.1 of its third-order term for 1/6.
    std::array<double, 4> weight{};
    for (std::size_t p = 0; p < 4; ++p) {
        weight[p] = (1.0 / 6.0 - 0.1) / 0.1 * std::pow(leap.turns(), 3);
        for (std::size_t q = 0; q < 4; ++q) {
            weight[p] /= p == q ? 1.0 : leap.turns_[p] - leap.turns_[q];
        }
    }
    const std::size_t n = states_.size();
    double sum = 0.0;
    for (std::size_t i = 0; i <= n; ++i) {
        double off = 0.0;
        double size = 0.0;
        for (std::size_t p = 0; p < 4; ++p) {
            off += weight[p] * leap.points_[p][i];
            size = std::max(size, std::abs(leap.points_[p][i]));
        }
        const double scale = i < n ? states_[i].scale : 0.0;
        const double e = off / (tolerance_.relative * size + tolerance_.absolute * scale);
        sum += e * e;
    }
    const double allowed = 1.0 + leap.turns() / turns_of_tolerance;
    const double norm = std::sqrt(sum / static_cast<double>(n + 1)) / allowed;
    return std::isfinite(norm) ? norm : 1e8;
}

bool Leaper::stays_in_bounds(const Leap& leap)
{
    const std::span<double> middle = std::span(next_).first(states_.size());
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
