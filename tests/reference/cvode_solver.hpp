#pragma once

#include "sim/network.hpp"

#include <memory>
#include <span>
#include <vector>

namespace tests {

/// Where CVODE's Newton iteration gets its matrix from, and how it is factorised.
enum class CvodeMatrix {
    quotient_dense, ///< difference quotients, dense: what CVODE does out of the box
    analytic_dense, ///< the network's own Jacobian, dense
    analytic_klu,   ///< the network's own Jacobian, sparse, factorised by KLU
};

/// What CVODE is asked for.
///
/// relative: of a state's own size; absolute: in units of the state's `scale`
struct CvodeOptions {
    double relative = 1e-9;
    double absolute = 1e-9;
    CvodeMatrix matrix = CvodeMatrix::analytic_klu;
    long most_steps = 100'000'000; ///< in one `advance`, before it gives up
};

/// Counts of the work CVODE did, restarts included.
struct CvodeWork {
    long steps = 0;
    long failed = 0;      ///< steps repeated for their error or for want of convergence
    long evaluations = 0; ///< those for difference quotients included
    long jacobians = 0;
    long factorisations = 0;
};

/// SUNDIALS CVODE (variable-order, variable-step BDF with Newton iteration) on a network.
///
/// source:  A. C. Hindmarsh et al., ACM Trans. Math. Softw. 31 (2005) 363
class CvodeSolver {
public:
    /// The network must outlive the solver.
    ///
    /// throws:  std::runtime_error when CVODE refuses
    CvodeSolver(sim::Network& network, CvodeOptions options);
    ~CvodeSolver();
    CvodeSolver(const CvodeSolver&) = delete;
    CvodeSolver& operator=(const CvodeSolver&) = delete;
    CvodeSolver(CvodeSolver&&) = delete;
    CvodeSolver& operator=(CvodeSolver&&) = delete;

    /// Begins afresh from a time and state, as after a jump.
    void restart(double time, std::span<const double> state);
    /// No internal step goes past this time, for the equations change there.
    void stop_at(double time);
    /// Goes on to a time; the state there is CVODE's own interpolation.
    ///
    /// throws:  std::runtime_error when CVODE gives up
    void advance(double time);

    [[nodiscard]] std::span<const double> state() const;
    [[nodiscard]] CvodeWork work() const;

private:
    struct Memory;
    std::unique_ptr<Memory> memory_;
};

} // namespace tests
