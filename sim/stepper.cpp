#include "stepper.hpp"

#include "error.hpp"

#include <algorithm>
#include <cmath>

// The stages, with W = I/(h gamma) - J:
//   W k_i = f(y + sum_j a_ij k_j) + sum_j c_ij k_j / h,   y_new = y + sum_j m_j k_j.
// The last stage is the error estimate (the embedded third-order result is stage six's argument).

namespace sim {

namespace {
constexpr double gamma = 0.25;
constexpr std::size_t stage_count = 6;
using Row = std::array<double, 5>;
constexpr Row fifth{1.221224509226641, 6.019134481288629, 12.53708332932087, -0.6878860361058950,
                    0.0};
constexpr std::array<Row, stage_count> a{{
    {},
    {1.544},
    {0.9466785280815826, 0.2557011698983284},
    {3.314825187068521, 2.896124015972201, 0.9986419139977817},
    fifth,
    {fifth[0], fifth[1], fifth[2], fifth[3], 1.0},
}};
constexpr std::array<Row, stage_count> c{{
    {},
    {-5.6688},
    {-2.430093356833875, -0.2063599157091915},
    {-0.1073529058151375, -9.594562251023355, -20.47028614809616},
    {7.496443313967647, -10.24680431464352, -33.99990352819905, 11.70890893206160},
    {8.083246795921522, -7.981132988064893, -31.52159432874371, 16.31930543123136,
     -6.058818238834054},
}};
constexpr Row bend{10.12623508344586, -7.487995877610167, -34.80091861555747, -7.992771707568823,
                   1.025137723295662};
constexpr Row twist{-0.6762803392801253, 6.087714651680015, 16.43084320892478, 24.76722511418386,
                    -6.594389125716872};
constexpr double shortest = 1e-13;
} // namespace

Step::Step(std::size_t state_count)
    : first_(state_count), last_(state_count), bend_(state_count), twist_(state_count)
{
}

void Step::at(double time, std::span<double> state) const
{
    const double t = share(time);
    for (std::size_t i = 0; i < state.size(); ++i) {
        state[i] = interior(i, t);
    }
}

double Step::at(double time, std::size_t state) const
{
    return interior(state, share(time));
}

double Step::share(double time) const
{
    return length_ > 0.0 ? std::clamp((time - start_) / length_, 0.0, 1.0) : 1.0;
}

double Step::interior(std::size_t state, double t) const
{
    const double rest = 1.0 - t;
    return first_[state] * rest + t * (last_[state] + rest * (bend_[state] + t * twist_[state]));
}

Stepper::Stepper(const Network& network, Tolerance tolerance)
    : tolerance_(tolerance),
      states_(network.states().begin(), network.states().end()),
      from_(states_.size()),
      rates_(states_.size()),
      trial_(states_.size()),
      jacobian_(network.pattern().slot_count()),
      matrix_(network.pattern().slot_count()),
      factors_(network.pattern())
{
    for (auto& k : k_) {
        k.resize(states_.size());
    }
}

void Stepper::begin(Step& step, double time, std::span<const double> state)
{
    step.start_ = time;
    step.length_ = 0.0;
    std::ranges::copy(state, step.first_.begin());
    std::ranges::copy(state, step.last_.begin());
}

void Stepper::advance(Network& network, Step& step, double& length, double limit)
{
    const double start = step.end();
    std::ranges::copy(step.last_, from_.begin());
    network.differentiate(from_, rates_, jacobian_);
    // The free step comes first even when a command will cut it short: what is tried must not
    // depend on whether the command was known beforehand.
    const std::size_t rejected_before = work_.rejected;
    double taken = find_step(network, step, start, length);
    // Right after a refusal the next step may not be longer: a kink is near.
    const bool was_refused = work_.rejected > rejected_before;
    length = taken * (was_refused ? std::min(growth(), 1.0) : growth());
    if (start + taken > limit) {
        taken = find_step(network, step, start, limit - start);
    }
    store(step, start, taken);
}

std::optional<double> Stepper::repeat(Network& network, Step& step, double length)
{
    const double start = step.end();
    std::ranges::copy(step.last_, from_.begin());
    network.differentiate(from_, rates_, jacobian_);
    if (attempt(network, length) == Verdict::out_of_bounds ||
        first_out_of_bounds() < states_.size()) {
        return {};
    }
    fit_interior(step);
    store(step, start, length);
    return error_;
}

void Stepper::store(Step& step, double start, double taken)
{
    step.start_ = start;
    step.length_ = taken;
    std::ranges::copy(from_, step.first_.begin());
    std::ranges::copy(trial_, step.last_.begin());
    ++work_.steps;
}

double Stepper::growth() const
{
    return std::clamp(0.9 / std::sqrt(std::sqrt(std::max(error_, 1e-8))), 0.2, 2.0);
}

double Stepper::find_step(Network& network, Step& step, double start, double trial)
{
    for (;;) {
        const Verdict verdict = attempt(network, trial);
        if (verdict == Verdict::accepted) {
            fit_interior(step);
            return trial;
        }
        ++work_.rejected;
        trial *= verdict == Verdict::out_of_bounds ? 0.25 : std::clamp(growth(), 0.1, 0.8);
        if (trial < shortest) {
            throw NumericsError("the model cannot go on at " + std::to_string(start) +
                                " s: state " + states_[culprit_].name + " at " +
                                std::to_string(trial_[culprit_]));
        }
    }
}

void Stepper::stage(Network& network, std::size_t number, double inverse_length)
{
    const std::size_t n = states_.size();
    auto& k = k_[number];
    if (number == 0) {
        std::ranges::copy(rates_, k.begin());
    } else {
        std::ranges::copy(from_, trial_.begin());
        for (std::size_t j = 0; j < number; ++j) {
            const double weight = a[number][j];
            for (std::size_t i = 0; i < n && weight != 0.0; ++i) {
                trial_[i] += weight * k_[j][i];
            }
        }
        network.evaluate(trial_, k);
        ++work_.evaluations;
        for (std::size_t j = 0; j < number; ++j) {
            const double weight = c[number][j] * inverse_length;
            for (std::size_t i = 0; i < n; ++i) {
                k[i] += weight * k_[j][i];
            }
        }
    }
    factors_.solve(k);
}

Stepper::Verdict Stepper::attempt(Network& network, double length)
{
    const std::size_t n = states_.size();
    const double inverse = 1.0 / length;
    for (std::size_t s = 0; s < matrix_.size(); ++s) {
        matrix_[s] = -jacobian_[s];
    }
    for (std::size_t i = 0; i < n; ++i) {
        matrix_[network.pattern().diagonal_slot(i)] += inverse / gamma;
    }
    ++work_.factorisations;
    if (!network.pattern().factor(matrix_, factors_)) {
        return Verdict::out_of_bounds;
    }
    for (std::size_t s = 0; s < stage_count; ++s) {
        stage(network, s, inverse);
    }
    for (std::size_t i = 0; i < n; ++i) {
        trial_[i] += k_[5][i];
    }
    error_ = error_norm();
    if (!(error_ <= 1.0)) {
        return Verdict::too_rough;
    }
    const std::size_t out = first_out_of_bounds();
    if (out < n) {
        culprit_ = out;
        return Verdict::out_of_bounds;
    }
    return Verdict::accepted;
}

void Stepper::fit_interior(Step& step) const
{
    for (std::size_t i = 0; i < states_.size(); ++i) {
        step.bend_[i] = 0.0;
        step.twist_[i] = 0.0;
        for (std::size_t j = 0; j < 5; ++j) {
            step.bend_[i] += bend[j] * k_[j][i];
            step.twist_[i] += twist[j] * k_[j][i];
        }
    }
}

double Stepper::error_norm() const
{
    double sum = 0.0;
    for (std::size_t i = 0; i < states_.size(); ++i) {
        const double size = std::max(std::abs(from_[i]), std::abs(trial_[i]));
        const double e =
            k_[5][i] / (tolerance_.relative * size + tolerance_.absolute * states_[i].scale);
        sum += e * e;
    }
    const double norm = std::sqrt(sum / static_cast<double>(states_.size()));
    return std::isfinite(norm) ? norm : 1e8;
}

std::size_t Stepper::first_out_of_bounds() const
{
    for (std::size_t i = 0; i < states_.size(); ++i) {
        if (!states_[i].allows(trial_[i])) {
            return i;
        }
    }
    return states_.size();
}

} // namespace sim
