#include "scenes/present/order_trial.hpp"

#include "scenes/present/phrase.hpp"
#include "scenes/present/step_back.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace scenes {

OrderTrial::OrderTrial(std::shared_ptr<const shop::Order> order, std::string store,
                       unsigned threads)
    : order_(std::move(order)),
      store_(std::move(store)),
      thread_([this, threads] { work(threads); })
{
}

OrderTrial::~OrderTrial()
{
    is_cancelled_ = true;
}

double OrderTrial::share() const
{
    const auto all = static_cast<double>(all_);
    return all > 0.0 ? static_cast<double>(done_) / all : 0.0;
}

std::shared_ptr<const shop::Review> OrderTrial::review() const
{
    const std::scoped_lock guard(lock_);
    return review_;
}

std::string OrderTrial::trouble() const
{
    const std::scoped_lock guard(lock_);
    return trouble_;
}

void OrderTrial::work(unsigned threads)
{
    step_back();
    try {
        const auto table = shop::simulate_table(
            *order_, threads, store_,
            [this](std::size_t done, std::size_t all) {
                done_ = done;
                all_ = all;
            },
            is_cancelled_);
        if (table && !is_cancelled_) {
            stage_ = Stage::working;
            auto review = shop::review(order_, *table, is_cancelled_);
            const std::scoped_lock guard(lock_);
            if (review) {
                review_ = std::make_shared<const shop::Review>(std::move(*review));
            }
        }
    } catch (const std::runtime_error& error) { // a store or equations
        const std::scoped_lock guard(lock_);
        trouble_ = error.what();
    }
    stage_ = Stage::over;
}

OrderBudget suggested_budget(const shop::Path& good)
{
    const auto allowance = [](double value) {
        constexpr double share = 1.5;
        constexpr double step = 5.0;
        return std::ceil(share * value / step) * step;
    };
    return {allowance(good.minutes), allowance(good.money)};
}

std::optional<shop::Advice> suggested_advice(const shop::Order& order)
{
    const auto cures = shop::cures(order);
    if (cures.empty() || cures.size() < order.answer.faults.size()) {
        return std::nullopt;
    }
    const auto dearest = std::ranges::max_element(
        cures, {}, [&](const shop::Repair* repair) { return order.price(*repair); });
    return shop::is_worth_repairing(order, **dearest) ? shop::advice_for(**dearest)
                                                      : shop::Advice::not_worth;
}

std::string suggested_finding(const shop::Order& order)
{
    std::string finding;
    for (const sim::SetFault& hidden : order.answer.faults) {
        const sim::Fault& fault = *order.workshop->rig->find_fault(hidden.fault);
        finding += (finding.empty() ? "" : " ") + std::string(translated(fault.title)) + ". " +
                   std::string(translated(fault.found));
    }
    return finding;
}

} // namespace scenes
