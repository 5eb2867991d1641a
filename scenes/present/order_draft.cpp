#include "scenes/present/order_draft.hpp"

#include "sim/ids.hpp"
#include <algorithm>

namespace scenes {

DraftValues empty_draft(const shop::Workshop& workshop)
{
    DraftValues values;
    values.rig = workshop.rig->id;
    values.checks = sim::ids_of(workshop.checks);
    values.repairs = sim::ids_of(workshop.repairs);
    return values;
}

DraftValues draft_of(const shop::Order& order)
{
    return {.rig = order.workshop->rig->id,
            .title = order.title,
            .level = order.level,
            .customer = order.customer,
            .complaint = order.complaint,
            .temperature = order.weather.temperature.si,
            .pressure = order.weather.pressure.si,
            .history = order.history_text,
            .checks = order.checks,
            .repairs = order.repairs,
            .minutes = order.minutes,
            .money = order.money,
            .labour = order.labour,
            .worth = order.worth,
            .solved = order.solved,
            .predictions = order.predictions,
            .weights = order.weights,
            .seed = order.seed,
            .answer = order.answer,
            .accepted = {}};
}

DraftValues draft_of(const shop::Workshop& workshop, const sim::Simulator& machine)
{
    DraftValues values = empty_draft(workshop);
    for (const sim::Fault& fault : workshop.rig->faults) {
        if (const double severity = machine.severity(fault.id); severity > 0.0) {
            values.answer.faults.push_back({fault.id, severity});
        }
    }
    return values;
}

shop::Order order_of(const DraftValues& values, shop::Workshops& workshops)
{
    shop::Order order;
    order.workshop = workshops.of(values.rig);
    order.title = values.title;
    order.level = values.level;
    order.customer = values.customer;
    order.complaint = values.complaint;
    order.weather.temperature.si = values.temperature;
    order.weather.pressure.si = values.pressure;
    const shop::Vocabulary vocabulary(order.workshop->rig, *order.workshop->instruments);
    const auto history = sim::JsonNode::parse(values.history, "history");
    order.history = shop::read_procedure(history, vocabulary);
    order.history_text = history.dump();
    order.checks = values.checks;
    order.repairs = values.repairs;
    order.minutes = values.minutes;
    order.money = values.money;
    order.labour = values.labour;
    order.worth = values.worth;
    order.solved = values.solved;
    order.predictions = values.predictions;
    order.weights = values.weights;
    order.seed = values.seed;
    order.answer = values.answer;
    return order;
}

bool has_id(const std::vector<std::string>& ids, std::string_view id)
{
    return std::ranges::find(ids, id) != ids.end();
}

void set_id(std::vector<std::string>& ids, const std::vector<std::string>& all,
            const std::string& id, bool is_in)
{
    std::vector<std::string> wanted;
    for (const std::string& each : all) {
        if (each == id ? is_in : has_id(ids, each)) {
            wanted.push_back(each);
        }
    }
    ids = std::move(wanted);
}

void tidy(DraftValues& values)
{
    std::erase_if(values.solved,
                  [&](const std::string& check) { return !has_id(values.checks, check); });
    std::erase_if(values.predictions,
                  [&](const auto& ask) { return !has_id(values.checks, ask.check); });
    const auto is_hidden = [&](const std::string& fault) {
        return std::ranges::find(values.answer.faults, fault, &sim::SetFault::fault) !=
               values.answer.faults.end();
    };
    std::erase_if(values.answer.causes, is_hidden);
    std::erase_if(values.answer.look_alikes, is_hidden);
}

void OrderDraft::change(DraftValues next, std::string_view name)
{
    if (next == now_) {
        return;
    }
    if (name.empty() || name != name_) {
        past_.push_back(std::move(now_));
    }
    now_ = std::move(next);
    name_ = name;
    undone_.clear();
}

void OrderDraft::undo()
{
    if (can_undo()) {
        undone_.push_back(std::move(now_));
        now_ = std::move(past_.back());
        past_.pop_back();
        name_.clear();
    }
}

void OrderDraft::redo()
{
    if (can_redo()) {
        past_.push_back(std::move(now_));
        now_ = std::move(undone_.back());
        undone_.pop_back();
        name_.clear();
    }
}

} // namespace scenes
