#include "sim/sparse_lu.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <set>
#include <stdexcept>

using namespace sim;

namespace {

using Pattern = std::vector<std::pair<std::size_t, std::size_t>>;
using Matrix = std::vector<std::vector<double>>;

/// A random pattern with about `per_row` entries in each row beside the diagonal.
Pattern random_pattern(std::size_t size, double per_row, std::mt19937_64& random)
{
    std::bernoulli_distribution is_there(std::min(per_row / static_cast<double>(size), 1.0));
    Pattern pattern;
    for (std::size_t i = 0; i < size; ++i) {
        for (std::size_t j = 0; j < size; ++j) {
            if (i != j && is_there(random)) {
                pattern.emplace_back(i, j);
            }
        }
    }
    return pattern;
}

/// Random numbers in the pattern, the diagonal large enough to need no pivoting.
Matrix random_matrix(std::size_t size, const Pattern& pattern, std::mt19937_64& random,
                     bool has_holes)
{
    std::uniform_real_distribution<double> number(-1.0, 1.0);
    Matrix matrix(size, std::vector<double>(size, 0.0));
    for (const auto& [row, column] : pattern) {
        matrix[row][column] = has_holes && number(random) > 0.0 ? 0.0 : number(random);
    }
    for (std::size_t i = 0; i < size; ++i) {
        double sum = 1.0;
        for (std::size_t j = 0; j < size; ++j) {
            sum += std::abs(matrix[i][j]);
        }
        matrix[i][i] = number(random) < 0.0 ? -sum : sum;
    }
    return matrix;
}

std::vector<double> slots_of(const SparseLu& lu, const Matrix& matrix, const Pattern& pattern)
{
    std::vector<double> slots(lu.slot_count(), 0.0);
    for (const auto& [row, column] : pattern) {
        slots[lu.slot(row, column)] = matrix[row][column];
    }
    for (std::size_t i = 0; i < matrix.size(); ++i) {
        slots[lu.diagonal_slot(i)] = matrix[i][i];
    }
    return slots;
}

/// Gaussian elimination with partial pivoting on the whole matrix.
std::vector<double> dense_solution(Matrix matrix, std::vector<double> right)
{
    const std::size_t n = right.size();
    for (std::size_t p = 0; p < n; ++p) {
        std::size_t best = p;
        for (std::size_t i = p; i < n; ++i) {
            best = std::abs(matrix[i][p]) > std::abs(matrix[best][p]) ? i : best;
        }
        std::swap(matrix[p], matrix[best]);
        std::swap(right[p], right[best]);
        for (std::size_t i = p + 1; i < n; ++i) {
            const double factor = matrix[i][p] / matrix[p][p];
            for (std::size_t j = p; j < n; ++j) {
                matrix[i][j] -= factor * matrix[p][j];
            }
            right[i] -= factor * right[p];
        }
    }
    for (std::size_t p = n; p-- > 0;) {
        for (std::size_t j = p + 1; j < n; ++j) {
            right[p] -= matrix[p][j] * right[j];
        }
        right[p] /= matrix[p][p];
    }
    return right;
}

} // namespace

TEST_SUITE_BEGIN("sim");

// Outside check: dense Gaussian elimination with partial pivoting.
TEST_CASE("sparse factors solve what dense elimination solves")
{
    std::mt19937_64 random(3);
    std::uniform_real_distribution<double> number(-1.0, 1.0);
    for (const std::size_t size : {1U, 2U, 5U, 17U, 66U}) {
        for (const double per_row : {0.0, 1.0, 3.0, 10.0, 100.0}) {
            CAPTURE(size);
            CAPTURE(per_row);
            const Pattern pattern = random_pattern(size, per_row, random);
            const SparseLu lu(size, pattern);
            SparseLu::Factors factors(lu);
            for (int round = 0; round < 5; ++round) { // one plan serves any numbers
                const Matrix matrix = random_matrix(size, pattern, random, round % 2 == 1);
                std::vector<double> right(size);
                std::ranges::generate(right, [&] { return number(random); });
                auto slots = slots_of(lu, matrix, pattern);
                const auto wanted = dense_solution(matrix, right);
                REQUIRE(lu.factor(slots, factors));
                factors.solve(right);
                for (std::size_t i = 0; i < size; ++i) {
                    CHECK(std::abs(right[i] - wanted[i]) < 1e-12);
                }
            }
        }
    }
}

TEST_CASE("the diagonal is always in the pattern, other entries are refused")
{
    const SparseLu lu(3, Pattern{{0, 2}});
    CHECK(lu.size() == 3);
    CHECK(lu.slot_count() == 4);
    std::set<std::size_t> slots{lu.slot(0, 2)};
    for (std::size_t i = 0; i < 3; ++i) {
        CHECK(lu.slot(i, i) == lu.diagonal_slot(i));
        slots.insert(lu.diagonal_slot(i));
    }
    CHECK(slots.size() == 4);
    CHECK_THROWS_AS(static_cast<void>(lu.slot(2, 0)), std::out_of_range);
    CHECK_THROWS_AS(static_cast<void>(lu.slot(3, 3)), std::out_of_range);
}

// An arrow pointing at the first row fills up when eliminated from the top, not at all from the
// bottom: Duff, Erisman and Reid, ch. 7.
TEST_CASE("the order of elimination avoids fill")
{
    Pattern arrow;
    for (std::size_t i = 1; i < 20; ++i) {
        arrow.emplace_back(0, i);
        arrow.emplace_back(i, 0);
    }
    CHECK(SparseLu(20, arrow).slot_count() == 20 + 2 * 19);
}

TEST_CASE("a singular matrix is reported, not divided by")
{
    const Pattern pattern{{0, 1}, {1, 0}};
    const SparseLu lu(2, pattern);
    SparseLu::Factors factors(lu);
    std::vector<double> slots(lu.slot_count(), 1.0); // rank one
    CHECK_FALSE(lu.factor(slots, factors));
    std::ranges::fill(slots, 0.0);
    CHECK_FALSE(lu.factor(slots, factors));
    std::ranges::fill(slots, std::nan(""));
    CHECK_FALSE(lu.factor(slots, factors));
}

TEST_SUITE_END();
