#include "scenes/bench/builder_view.hpp"

#include "scenes/present/builder_words.hpp"
#include "scenes/present/order_words.hpp"
#include "scenes/present/wording.hpp"
#include "scenes/shop/order_files.hpp"
#include "scenes/ui/controls.hpp"
#include "scenes/ui/dialog.hpp"
#include "scenes/ui/list.hpp"
#include "scenes/ui/panel.hpp"

#include <algorithm>
#include <array>
#include <utility>

// What the builder asks: which order to begin with, whether a draft may go, whose name it takes.

namespace scenes {
namespace {

void take_chosen(BuilderTable& table)
{
    BuilderView& view = table.view;
    const ShelfOrder& entry = view.shelf[view.order];
    view.has_orders_open = false;
    // A shipped order is the beginning of another; one's own is gone on with.
    const std::string own = shop::own_orders_folder();
    const bool is_own = !own.empty() && entry.path.starts_with(own + "/");
    begin_draft(table, draft_of(*entry.order), is_own ? entry.path : "");
}

void show_orders_to_take(BuilderTable& table)
{
    Interface& ui = table.ui();
    BuilderView& view = table.view;
    if (Dialog dialog{
            ui, {.name = words::begin_other_title, .width = 560.0F}, view.has_orders_open}) {
        const std::array columns{ListColumn{words::order_columns_title, 2.2F, false},
                                 ListColumn{"", 0.8F, true}};
        const auto cell = [&](std::size_t row, std::size_t column) -> std::string {
            const ShelfOrder& entry = view.shelf[row];
            if (!entry.order) {
                return column == 0 ? entry.id : "";
            }
            return column == 0 ? std::string(translated(entry.order->title))
                               : filled(words::level, {std::to_string(entry.order->level)});
        };
        const float height = std::min(table.look().whole(340.0F), 0.5F * table.bench.window_height);
        paragraph(ui, words::shows_answer);
        list(ui,
             {.name = words::begin_other_title,
              .columns = columns,
              .row_count = view.shelf.size(),
              .cell = cell,
              .height = height,
              .has_head = false,
              .empty_text = words::no_orders},
             view.order);
        const ShelfOrder* entry =
            view.order < view.shelf.size() ? &view.shelf[view.order] : nullptr;
        if (entry != nullptr && !entry->order) {
            paragraph(ui, filled(words::order_is_wrong, {worded(entry->trouble)}), Tone::warning);
        }
        const bool can_take = entry != nullptr && entry->order != nullptr;
        const Row row(ui, {1.0F, 1.0F});
        // Not by Enter or a double press on the list: who sees an answer has meant to.
        if (button(ui, {.name = words::take_order, .is_enabled = can_take})) {
            take_chosen(table);
        }
        if (button(ui, {.name = words::close_without, .is_primary = true})) {
            view.has_orders_open = false;
        }
    }
}

void ask_to_discard(BuilderTable& table)
{
    Interface& ui = table.ui();
    BuilderView& view = table.view;
    if (Dialog dialog{ui, {.name = words::discard_sure}, view.has_discard_open}) {
        paragraph(ui, words::discard_note);
        const Row row(ui, {1.0F, 1.0F});
        if (button(ui, {.name = words::keep_it, .is_primary = true})) {
            view.has_discard_open = false;
        }
        if (button(ui, {.name = words::discard})) {
            view.has_discard_open = false;
            const auto then = std::exchange(view.after_discard, {});
            then();
            table.next = table.building.draft().now();
        }
    }
}

void save_as(BuilderTable& table, const std::string& id)
{
    table.view.has_name_open = false;
    try_to(table, [&] {
        table.building.save(shop::own_orders_folder(), id);
        table.view.notice = filled(words::order_saved, {id});
        table.view.is_notice_warning = false;
    });
}

void ask_for_name(BuilderTable& table)
{
    Interface& ui = table.ui();
    BuilderView& view = table.view;
    if (Dialog dialog{ui, {.name = words::name_is_taken}, view.has_name_open}) {
        paragraph(ui, view.name.is_shipped ? words::shipped_note : words::replace_note);
        const std::string beside = filled(words::save_beside, {view.name.free_id});
        if (button(ui, {.name = beside, .is_primary = true, .id = words::save_beside})) {
            save_as(table, view.name.free_id);
        }
        const Row row(ui, {1.0F, 1.0F});
        if (button(ui, {.name = words::replace_order, .is_enabled = !view.name.is_shipped})) {
            save_as(table, view.name.id);
        }
        if (button(ui, {.name = words::close_without})) {
            view.has_name_open = false;
        }
    }
}

} // namespace

void begin_draft(BuilderTable& table, DraftValues values, std::string path)
{
    BuilderView& view = table.view;
    OrderBuilding& building = table.building;
    const auto begin = [&view, &building, values = std::move(values), path = std::move(path)] {
        building.begin(values, path);
        view.own_history.clear();
        view.fault = view.check = view.repair = 0;
        view.notice.clear();
    };
    if (!building.has_draft() || building.draft().is_saved()) {
        begin();
        table.next = building.draft().now();
    } else {
        view.after_discard = begin;
        view.has_discard_open = true;
    }
}

void show_builder_dialogs(BuilderTable& table)
{
    show_orders_to_take(table);
    ask_to_discard(table);
    ask_for_name(table);
}

} // namespace scenes
