#include "scenes/shop/class_sheet.hpp"
#include "scenes/shop/plain_number.hpp"

// Lines of a job sheet in words.

namespace shop {
namespace {

std::string causes_text(const Order& order, const std::vector<std::string>& causes)
{
    std::string text;
    for (const std::string& id : causes) {
        text += (text.empty() ? "" : ", ") + order.workshop->rig->find_fault(id)->title;
    }
    return text;
}

struct DoneText {
    const Order& order;

    std::string operator()(const Predict& action) const
    {
        const Check& check = *order.workshop->find_check(action.check);
        return "Expected: " + check.procedure.find(action.reading)->title + ": " + action.guess;
    }
    std::string operator()(const DoCheck& action) const
    {
        return order.workshop->find_check(action.check)->title;
    }
    std::string operator()(const DoRepair& action) const
    {
        return order.workshop->find_repair(action.repair)->title;
    }
    std::string operator()(const Suspect& action) const
    {
        return "Suspected: " + causes_text(order, action.causes);
    }
    std::string operator()(const Finding& action) const
    {
        return "Finding: " + causes_text(order, action.causes) +
               "; advice: " + advice_words()[static_cast<std::size_t>(action.advice)] +
               "; estimate: " + plain_number(action.minutes) + " min, parts " +
               plain_number(action.money);
    }
    std::string operator()(const HandIn& /*action*/) const { return "Handed in"; }
};

} // namespace

std::string done_text(const Order& order, const JobLine& line)
{
    return std::visit(DoneText{order}, line.action);
}

std::string read_text(const Order& order, const JobLine& line)
{
    std::string text;
    if (const auto* done = std::get_if<DoCheck>(&line.action)) {
        const auto& readings = order.workshop->find_check(done->check)->procedure.readings;
        for (std::size_t r = 0; r < line.observations.size(); ++r) {
            text += (r == 0 ? "" : "; ") + readings[r].title + ": " +
                    observation_text(readings[r], line.observations[r]);
        }
    }
    return text;
}

} // namespace shop
