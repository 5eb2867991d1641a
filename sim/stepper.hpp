#pragma once

#include "network.hpp"
#include "tolerance.hpp"

#include <optional>

namespace sim {

/// One accepted step and its interior.
///
/// `at` gives the state anywhere in the step to third order; every linear invariant (mass of fuel,
/// moles of air) holds there as exactly as at the ends.
class Step {
public:
    explicit Step(std::size_t state_count);
    [[nodiscard]] double start() const { return start_; }
    [[nodiscard]] double end() const { return start_ + length_; }
    [[nodiscard]] std::span<const double> first() const { return first_; }
    [[nodiscard]] std::span<const double> last() const { return last_; }
    /// The state at a time within the step.
    void at(double time, std::span<double> state) const;
    /// One of its states at a time within the step.
    [[nodiscard]] double at(double time, std::size_t state) const;
    /// unit:    bytes of memory beside the object's own
    [[nodiscard]] std::size_t heap_size() const { return 4 * first_.size() * sizeof(double); }

private:
    friend class Stepper;
    [[nodiscard]] double share(double time) const;
    [[nodiscard]] double interior(std::size_t state, double t) const;
    double start_ = 0.0;
    double length_ = 0.0;
    std::vector<double> first_;
    std::vector<double> last_;
    std::vector<double> bend_;
    std::vector<double> twist_;
};

/// Counts of the work done, for benchmarks.
struct Work {
    std::size_t steps = 0;
    std::size_t rejected = 0;
    std::size_t evaluations = 0;
    std::size_t factorisations = 0;

    friend Work operator+(const Work& a, const Work& b)
    {
        return {a.steps + b.steps, a.rejected + b.rejected, a.evaluations + b.evaluations,
                a.factorisations + b.factorisations};
    }
};

/// Advances stiff equations: the six-stage Rosenbrock method RODAS of order 4(3).
///
/// L-stable and stiffly accurate. Each step takes one Jacobian, one sparse factorisation and six
/// evaluations, and keeps linear invariants to rounding whatever the step. A step is repeated
/// shorter when its error estimate or a state's bound is exceeded.
/// source:  E. Hairer, G. Wanner, Solving Ordinary Differential Equations II, 2nd ed. 1996,
///          sect. IV.7 and code RODAS (coefficients from memory; order and dense output tested)
class Stepper {
public:
    Stepper(const Network& network, Tolerance tolerance);

    void set_tolerance(Tolerance tolerance) { tolerance_ = tolerance; }

    /// Takes one step from `step.last()`, no longer than to `limit`, and stores it in `step`.
    ///
    /// `length` is the step to try first and becomes the one to try next.
    /// throws:  NumericsError naming the state when even the shortest step fails
    void advance(Network& network, Step& step, double& length, double limit);

    /// Takes one step of just this length from `step.last()`, and gives how many times its error
    /// estimate is what `advance` would allow; nothing when it leaves bounds and is not taken.
    std::optional<double> repeat(Network& network, Step& step, double length);

    /// Makes `step` an empty step that ends at `time` with `state`.
    static void begin(Step& step, double time, std::span<const double> state);

    [[nodiscard]] const Work& work() const { return work_; }

private:
    enum class Verdict { accepted, too_rough, out_of_bounds };
    /// Tries `trial` and shorter until one is accepted; gives its length.
    double find_step(Network& network, Step& step, double start, double trial);
    void store(Step& step, double start, double taken);
    [[nodiscard]] double growth() const;
    Verdict attempt(Network& network, double length);
    void fit_interior(Step& step) const;
    void stage(Network& network, std::size_t number, double inverse_length);
    [[nodiscard]] double error_norm() const;
    [[nodiscard]] std::size_t first_out_of_bounds() const;

    Tolerance tolerance_;
    std::vector<StateInfo> states_;
    std::vector<double> from_;
    std::vector<double> rates_;
    std::vector<double> trial_;
    std::vector<double> jacobian_;
    std::vector<double> matrix_;
    SparseLu::Factors factors_;
    std::array<std::vector<double>, 6> k_;
    double error_ = 0.0;
    std::size_t culprit_ = 0;
    Work work_;
};

} // namespace sim
