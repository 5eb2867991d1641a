#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <utility>
#include <vector>

namespace sim {

/// LU factors of matrices that share one sparsity pattern.
///
/// The order of elimination (least fill first) and every multiply-subtract are worked out once;
/// a factorisation is then one pass over a list of indices, with no search and no allocation.
/// Two thirds of a machine's entries are zero at any moment (a valve that is shut): factors leave
/// them out, since each of them is solved with several times.
/// There is no pivoting: the matrices are I/(h g) - J with a dominant diagonal, and a pivot near
/// nothing is reported so that the caller takes a shorter step.
/// source:  I. S. Duff, A. M. Erisman, J. K. Reid, Direct Methods for Sparse Matrices, 2nd ed.
///          2017, ch. 7 and 9 (from memory)
class SparseLu {
public:
    class Factors;

    /// Plans for a square matrix of `size` rows with entries at (row, column).
    SparseLu(std::size_t size, std::span<const std::pair<std::size_t, std::size_t>> entries);

    [[nodiscard]] std::size_t size() const { return size_; }
    /// How many numbers the factors hold, fill included.
    [[nodiscard]] std::size_t slot_count() const { return slot_count_; }
    /// Where the entry (row, column) is kept among the slots.
    ///
    /// throws:  std::out_of_range when the pattern has no such entry
    [[nodiscard]] std::size_t slot(std::size_t row, std::size_t column) const;
    [[nodiscard]] std::size_t diagonal_slot(std::size_t row) const { return diagonal_[row]; }

    /// Works out the factors of the matrix in `slots`, which is used up; false when a pivot is too
    /// small.
    [[nodiscard]] bool factor(std::span<double> slots, Factors& factors) const;

private:
    struct Row {
        std::uint32_t lower;        ///< slot of the multiplier
        std::uint32_t row;          ///< row it belongs to
        std::uint32_t target_begin; ///< where its slots below the pivot's uppers are in target_
    };
    struct Pivot {
        std::uint32_t slot;
        std::uint32_t row;
        std::uint32_t rows_begin;
        std::uint32_t rows_end;
        std::uint32_t upper_begin;
        std::uint32_t upper_end;
    };
    struct Upper {
        std::uint32_t slot;
        std::uint32_t column;
    };

    void plan(std::vector<std::vector<char>> filled);
    /// Lists what eliminating row `p` does to the rows not yet `gone`.
    void plan_pivot(std::size_t p, const std::vector<char>& gone);

    std::size_t size_;
    std::size_t slot_count_ = 0;
    std::vector<std::size_t> slot_of_;
    std::vector<std::size_t> diagonal_;
    std::vector<Pivot> pivots_;
    std::vector<Row> rows_;
    std::vector<std::uint32_t> target_;
    std::vector<Upper> upper_;
};

/// Factors of one matrix.
class SparseLu::Factors {
public:
    /// Makes room for any matrix with this pattern.
    explicit Factors(const SparseLu& lu);

    /// Solves in place.
    ///
    /// valid:   after `SparseLu::factor`
    void solve(std::span<double> right_side) const;

private:
    friend class SparseLu;
    struct Term {
        double value;
        std::uint32_t place; ///< row of a lower, column of an upper
        std::uint32_t index; ///< of an upper, among those of its pivot
    };
    struct Pivot {
        double inverse;
        std::uint32_t row;
        std::uint32_t lower_end; ///< its lowers begin where those of the pivot before end
        std::uint32_t upper_end;
    };
    std::vector<Pivot> pivots_;
    std::vector<Term> lower_;
    std::vector<Term> upper_;
};

} // namespace sim
