#include "scenes/shop/review.hpp"
#include "scenes/shop/plain_number.hpp"

#include "sim/error.hpp"

#include <algorithm>

namespace shop {
namespace {

std::string titles_of(const Order& order, const std::vector<std::string>& checks)
{
    std::string text;
    for (const std::string& id : checks) {
        text += (text.empty() ? "" : ", ") + order.workshop->find_check(id)->title;
    }
    return text;
}

/// The machine as it comes, with these faults.
sim::Simulator arriving(const Order& order, const std::vector<sim::SetFault>& faults)
{
    sim::Simulator machine = with_faults(*order.workshop, order.weather, faults);
    ProcedureRun(order.history).finish(machine);
    return machine;
}

void try_machines(const Order& order, Review& review)
{
    const auto of_sound = failing(order, arriving(order, {}));
    if (!of_sound.empty()) {
        review.refusals.push_back(
            "Even a sound machine does not pass: " + titles_of(order, of_sound) + ".");
    }
    sim::Simulator machine = arriving(order, order.answer.faults);
    if (failing(order, machine).empty()) {
        review.refusals.push_back("The machine passes every test it is judged by: there is nothing "
                                  "to put right.");
    }
    const auto repairs = cures(order);
    if (repairs.size() < order.answer.faults.size()) {
        review.refusals.push_back("No permitted repair undoes all that is wrong.");
        return;
    }
    for (const Repair* repair : repairs) {
        bring_to(*order.workshop, repair->begins, machine);
        ProcedureRun(repair->procedure).finish(machine);
    }
    const auto of_mended = failing(order, machine);
    if (!of_mended.empty()) {
        review.refusals.push_back(
            "Mended, the machine still does not pass: " + titles_of(order, of_mended) + ".");
    }
}

void compare(const Order& order, Review& review)
{
    const bool is_scrap = order.answer.advice == Advice::not_worth;
    if (!review.good.is_solved && !is_scrap) {
        review.refusals.push_back("Good work with the permitted checks does not put it right.");
    }
    if (review.good.minutes > order.minutes) {
        review.refusals.push_back("Good work takes " + plain_number(review.good.minutes) +
                                  " minutes, the budget is " + plain_number(order.minutes) + ".");
    }
    if (review.good.money > order.money) {
        review.refusals.push_back("Good work takes parts for " + plain_number(review.good.money) +
                                  ", the budget is " + plain_number(order.money) + ".");
    }
    for (const JobLine& line : review.good.lines) {
        const auto* finding = std::get_if<Finding>(&line.action);
        if (finding != nullptr) {
            review.advice = finding->advice;
        }
        if (finding != nullptr && finding->advice != order.answer.advice) {
            review.warnings.push_back(
                "The advice of good work is \"" +
                advice_words()[static_cast<std::size_t>(finding->advice)] +
                "\", the order's is \"" +
                advice_words()[static_cast<std::size_t>(order.answer.advice)] + "\".");
        }
    }
    for (const Mark& mark : review.marks.marks) {
        if (mark.got < mark.of) {
            review.warnings.push_back("Good work does not earn full marks: " + text_of(mark.why));
        }
    }
}

void look_for_twins(const Order& order, const Table& table, Review& review)
{
    const std::size_t truth = *table.find(together(order.answer.faults).id);
    for (const std::size_t h : look_alikes(table, truth)) {
        const Hypothesis& other = table.hypotheses[h];
        if (h == truth) {
            continue;
        }
        review.alike.push_back(other.id);
        const bool is_meant =
            other.faults.size() == 1 &&
            (order.is_cause(other.id) || std::ranges::find(order.answer.look_alikes, other.id) !=
                                             order.answer.look_alikes.end());
        if (!is_meant) {
            review.unmeant.push_back(other.id);
            const sim::Fault* fault = order.workshop->rig->find_fault(other.id);
            review.warnings.push_back("The permitted checks cannot tell what is hidden from: " +
                                      (fault == nullptr ? other.id : fault->title) + ".");
        }
    }
}

} // namespace

std::vector<const Repair*> cures(const Order& order)
{
    std::vector<const Repair*> chosen;
    for (const sim::SetFault& fault : order.answer.faults) {
        const sim::Fault& known = *order.workshop->rig->find_fault(fault.fault);
        const Repair* best = nullptr;
        for (const std::string& id : order.repairs) {
            const Repair* repair = order.workshop->find_repair(id);
            if (repair->undoes(known) &&
                (best == nullptr || order.price(*repair) < order.price(*best))) {
                best = repair;
            }
        }
        if (best != nullptr) {
            chosen.push_back(best);
        }
    }
    return chosen;
}

Review review(const std::shared_ptr<const Order>& order, const Table& table)
{
    return *review(order, table, never_cancelled);
}

std::optional<Review> review(const std::shared_ptr<const Order>& order, const Table& table,
                             const std::atomic<bool>& is_cancelled)
{
    Review review;
    try {
        try_machines(*order, review);
        Attempt attempt(order, order->seed);
        if (!is_cancelled) {
            review.good = good_path(attempt, table, is_cancelled);
        }
        if (is_cancelled) {
            return std::nullopt;
        }
        review.marks = mark(attempt, table, review.good);
        compare(*order, review);
        look_for_twins(*order, table, review);
    } catch (const sim::NumericsError& error) {
        review.refusals.push_back(std::string("The machine cannot be simulated: ") + error.what());
    }
    return review;
}

} // namespace shop
