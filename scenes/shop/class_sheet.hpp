#pragma once

#include "scenes/shop/marking.hpp"
#include "scenes/shop/path_drawing.hpp"

#include <span>

// What becomes of marked records: a table, a page to print, statements for a learning system.

namespace shop {

/// One student's work, replayed and marked.
struct Marked {
    std::string student; ///< may be empty
    std::string file;    ///< the record's
    std::shared_ptr<const Order> order;
    Course work;
    Marks marks;
    Course good;
};

/// One row a record: student, order, marks, minutes, money, finding.
///
/// source:  Y. Shafranovich, RFC 4180, 2005
std::string class_csv(std::span<const Marked> all);

/// A page of all of them, each with its path drawn beside good work's and told line by
/// line, that prints well.
///
/// source:  WHATWG HTML Living Standard
std::string class_html(std::span<const Marked> all);

/// The same as xAPI statements in a JSON list, one for each action and one for the whole.
///
/// source:  IEEE 9274.1.1-2023 (xAPI), by its predecessor 1.0.3, part 2: statements (from memory)
std::string xapi_statements(std::span<const Marked> all);

/// A job sheet's line in words: what was done, and what was read.
std::string done_text(const Order& order, const JobLine& line);
std::string read_text(const Order& order, const JobLine& line);

/// A text as it may stand in a page.
std::string html_text(std::string_view text);

} // namespace shop
