#include "scenes/bench/builder_view.hpp"

#include "scenes/present/builder_words.hpp"
#include "scenes/present/order_words.hpp"
#include "scenes/present/words.hpp"
#include "scenes/present/worksheet_words.hpp"
#include "scenes/ui/controls.hpp"
#include "scenes/ui/list.hpp"
#include "scenes/ui/panel.hpp"
#include "scenes/view/number.hpp"

#include <algorithm>
#include <array>
#include <optional>

// What is wrong with the machine, what else counts as right, and what it comes to.

namespace scenes {
namespace {

/// A fault's part in an order, in the order of words::fault_parts.
enum class FaultPart { none, hidden, also_right, look_alike };

auto find_hidden(DraftValues& values, const std::string& fault)
{
    return std::ranges::find(values.answer.faults, fault, &sim::SetFault::fault);
}

FaultPart part_of(DraftValues& values, const std::string& fault)
{
    if (find_hidden(values, fault) != values.answer.faults.end()) {
        return FaultPart::hidden;
    }
    return has_id(values.answer.causes, fault)        ? FaultPart::also_right
           : has_id(values.answer.look_alikes, fault) ? FaultPart::look_alike
                                                      : FaultPart::none;
}

void set_part(DraftValues& values, const std::string& fault, FaultPart part)
{
    std::erase_if(values.answer.faults,
                  [&](const sim::SetFault& each) { return each.fault == fault; });
    std::erase(values.answer.causes, fault);
    std::erase(values.answer.look_alikes, fault);
    switch (part) {
    case FaultPart::none:
        break;
    case FaultPart::hidden:
        values.answer.faults.push_back({fault, 1.0});
        break;
    case FaultPart::also_right:
        values.answer.causes.push_back(fault);
        break;
    case FaultPart::look_alike:
        values.answer.look_alikes.push_back(fault);
        break;
    }
}

std::string state_text(BuilderTable& table, const std::string& fault)
{
    const FaultPart part = part_of(table.next, fault);
    if (part == FaultPart::hidden) {
        return fixed_text(100.0 * find_hidden(table.next, fault)->severity, 0) + " %";
    }
    return part == FaultPart::none
               ? ""
               : std::string(words::fault_parts.at(static_cast<std::size_t>(part)));
}

/// Those that play a part come first.
std::vector<const sim::Fault*> faults_to_show(BuilderTable& table)
{
    auto faults = find_faults(*table.workshop().rig, table.view.fault_search);
    std::ranges::stable_partition(faults, [&](const sim::Fault* fault) {
        return part_of(table.next, fault->id) == FaultPart::hidden;
    });
    return faults;
}

void show_fault(BuilderTable& table, const sim::Fault& fault)
{
    Interface& ui = table.ui();
    heading(ui, translated(fault.title));
    paragraph(ui, translated(fault.about), Tone::soft);
    auto part = static_cast<std::size_t>(part_of(table.next, fault.id));
    if (choice(ui, {.name = words::part_in_order, .options = translated(words::fault_parts)},
               part)) {
        set_part(table.next, fault.id, static_cast<FaultPart>(part));
        table.view.fault = 0;
        const auto shown = faults_to_show(table);
        table.view.fault =
            static_cast<std::size_t>(std::ranges::find(shown, &fault) - shown.begin());
    }
    const auto hidden = find_hidden(table.next, fault.id);
    if (hidden != table.next.answer.faults.end()) {
        entry(table,
              {.name = words::severity,
               .low = 0.05,
               .high = 1.0,
               .step = 0.05,
               .shown_per_unit = 100.0,
               .unit = "%"},
              hidden->severity);
    } else {
        paragraph(ui, words::parts_note, Tone::soft);
    }
}

void show_answer(BuilderTable& table)
{
    Interface& ui = table.ui();
    rule(ui);
    entry(table, {.name = words::finding_field, .lines = 4}, table.next.answer.finding);
    auto advice = static_cast<std::size_t>(table.next.answer.advice);
    if (choice(ui, {.name = words::advice_to_customer, .options = translated(words::advices)},
               advice)) {
        table.next.answer.advice = static_cast<shop::Advice>(advice);
    }
    const bool has_hidden = !table.next.answer.faults.empty();
    const Row row(ui, {1.0F, 1.0F});
    if (button(ui, {.name = words::suggest_finding, .is_enabled = has_hidden})) {
        try_to(table, [&] {
            table.next.answer.finding = suggested_finding(order_of(table.next, table.workshops));
        });
    }
    if (button(ui, {.name = words::suggest_advice, .is_enabled = has_hidden})) {
        try_to(table, [&] {
            if (const auto fits = suggested_advice(order_of(table.next, table.workshops))) {
                table.next.answer.advice = *fits;
            } else {
                table.view.notice = words::no_advice;
                table.view.is_notice_warning = true;
            }
        });
    }
}

} // namespace

void show_builder_hidden(BuilderTable& table)
{
    Interface& ui = table.ui();
    BuilderView& view = table.view;
    if (text_field(
            ui,
            {.name = words::search_faults, .hint = words::search_causes_hint, .is_search = true},
            view.fault_search)) {
        view.fault = 0;
    }
    const auto faults = faults_to_show(table);
    const std::array columns{ListColumn{words::faults_list, 3.0F, false},
                             ListColumn{words::part_in_order, 1.0F, true}};
    const auto cell = [&](std::size_t row, std::size_t column) {
        return column == 0 ? std::string(translated(faults[row]->title))
                           : state_text(table, faults[row]->id);
    };
    list(ui,
         {.name = words::faults_list,
          .columns = columns,
          .row_count = faults.size(),
          .cell = cell,
          .height = std::max(table.look().whole(124.0F), std::round(0.38F * room_left(ui))),
          .has_head = false,
          .empty_text = words::no_such_fault},
         view.fault);
    std::optional<ScrollArea> area;
    if (!table.is_low) {
        area.emplace(ui, words::what_is_hidden);
    }
    if (view.fault < faults.size()) {
        show_fault(table, *faults[view.fault]);
    }
    show_answer(table);
}

} // namespace scenes
