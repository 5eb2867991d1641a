#pragma once

#include "scenes/shop/policy.hpp"
#include "scenes/shop/reason.hpp"

namespace shop {

/// One line of the marks: what it is for, how much was earned of how much, and why, in
/// sentences with figures.
struct Mark {
    std::string id; ///< the key of its weight in the order
    double got = 0.0;
    double of = 0.0;
    std::vector<Reason> why;
};

struct Marks {
    std::vector<Mark> marks;

    [[nodiscard]] double got() const;
    [[nodiscard]] double of() const;
};

/// Marks an attempt that has been handed in, with the table of its order and good work on it.
///
/// It runs the machine again for what counts as solved, on a copy.
Marks mark(const Attempt& attempt, const Table& table, const Path& good);

} // namespace shop
