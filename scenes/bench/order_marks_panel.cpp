#include "scenes/bench/order_panels.hpp"

#include "scenes/present/order_words.hpp"
#include "scenes/present/wording.hpp"
#include "scenes/ui/form.hpp"
#include "scenes/view/number.hpp"

#include <array>

// The marks after hand-in, and what was wrong with the machine.

namespace scenes {
namespace {

/// The keys of the weights in an order's file, in the order of their titles.
constexpr std::array<std::string_view, words::mark_titles.size()> mark_ids{
    "solved", "cause", "minutes", "money", "order", "verified", "harm", "cautions"};

std::string mark_title(const std::string& id)
{
    for (std::size_t i = 0; i < mark_ids.size(); ++i) {
        if (mark_ids[i] == id) {
            return words::mark_titles[i];
        }
    }
    return id;
}

std::string points(double value)
{
    return fixed_text(value, 0);
}

void write_mark(OrderTable& table, const shop::Mark& mark)
{
    const std::string title = mark_title(mark.id);
    const std::string got = filled(words::mark_of, {points(mark.got), points(mark.of)});
    const std::array head{
        FormCell{.text = title, .share = 2.4F, .type = FormType::bold},
        FormCell{.text = got, .share = 1.0F, .type = FormType::bold, .align = 1.0F}};
    form_row(table.ui(), {.cells = head, .has_rule = false});
    const std::string says = worded(mark.says);
    const std::array why{FormCell{.text = says, .tone = Tone::soft}};
    form_row(table.ui(), {.cells = why});
}

void write_marks(OrderTable& table, const shop::Marks& marks)
{
    const std::string sum = filled(words::mark_of, {points(marks.got()), points(marks.of())});
    const std::array total{
        FormCell{.text = words::total, .share = 2.0F, .type = FormType::heading},
        FormCell{.text = sum, .share = 1.4F, .type = FormType::heading, .align = 1.0F}};
    form_row(table.ui(), {.cells = total, .is_head = true});
    for (const shop::Mark& mark : marks.marks) {
        if (mark.of > 0.0) {
            write_mark(table, mark);
        }
    }
}

/// The jobs of good work, one after the other, with their minutes.
void write_good_way(OrderTable& table, const shop::Path& good)
{
    Interface& ui = table.ui();
    const shop::Workshop& workshop = *table.desk.order().workshop;
    heading(ui, words::good_way);
    for (const shop::JobLine& line : good.lines) {
        const auto* check = std::get_if<shop::DoCheck>(&line.action);
        const auto* repair = std::get_if<shop::DoRepair>(&line.action);
        if (check == nullptr && repair == nullptr) {
            continue;
        }
        const std::string title =
            check != nullptr ? std::string(translated(workshop.find_check(check->check)->title))
                             : filled(words::sheet_repair,
                                      {translated(workshop.find_repair(repair->repair)->title)});
        const std::string minutes = filled(words::some_minutes, {fixed_text(line.minutes, 0)});
        const std::array cells{FormCell{.text = title, .share = 3.4F},
                               FormCell{.text = minutes, .share = 1.0F, .align = 1.0F}};
        form_row(ui, {.cells = cells});
    }
}

void write_answer(OrderTable& table)
{
    Interface& ui = table.ui();
    const shop::Order& order = table.desk.order();
    heading(ui, words::what_it_was);
    if (order.answer.faults.empty()) {
        paragraph(ui, words::nothing_was_wrong);
    }
    for (const sim::SetFault& set : order.answer.faults) {
        const sim::Fault* fault = order.workshop->rig->find_fault(set.fault);
        const std::string text = std::string(translated(fault->title)) + ", " +
                                 fixed_text(100.0 * set.severity, 0) + " %";
        const std::array cells{FormCell{.text = text, .type = FormType::bold}};
        form_row(ui, {.cells = cells});
    }
    gap(ui, 6.0F);
    paragraph(ui, translated(order.answer.finding));
    gap(ui, 6.0F);
    if (button(ui, {.name = words::look_inside, .is_primary = true})) {
        look_inside(table);
    }
}

} // namespace

void show_marks(OrderTable& table)
{
    Interface& ui = table.ui();
    const ScrollArea area(ui, words::page_marks);
    const MarkingWork* marking = table.desk.marking();
    const auto result = table.desk.result();
    if (result) {
        write_marks(table, result->marks);
    } else if (marking != nullptr && !marking->trouble().empty()) {
        paragraph(ui, filled(words::marking_failed, {worded(marking->trouble())}), Tone::warning);
    } else if (marking != nullptr) {
        progress(ui, words::marking_goes_on, marking->share());
        paragraph(ui, words::marking_note, Tone::soft);
    }
    gap(ui, 10.0F);
    write_answer(table);
    if (result) {
        gap(ui, 10.0F);
        write_good_way(table, result->good);
    }
}

void look_inside(OrderTable& table)
{
    OrderDesk& desk = table.desk;
    BenchView& view = table.bench.view;
    const shop::Order& order = desk.order();
    table.bench.model.begin(order.workshop->rig, order.weather, desk.arrival(), desk.arrived_at());
    view.hidden.reveal();
    view.is_shut = false;
    view.page = Page::faults;
    view.notice = words::looks_inside;
    view.shows_orders = false;
}

} // namespace scenes
