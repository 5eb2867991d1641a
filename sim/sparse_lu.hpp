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
/// There is no pivoting: the matrices are I/(h g) - J with a dominant diagonal, and a pivot near
/// nothing is reported so that the caller takes a shorter step.
/// source:  I. S. Duff, A. M. Erisman, J. K. Reid, Direct Methods for Sparse Matrices, 2nd ed.
///          2017, ch. 7 and 9 (from memory)
class SparseLu {
public:
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

    /// Replaces the matrix in `slots` by its factors; false when a pivot is too small.
    [[nodiscard]] bool factor(std::span<double> slots) const;
    /// Solves in place with factors from `factor`.
    void solve(std::span<const double> slots, std::span<double> right_side) const;

private:
    struct Update {
        std::uint32_t target;
        std::uint32_t upper;
    };
    struct Row {
        std::uint32_t lower;        ///< slot of the multiplier
        std::uint32_t row;          ///< row it belongs to
        std::uint32_t update_begin; ///< its updates in updates_
        std::uint32_t update_end;
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
    std::vector<Update> updates_;
    std::vector<Upper> upper_;
};

} // namespace sim
