#pragma once

#include "turn.hpp"

#include <memory>

namespace sim {

/// How the change over one turn of a crank, of the states and of the time, depends on the states
/// that the turn begins with.
struct TurnJacobian {
    /// shape:   row by row, one row and one column per state and a last one for the time, whose
    ///          column is empty
    std::vector<double> slopes;

    /// Finds it by differences, one disturbed turn per state.
    ///
    /// The audited sums of the states (fuel, air) do not change over a turn whatever it begins
    /// with; that is put right to the last digit, where differences have only some of them.
    /// \param from     states at top dead centre
    /// \param weights  sizes of the states and the time, to tell large from small
    /// returns:  nothing when a disturbed turn cannot be followed
    static std::shared_ptr<const TurnJacobian> find(Network& network, TurnMap& map,
                                                    std::span<const double> from,
                                                    std::span<const double> weights);
};

/// Solves (I - reach J) k = b for a Jacobian J of the turn.
class TurnSolver {
public:
    /// \param weights  sizes of the states and the time, by which rows and columns are scaled
    TurnSolver(const TurnJacobian& jacobian, double reach, std::span<const double> weights);
    ~TurnSolver();
    TurnSolver(const TurnSolver&) = delete;
    TurnSolver& operator=(const TurnSolver&) = delete;
    TurnSolver(TurnSolver&&) = delete;
    TurnSolver& operator=(TurnSolver&&) = delete;

    /// Solves in place.
    void solve(std::span<double> right_side) const;

private:
    struct Factors;
    std::unique_ptr<Factors> factors_;
};

} // namespace sim
