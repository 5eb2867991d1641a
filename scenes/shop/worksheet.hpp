#pragma once

#include "scenes/shop/review.hpp"

// A work order on paper, in the chosen language.

namespace shop {

/// What a student gets: the customer's card, what may be done and what it takes, an empty job
/// sheet, room for finding, advice and estimate, and the cautions. Nothing of it depends on what is
/// hidden.
std::string worksheet_html(const Order& order);

/// What the instructor keeps: what is hidden, the finding, good work step by step with what was
/// read, how marks are given, and what the permitted checks cannot tell apart.
std::string answer_key_html(const Order& order, const Review& review);

} // namespace shop
