#pragma once

#include "scenes/shop/marking.hpp"

namespace shop {

/// What there is to say about a work order before students get it.
struct Review {
    std::vector<std::string> refusals; ///< why it cannot be given: nobody could solve it, or a
                                       ///< sound machine would fail
    std::vector<std::string> warnings; ///< what an instructor should know
    std::vector<std::string> alike;    ///< faults that its checks cannot tell from what it hides
    std::vector<std::string> unmeant;  ///< of those, the ones that the order does not allow for
    std::optional<Advice> advice;      ///< of good work
    Path good;
    Marks marks; ///< of good work

    [[nodiscard]] bool is_good() const { return refusals.empty(); }
};

/// Tries an order out: does a sound machine pass, does the hidden fault show, do permitted repairs
/// cure it, can the permitted checks find it, is good work within the budget.
Review review(const std::shared_ptr<const Order>& order, const Table& table);
/// The same; nothing when it was cancelled.
std::optional<Review> review(const std::shared_ptr<const Order>& order, const Table& table,
                             const std::atomic<bool>& is_cancelled);

/// The permitted repairs that undo what an order hides, the cheapest for each fault; fewer than
/// there are faults when one cannot be undone.
std::vector<const Repair*> cures(const Order& order);

} // namespace shop
