#include "scenes/present/marking_work.hpp"

#include "scenes/present/step_back.hpp"

#include <stdexcept>
#include <utility>

namespace scenes {

MarkingWork::MarkingWork(std::shared_ptr<const shop::Order> order, std::string store)
    : order_(std::move(order)), store_(std::move(store)), thread_([this] { work(); })
{
}

MarkingWork::~MarkingWork()
{
    {
        const std::lock_guard guard(lock_); // else the thread could miss it on its way to sleep
        is_cancelled_ = true;
    }
    has_attempt_.notify_all();
}

void MarkingWork::hand_in(const shop::Attempt& attempt)
{
    {
        const std::lock_guard guard(lock_);
        attempt_ = attempt;
    }
    has_attempt_.notify_all();
}

double MarkingWork::share() const
{
    const auto all = static_cast<double>(all_);
    return all > 0.0 ? static_cast<double>(done_) / all : 0.0;
}

std::shared_ptr<const MarkingWork::Result> MarkingWork::result() const
{
    const std::lock_guard guard(lock_);
    return result_;
}

std::string MarkingWork::trouble() const
{
    const std::lock_guard guard(lock_);
    return trouble_;
}

void MarkingWork::work()
{
    step_back();
    try {
        constexpr unsigned threads = 1;
        const auto table = shop::simulate_table(
            *order_, threads, store_,
            [this](std::size_t done, std::size_t all) {
                done_ = done;
                all_ = all;
            },
            is_cancelled_);
        std::unique_lock guard(lock_);
        has_attempt_.wait(guard, [this] { return attempt_ || is_cancelled_; });
        if (!table || is_cancelled_) {
            return;
        }
        const shop::Attempt attempt = *attempt_;
        guard.unlock(); // marking runs the machine again
        auto result = std::make_shared<Result>();
        result->good = shop::good_path(order_, *table);
        result->marks = shop::mark(attempt, *table, result->good);
        guard.lock();
        result_ = std::move(result);
    } catch (const std::runtime_error& error) { // a store or equations
        const std::lock_guard guard(lock_);
        trouble_ = error.what();
    }
}

} // namespace scenes
