#include "sparse_lu.hpp"

#include <cmath>
#include <limits>
#include <stdexcept>

namespace sim {

namespace {

constexpr std::size_t absent = std::numeric_limits<std::size_t>::max();

/// The row whose elimination now would touch the fewest others (Markowitz count).
std::size_t cheapest_pivot(const std::vector<std::vector<char>>& filled,
                           const std::vector<char>& done)
{
    const std::size_t n = filled.size();
    std::size_t best = absent;
    std::size_t best_cost = absent;
    for (std::size_t p = 0; p < n; ++p) {
        if (done[p] != 0) {
            continue;
        }
        std::size_t rows = 0;
        std::size_t columns = 0;
        for (std::size_t i = 0; i < n; ++i) {
            rows += done[i] == 0 && i != p && filled[i][p] != 0 ? 1U : 0U;
            columns += done[i] == 0 && i != p && filled[p][i] != 0 ? 1U : 0U;
        }
        if (rows * columns < best_cost) {
            best = p;
            best_cost = rows * columns;
        }
    }
    return best;
}

} // namespace

SparseLu::SparseLu(std::size_t size, std::span<const std::pair<std::size_t, std::size_t>> entries)
    : size_(size), slot_of_(size * size, absent), diagonal_(size)
{
    std::vector<std::vector<char>> filled(size, std::vector<char>(size, 0));
    for (const auto& [row, column] : entries) {
        filled[row][column] = 1;
    }
    for (std::size_t i = 0; i < size; ++i) {
        filled[i][i] = 1;
    }
    plan(std::move(filled));
}

namespace {

/// Marks the entries that eliminating row `p` brings into the rows still to come.
void fill_in(std::vector<std::vector<char>>& filled, const std::vector<char>& done, std::size_t p)
{
    for (std::size_t i = 0; i < filled.size(); ++i) {
        if (done[i] != 0 || filled[i][p] == 0) {
            continue;
        }
        for (std::size_t j = 0; j < filled.size(); ++j) {
            filled[i][j] = filled[i][j] != 0 || (done[j] == 0 && filled[p][j] != 0) ? 1 : 0;
        }
    }
}

std::uint32_t small(std::size_t value)
{
    return static_cast<std::uint32_t>(value);
}

} // namespace

void SparseLu::plan(std::vector<std::vector<char>> filled)
{
    std::vector<std::size_t> order;
    std::vector<char> done(size_, 0);
    while (order.size() < size_) {
        const std::size_t p = cheapest_pivot(filled, done);
        order.push_back(p);
        done[p] = 1;
        fill_in(filled, done, p);
    }
    for (std::size_t i = 0; i < size_; ++i) {
        for (std::size_t j = 0; j < size_; ++j) {
            if (filled[i][j] != 0) {
                slot_of_[i * size_ + j] = slot_count_++;
            }
        }
        diagonal_[i] = slot_of_[i * size_ + i];
    }
    std::vector<char> gone(size_, 0);
    for (const std::size_t p : order) {
        gone[p] = 1;
        plan_pivot(p, gone);
    }
}

void SparseLu::plan_pivot(std::size_t p, const std::vector<char>& gone)
{
    Pivot pivot{small(slot(p, p)), small(p), small(rows_.size()), 0, small(upper_.size()), 0};
    for (std::size_t j = 0; j < size_; ++j) {
        if (gone[j] == 0 && slot_of_[p * size_ + j] != absent) {
            upper_.push_back({small(slot(p, j)), small(j)});
        }
    }
    pivot.upper_end = small(upper_.size());
    for (std::size_t i = 0; i < size_; ++i) {
        if (gone[i] != 0 || slot_of_[i * size_ + p] == absent) {
            continue;
        }
        rows_.push_back({small(slot(i, p)), small(i), small(target_.size())});
        for (std::uint32_t u = pivot.upper_begin; u < pivot.upper_end; ++u) {
            target_.push_back(small(slot(i, upper_[u].column)));
        }
    }
    pivot.rows_end = small(rows_.size());
    pivots_.push_back(pivot);
}

std::size_t SparseLu::slot(std::size_t row, std::size_t column) const
{
    const std::size_t found = slot_of_.at(row * size_ + column);
    if (found == absent) {
        throw std::out_of_range("entry outside the planned pattern");
    }
    return found;
}

bool SparseLu::factor(std::span<double> slots, Factors& factors) const
{
    std::uint32_t lower_end = 0;
    std::uint32_t upper_end = 0;
    for (std::size_t k = 0; k < pivots_.size(); ++k) {
        const Pivot& pivot = pivots_[k];
        const double value = slots[pivot.slot];
        if (!(std::abs(value) > 1e-200)) {
            return false;
        }
        const double inverse = 1.0 / value;
        const std::uint32_t upper_begin = upper_end;
        for (std::uint32_t u = pivot.upper_begin; u < pivot.upper_end; ++u) {
            const double upper = slots[upper_[u].slot];
            factors.upper_[upper_end] = {upper, upper_[u].column, u - pivot.upper_begin};
            upper_end += static_cast<std::uint32_t>(upper != 0.0); // a zero is written over
        }
        for (std::uint32_t r = pivot.rows_begin; r < pivot.rows_end; ++r) {
            const Row& row = rows_[r];
            const double factor = slots[row.lower] * inverse;
            if (factor == 0.0) {
                continue;
            }
            factors.lower_[lower_end++] = {factor, row.row, 0};
            const std::uint32_t* target = target_.data() + row.target_begin;
            for (std::uint32_t u = upper_begin; u < upper_end; ++u) {
                slots[target[factors.upper_[u].index]] -= factor * factors.upper_[u].value;
            }
        }
        factors.pivots_[k] = {inverse, pivot.row, lower_end, upper_end};
    }
    return true;
}

SparseLu::Factors::Factors(const SparseLu& lu)
    : pivots_(lu.pivots_.size()), lower_(lu.rows_.size()), upper_(lu.upper_.size())
{
}

void SparseLu::Factors::solve(std::span<double> right_side) const
{
    std::uint32_t l = 0;
    for (const Pivot& pivot : pivots_) {
        const double x = right_side[pivot.row];
        for (; l < pivot.lower_end; ++l) {
            right_side[lower_[l].place] -= lower_[l].value * x;
        }
    }
    for (std::size_t k = pivots_.size(); k > 0; --k) {
        const Pivot& pivot = pivots_[k - 1];
        double x = right_side[pivot.row];
        for (std::uint32_t u = k > 1 ? pivots_[k - 2].upper_end : 0; u < pivot.upper_end; ++u) {
            x -= upper_[u].value * right_side[upper_[u].place];
        }
        right_side[pivot.row] = x * pivot.inverse;
    }
}

} // namespace sim
