#include "scenes/bench/order_panels.hpp"

#include "scenes/present/builder_words.hpp"
#include "scenes/present/order_words.hpp"
#include "scenes/present/wording.hpp"
#include "scenes/shop/order_files.hpp"
#include "scenes/ui/form.hpp"
#include "scenes/ui/list.hpp"
#include "scenes/view/number.hpp"
#include "sim/error.hpp"

#include <algorithm>
#include <array>
#include <ctime>
#include <random>

// The shelf of work orders: what there is, what each is about, who begins it.

namespace scenes {
namespace {

/// The title's first words; the rest only says the same more exactly.
std::string machine_name(const shop::Order& order)
{
    const std::string_view title = translated(order.workshop->rig->title);
    return std::string(title.substr(0, title.find(',')));
}

std::string level_text(int level)
{
    return filled(words::level, {std::to_string(level)});
}

std::string list_cell(const ShelfOrder& entry, std::size_t column)
{
    if (!entry.order) {
        return column == 0 ? entry.id : "";
    }
    switch (column) {
    case 0:
        return std::string(translated(entry.order->title));
    case 1:
        return machine_name(*entry.order);
    default:
        return entry.is_begun ? filled(words::begun_level, {std::to_string(entry.order->level)})
                              : level_text(entry.order->level);
    }
}

void read_records(OrderTable& table)
{
    OrderView& view = table.view;
    view.records.clear();
    view.record = none_selected;
    if (view.order < view.shelf.size() && view.shelf[view.order].order) {
        view.records = records_of(*view.shelf[view.order].order, shop::records_folder());
        view.record = view.records.empty() ? none_selected : 0;
    }
}

std::uint64_t fresh_seed()
{
    std::random_device chance;
    return (static_cast<std::uint64_t>(chance()) << 32U) | chance();
}

/// What the desk may refuse, as a notice.
template <class Do>
void try_to(OrderTable& table, Do what)
{
    try {
        what();
        take_up(table);
    } catch (const std::runtime_error& error) { // a record that cannot be written, or is wrong
        table.view.notice = worded(error.what());
    }
}

void begin_order(OrderTable& table, const ShelfOrder& entry)
{
    try_to(table, [&] {
        table.desk.begin(entry.order, table.view.student, fresh_seed(),
                         new_record_path(shop::records_folder(), entry.id, std::time(nullptr)));
    });
}

void resume_order(OrderTable& table, const ShelfOrder& entry, const ShelfRecord& record)
{
    try_to(table, [&] { table.desk.resume(entry.order, record.path); });
}

std::string record_cell(const ShelfRecord& record, std::size_t column)
{
    switch (column) {
    case 0:
        return record.begun;
    case 1:
        return record.student;
    default:
        return record.is_handed_in ? std::string(words::is_handed_in)
                                   : std::to_string(record.actions);
    }
}

void show_records(OrderTable& table, const ShelfOrder& entry)
{
    OrderView& view = table.view;
    if (view.records.empty()) {
        return;
    }
    Interface& ui = table.ui();
    rule(ui);
    heading(ui, words::begun_attempts);
    const std::array columns{ListColumn{words::begun_column, 1.5F, false},
                             ListColumn{words::student_column, 1.4F, false},
                             ListColumn{words::actions_column, 1.1F, true}};
    const float rows = std::clamp(static_cast<float>(view.records.size()), 2.0F, 4.0F);
    const ListAction action =
        list(ui,
             {.name = words::begun_attempts,
              .columns = columns,
              .row_count = view.records.size(),
              .cell = [&](std::size_t row,
                          std::size_t column) { return record_cell(view.records[row], column); },
              .height = table.look().whole(30.0F * (rows + 1.0F) + 3.0F)},
             view.record);
    const ShelfRecord* chosen =
        view.record < view.records.size() ? &view.records[view.record] : nullptr;
    if (chosen != nullptr && !chosen->trouble.empty()) {
        paragraph(ui, filled(words::record_is_wrong, {worded(chosen->trouble)}), Tone::warning);
    }
    const bool can_go_on = chosen != nullptr && chosen->trouble.empty();
    const bool is_wanted = button(ui, {.name = words::resume_order, .is_enabled = can_go_on});
    if (can_go_on && (is_wanted || action.has_activated)) {
        resume_order(table, entry, *chosen);
    }
}

void show_order_card(OrderTable& table, const ShelfOrder& entry)
{
    Interface& ui = table.ui();
    OrderView& view = table.view;
    const shop::Order& order = *entry.order;
    paragraph(ui, machine_name(order) + ", " + level_text(order.level), Tone::soft);
    heading(ui, words::complaint_head);
    quotation(ui, translated(order.complaint));
    gap(ui, 6.0F);
    heading(ui, words::customer_head);
    paragraph(ui, translated(order.customer));
    rule(ui);
    reading(ui, words::budget_minutes, filled(words::some_minutes, {fixed_text(order.minutes, 0)}));
    reading(ui, words::budget_money, money_text(order.money));
    show_records(table, entry);
    rule(ui);
    text_field(ui, {.name = words::student, .hint = words::student_hint}, view.student);
    if (button(ui, {.name = words::begin_order, .is_primary = true})) {
        begin_order(table, entry);
    }
}

} // namespace

void read_shelf(OrderTable& table)
{
    OrderView& view = table.view;
    const std::string chosen = view.order < view.shelf.size() ? view.shelf[view.order].path : "";
    view.shelf = orders_on_shelf(table.workshops, shop::order_files(), shop::records_folder());
    const auto found = chosen.empty() ? std::ranges::find(view.shelf, true, &ShelfOrder::is_begun)
                                      : std::ranges::find(view.shelf, chosen, &ShelfOrder::path);
    view.order =
        found != view.shelf.end() ? static_cast<std::size_t>(found - view.shelf.begin()) : 0;
    read_records(table);
}

void take_up(OrderTable& table)
{
    OrderView& view = table.view;
    const std::string student = view.student;
    auto shelf = std::move(view.shelf);
    view = {};
    view.shelf = std::move(shelf);
    view.student = student;
    const shop::Finding* finding = table.desk.attempt().finding();
    if (finding != nullptr) {
        view.draft.note = finding->note;
    }
    table.bench.ui.drop_focus();
}

void show_shelf(OrderTable& table, sf::Vector2f window)
{
    Interface& ui = table.ui();
    OrderView& view = table.view;
    const ShelfLayout layout = lay_out_shelf(window, table.look());
    {
        const Panel panel(ui, {.name = words::work_orders, .box = layout.list, .note = {}});
        const std::array columns{ListColumn{words::order_columns_title, 0.0F, false},
                                 ListColumn{"", 2.4F, false}, ListColumn{"", 1.0F, true}};
        const float button_height = table.look().whole(34.0F + 8.0F);
        const float height = layout.list.height - table.look().whole(34.0F + 26.0F) - button_height;
        const ListAction action =
            list(ui,
                 {.name = words::work_orders,
                  .columns = columns,
                  .row_count = view.shelf.size(),
                  .cell = [&](std::size_t row,
                              std::size_t column) { return list_cell(view.shelf[row], column); },
                  .height = height,
                  .has_head = false,
                  .empty_text = words::no_orders},
                 view.order);
        if (action.has_selected) {
            view.notice.clear();
            read_records(table);
        }
        const Row row(ui, {1.0F, 1.0F});
        if (button(ui, {.name = words::to_bench})) {
            table.bench.view.shows_orders = false;
            table.bench.view.shows_builder = false;
        }
        if (button(ui, {.name = words::build_order})) {
            table.bench.view.shows_orders = false;
            table.bench.view.wants_builder = true;
        }
    }
    const ShelfOrder* entry = view.order < view.shelf.size() ? &view.shelf[view.order] : nullptr;
    const std::string_view title = entry != nullptr && entry->order
                                       ? translated(entry->order->title)
                                       : std::string_view(words::order_columns_title);
    const Panel panel(ui, {.name = title, .box = layout.card, .note = {}});
    const ScrollArea area(ui, words::order_columns_title);
    if (!view.notice.empty()) {
        paragraph(ui, view.notice, Tone::warning);
    }
    if (entry == nullptr) {
        paragraph(ui, view.shelf.empty() ? words::no_orders : words::choose_order, Tone::soft);
    } else if (!entry->order) {
        paragraph(ui, filled(words::order_is_wrong, {worded(entry->trouble)}), Tone::warning);
    } else {
        show_order_card(table, *entry);
    }
}

} // namespace scenes
