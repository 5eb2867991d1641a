#pragma once

#include "scenes/shop/policy.hpp"

#include <string>
#include <vector>

// How work on an order went, as a drawing for the class sheet.

namespace shop {

/// Work on an order, and what could be known at each of its lines.
struct Course {
    std::vector<JobLine> lines;
    std::vector<double> doubt; ///< bits before the first line and after each
};

/// The doubt about the cause that is left to one who takes every reading for what it is worth.
Course course_of(const Order& order, const Table& table, std::vector<JobLine> lines);

/// A student's work and good work over the bench's minutes, as SVG to stand in a page: the doubt
/// that is left as two curves, below them what was done when, numbered as the lines are. Checks are
/// open boxes, repairs filled ones.
///
/// source:  W3C, Scalable Vector Graphics 1.1
std::string course_svg(const Course& own, const Course& good);

} // namespace shop
