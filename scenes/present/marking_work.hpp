#pragma once

#include "scenes/shop/marking.hpp"

#include <atomic>
#include <condition_variable>
#include <mutex>
#include <thread>

namespace scenes {

/// Marks an attempt beside the window: first the table that marking needs, which takes minutes,
/// from when the order is opened; then, once the attempt is handed in, the marks.
///
/// One thread of low priority, so that the window stays fluent. The table is stored as it grows:
/// work that was broken off goes on where it was.
class MarkingWork {
public:
    explicit MarkingWork(std::shared_ptr<const shop::Order> order, std::string store);
    /// Breaks the work off.
    ~MarkingWork();
    MarkingWork(const MarkingWork&) = delete;
    MarkingWork& operator=(const MarkingWork&) = delete;

    /// Hands an attempt in to be marked. A copy of it is run again.
    ///
    /// valid:   attempt.is_handed_in()
    void hand_in(const shop::Attempt& attempt);

    /// How much of the table there is, from 0 to 1.
    [[nodiscard]] double share() const;
    /// The marks, and how good work would have gone; nothing before they are there.
    struct Result {
        shop::Marks marks;
        shop::Path good;
    };
    [[nodiscard]] std::shared_ptr<const Result> result() const;
    /// Why there will be no marks; empty while nothing is wrong.
    [[nodiscard]] std::string trouble() const;

private:
    void work();

    std::shared_ptr<const shop::Order> order_;
    std::string store_;
    std::atomic<bool> is_cancelled_{false};
    std::atomic<std::size_t> done_{0};
    std::atomic<std::size_t> all_{0};
    mutable std::mutex lock_; ///< over what follows
    std::condition_variable has_attempt_;
    std::optional<shop::Attempt> attempt_;
    std::shared_ptr<const Result> result_;
    std::string trouble_;
    std::jthread thread_; ///< last: it uses all the others
};

} // namespace scenes
