#pragma once

#include "scenes/shop/review.hpp"

#include <atomic>
#include <mutex>
#include <optional>
#include <thread>

// Trying a work order out before students get it, and what follows from it.

namespace scenes {

/// Tries an order out beside the window: simulates all that its checks can read, then does good
/// work on it.
///
/// The table is stored as it grows, so that work broken off goes on where it was.
class OrderTrial {
public:
    enum class Stage { simulating, working, over };

    OrderTrial(std::shared_ptr<const shop::Order> order, std::string store, unsigned threads);
    /// Breaks the work off and waits until it stands still, which can take seconds.
    ~OrderTrial();
    OrderTrial(const OrderTrial&) = delete;
    OrderTrial& operator=(const OrderTrial&) = delete;

    /// Breaks the work off; it is over a little later.
    void cancel() { is_cancelled_ = true; }
    [[nodiscard]] bool is_cancelled() const { return is_cancelled_; }

    [[nodiscard]] const std::shared_ptr<const shop::Order>& order() const { return order_; }
    [[nodiscard]] Stage stage() const { return stage_; }
    /// How much is simulated, from 0 to 1.
    [[nodiscard]] double share() const;
    /// What there is to say of the order; null before that is known, or when it was broken off.
    [[nodiscard]] std::shared_ptr<const shop::Review> review() const;
    /// Why it could not be tried; empty while nothing is wrong.
    [[nodiscard]] std::string trouble() const;

private:
    void work(unsigned threads);

    std::shared_ptr<const shop::Order> order_;
    std::string store_;
    std::atomic<bool> is_cancelled_{false};
    std::atomic<Stage> stage_{Stage::simulating};
    std::atomic<std::size_t> done_{0};
    std::atomic<std::size_t> all_{0};
    mutable std::mutex lock_; ///< over what follows
    std::shared_ptr<const shop::Review> review_;
    std::string trouble_;
    std::jthread thread_; ///< last: it uses all the others
};

/// What may be spent on an order.
struct OrderBudget {
    double minutes = 0.0;
    double money = 0.0;
};

/// Half as much again as good work takes, rounded up to the next five.
OrderBudget suggested_budget(const shop::Path& good);

/// What the cheapest permitted cure of what is hidden comes down to, or that the machine is not
/// worth it; nothing when no permitted repair cures.
std::optional<shop::Advice> suggested_advice(const shop::Order& order);

/// What is hidden and what a look at it shows, in the chosen language.
std::string suggested_finding(const shop::Order& order);

} // namespace scenes
