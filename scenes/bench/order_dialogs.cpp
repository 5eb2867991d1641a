#include "scenes/bench/order_panels.hpp"

#include "scenes/present/order_words.hpp"
#include "scenes/present/reading_words.hpp"
#include "scenes/present/words.hpp"
#include "scenes/ui/dialog.hpp"
#include "scenes/ui/form.hpp"
#include "scenes/ui/list.hpp"

#include <algorithm>
#include <array>

// What comes before work: a guess, the cautions; and the last question before handing in.

namespace scenes {
namespace {

/// The work that is to begin; null when there is none.
const shop::Job* job_to_begin(const OrderTable& table)
{
    const shop::Workshop& workshop = *table.desk.order().workshop;
    if (!table.view.check_to_begin.empty()) {
        return workshop.find_check(table.view.check_to_begin);
    }
    return workshop.find_repair(table.view.repair_to_begin);
}

void begin_work(OrderTable& table)
{
    OrderView& view = table.view;
    std::vector<std::string> heeded;
    for (const auto& [caution, is_ticked] : view.heeded) {
        if (is_ticked) {
            heeded.push_back(caution);
        }
    }
    view.has_cautions_open = false;
    if (!view.check_to_begin.empty()) {
        act(table, shop::DoCheck{view.check_to_begin, std::move(heeded)});
    } else {
        act(table, shop::DoRepair{view.repair_to_begin, std::move(heeded)});
    }
}

/// Asks what is still to be asked before the work, or begins it.
void ask_or_begin(OrderTable& table)
{
    OrderView& view = table.view;
    view.has_guess_open = !view.check_to_begin.empty() &&
                          table.desk.attempt().asks_before(view.check_to_begin) != nullptr;
    view.guess = none_selected;
    if (view.has_guess_open) {
        return;
    }
    view.heeded.clear();
    for (const std::string& id : job_to_begin(table)->cautions) {
        view.heeded[id] = false;
    }
    view.has_cautions_open = !view.heeded.empty();
    if (!view.has_cautions_open) {
        begin_work(table);
    }
}

void show_guess(OrderTable& table)
{
    OrderView& view = table.view;
    Interface& ui = table.ui();
    const Dialog dialog{
        ui, {.name = words::what_do_you_expect, .width = 560.0F}, view.has_guess_open};
    const shop::Order::Ask* ask = table.desk.attempt().asks_before(view.check_to_begin);
    if (!dialog || ask == nullptr) {
        return;
    }
    const shop::Check& check = *table.desk.order().workshop->find_check(ask->check);
    const shop::Reading& reading = *check.procedure.find(ask->reading);
    heading(ui, translated(check.title));
    paragraph(ui, words::predict_note, Tone::soft);
    const std::vector<std::string> guesses = guesses_of(reading);
    const std::array columns{ListColumn{translated(reading.title), 1.0F, false}};
    const float rows = static_cast<float>(guesses.size()) + 1.0F;
    list(ui,
         {.name = translated(reading.title),
          .columns = columns,
          .row_count = guesses.size(),
          .cell = [&](std::size_t row, std::size_t) { return guess_text(reading, guesses[row]); },
          .height = table.look().whole(30.0F * std::min(rows, 8.0F) + 3.0F)},
         view.guess);
    const bool has_guess = view.guess < guesses.size();
    gap(ui, 6.0F);
    const Row row(ui, {1.4F, 1.0F});
    if (button(ui, {.name = words::write_guess, .is_primary = true, .is_enabled = has_guess})) {
        view.has_guess_open = false;
        if (act(table, shop::Predict{ask->check, ask->reading, guesses[view.guess]})) {
            ask_or_begin(table);
        }
    }
    if (button(ui, {.name = words::back})) {
        view.has_guess_open = false;
    }
}

void show_cautions(OrderTable& table)
{
    OrderView& view = table.view;
    Interface& ui = table.ui();
    const Dialog dialog{ui, {.name = words::before_work, .width = 640.0F}, view.has_cautions_open};
    const shop::Job* job = job_to_begin(table);
    if (!dialog || job == nullptr) {
        return;
    }
    heading(ui, translated(job->title));
    {
        // As high as its words, as far as the window has room for it.
        const Look& look = table.look();
        const float most = table.bench.window_height - look.px(230.0F);
        const float wanted =
            look.px(134.0F) * static_cast<float>(std::max<std::size_t>(1, job->cautions.size()));
        const ScrollArea area(ui, words::before_work,
                              std::max(look.px(80.0F), std::min(wanted, most)));
        for (const std::string& id : job->cautions) {
            const shop::Caution& caution = *table.desk.order().workshop->find_caution(id);
            tick_box(ui, {.name = translated(caution.title), .note = translated(caution.says)},
                     view.heeded[id]);
            gap(ui, 4.0F);
        }
    }
    paragraph(ui, words::cautions_note, Tone::soft);
    const Row row(ui, {1.0F, 1.0F});
    if (button(ui, {.name = words::go_on_with_work, .is_primary = true})) {
        begin_work(table);
    }
    if (button(ui, {.name = words::back})) {
        view.has_cautions_open = false;
    }
}

void show_hand_in(OrderTable& table)
{
    OrderView& view = table.view;
    Interface& ui = table.ui();
    const Dialog dialog{ui, {.name = words::hand_in_sure, .width = 460.0F}, view.has_hand_in_open};
    if (!dialog) {
        return;
    }
    paragraph(ui, words::hand_in_note);
    gap(ui, 6.0F);
    const Row row(ui, {1.0F, 1.0F});
    if (button(ui, {.name = words::hand_in, .is_primary = true})) {
        view.has_hand_in_open = false;
        if (act(table, shop::HandIn{})) {
            view.page = OrderPage::marks;
        }
    }
    if (button(ui, {.name = words::back})) {
        view.has_hand_in_open = false;
    }
}

} // namespace

void begin_check(OrderTable& table, const std::string& check)
{
    table.view.check_to_begin = check;
    table.view.repair_to_begin.clear();
    ask_or_begin(table);
}

void begin_repair(OrderTable& table, const std::string& repair)
{
    table.view.check_to_begin.clear();
    table.view.repair_to_begin = repair;
    ask_or_begin(table);
}

void show_order_dialogs(OrderTable& table)
{
    if (table.view.has_guess_open) {
        show_guess(table);
    } else if (table.view.has_cautions_open) {
        show_cautions(table);
    } else if (table.view.has_hand_in_open) {
        show_hand_in(table);
    }
}

} // namespace scenes
