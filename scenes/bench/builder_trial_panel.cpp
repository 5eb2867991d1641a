#include "scenes/bench/builder_view.hpp"

#include "scenes/present/builder_words.hpp"
#include "scenes/present/gathered.hpp"
#include "scenes/present/job_sheet.hpp"
#include "scenes/present/order_words.hpp"
#include "scenes/present/reading_words.hpp"
#include "scenes/present/run_files.hpp"
#include "scenes/present/wording.hpp"
#include "scenes/present/worksheet_words.hpp"
#include "scenes/shop/order_files.hpp"
#include "scenes/shop/worksheet.hpp"
#include "scenes/ui/controls.hpp"
#include "scenes/ui/form.hpp"
#include "scenes/ui/panel.hpp"
#include "scenes/view/number.hpp"
#include "sim/file_write.hpp"

#include <algorithm>
#include <array>
#include <filesystem>
#include <iterator>

// Trying the order out, what came of it, saving and printing.

namespace scenes {
namespace {

/// What is done in a step of good work; empty for what is only written.
std::string work_text(const shop::Order& order, const shop::JobLine& line)
{
    if (const auto* check = std::get_if<shop::DoCheck>(&line.action)) {
        return std::string(translated(order.workshop->find_check(check->check)->title));
    }
    if (const auto* repair = std::get_if<shop::DoRepair>(&line.action)) {
        return filled(words::sheet_repair,
                      {translated(order.workshop->find_repair(repair->repair)->title)});
    }
    return "";
}

std::string reads_text(const shop::Order& order, const shop::JobLine& line)
{
    std::string text;
    if (const auto* done = std::get_if<shop::DoCheck>(&line.action)) {
        const auto& readings = order.workshop->find_check(done->check)->procedure.readings;
        for (std::size_t r = 0; r < line.observations.size(); ++r) {
            text += (r == 0 ? "" : "; ") + std::string(translated(readings[r].title)) + ": " +
                    shown_text(readings[r], line.observations[r]);
        }
    }
    return text;
}

void form_line(Interface& ui, std::string_view what, const std::string& minutes,
               const std::string& money, FormType type, bool has_rule = true)
{
    const std::array cells{FormCell{.text = what, .share = 4.6F, .type = type},
                           FormCell{.text = minutes, .share = 1.0F, .type = type, .align = 1.0F},
                           FormCell{.text = money, .share = 1.2F, .type = type, .align = 1.0F}};
    form_row(ui, {.cells = cells, .has_rule = has_rule, .is_double = type == FormType::bold});
}

/// Good work step by step, its sum, and what the order allows beside it.
void show_good_work(BuilderTable& table, const shop::Order& order, const shop::Path& good)
{
    Interface& ui = table.ui();
    heading(ui, words::good_work_head);
    form_line(ui, words::sheet_work, words::sheet_minutes, words::sheet_parts, FormType::small);
    for (const shop::JobLine& line : good.lines) {
        const std::string what = work_text(order, line);
        if (what.empty()) {
            continue;
        }
        const std::string reads = reads_text(order, line);
        form_line(ui, what, fixed_text(line.minutes, 0), money_text(line.money), FormType::body,
                  reads.empty());
        if (!reads.empty()) {
            const std::array cells{FormCell{.text = reads, .tone = Tone::soft}};
            form_row(ui, {.cells = cells});
        }
    }
    form_line(ui, words::total, fixed_text(good.minutes, 0), money_text(good.money),
              FormType::bold);
    form_line(ui, words::allowed, fixed_text(table.next.minutes, 0), money_text(table.next.money),
              FormType::body);
    paragraph(
        ui, filled(words::work_and_parts, {money_text(price_of(order, good.minutes, good.money))}),
        Tone::soft);
    const OrderBudget budget = suggested_budget(good);
    const std::string take =
        filled(words::take_budget, {fixed_text(budget.minutes, 0), money_text(budget.money)});
    const bool is_other = budget.minutes != table.next.minutes || budget.money != table.next.money;
    if (is_other && button(ui, {.name = take, .id = words::take_budget})) {
        table.next.minutes = std::max(budget.minutes, 5.0);
        table.next.money = budget.money;
    }
}

void show_review(BuilderTable& table, const shop::Review& review)
{
    Interface& ui = table.ui();
    OrderBuilding& building = table.building;
    if (!building.is_tried()) {
        paragraph(ui, words::has_changed, Tone::warning);
    }
    if (!review.refusals.empty()) {
        heading(ui, words::cannot_be_given);
        for (const std::string& refusal : review.refusals) {
            paragraph(ui, worded(refusal), Tone::warning);
        }
    }
    const auto warnings = building.open_warnings();
    if (review.is_good() && !warnings.empty()) { // else they only say the same over again
        heading(ui, words::to_know);
        std::vector<std::string> notes;
        std::ranges::transform(warnings, std::back_inserter(notes),
                               [](const std::string& warning) { return worded(warning); });
        for (const std::string& note : gathered(notes)) {
            paragraph(ui, note);
        }
        if (review.advice && *review.advice != table.next.answer.advice &&
            button(ui, {.name = words::take_advice})) {
            table.next.answer.advice = *review.advice;
        }
        if (button(ui, {.name = words::as_meant, .is_enabled = building.is_tried()})) {
            try_to(table, [&] {
                building.accept_warnings();
                table.next = building.draft().now();
            });
        }
        paragraph(ui, words::as_meant_note, Tone::soft);
    }
    if (building.can_save()) {
        paragraph(ui, words::can_be_given);
    }
    rule(ui);
    show_good_work(table, *building.tried_order(), review.good);
}

void show_trying(BuilderTable& table)
{
    Interface& ui = table.ui();
    OrderBuilding& building = table.building;
    const auto missing = still_missing(table.next);
    if (!missing.empty()) {
        heading(ui, words::still_wanted);
        for (const std::string& each : missing) {
            paragraph(ui, each);
        }
        rule(ui);
    }
    if (const OrderTrial* trial = building.under_way()) {
        if (trial->stage() == OrderTrial::Stage::simulating) {
            progress(ui, words::simulates, trial->share());
        } else {
            paragraph(ui, words::works_on_it);
        }
        if (button(ui, {.name = words::break_off})) {
            building.break_off();
        }
    } else {
        if (button(ui, {.name = words::try_out,
                        .is_primary = missing.empty() && !building.is_tried(),
                        .is_enabled = missing.empty()})) {
            try_to(table, [&] { building.try_out(); });
        }
        paragraph(ui, words::try_note, Tone::soft);
    }
    if (!building.trouble().empty()) {
        paragraph(ui, filled(words::trial_failed, {worded(building.trouble())}), Tone::warning);
    }
}

void tell(BuilderTable& table, std::string_view pattern, const std::string& path)
{
    table.view.notice = filled(pattern, {short_path(path)});
    table.view.is_notice_warning = false;
}

void save(BuilderTable& table, const std::string& id)
{
    try_to(table, [&] {
        table.building.save(shop::own_orders_folder(), id);
        tell(table, words::order_saved, id);
    });
}

void show_saving(BuilderTable& table)
{
    Interface& ui = table.ui();
    OrderBuilding& building = table.building;
    const bool can_save = building.can_save();
    if (button(ui, {.name = words::save_order_button,
                    .is_primary = can_save && !building.draft().is_saved(),
                    .is_enabled = can_save})) {
        table.view.name = building.name(shop::own_orders_folder());
        table.view.has_name_open = table.view.name.is_taken || table.view.name.is_shipped;
        if (!table.view.has_name_open) {
            save(table, table.view.name.id);
        }
    }
    if (!can_save) {
        const bool is_refused = building.is_tried() && !building.review()->is_good();
        paragraph(ui,
                  !building.is_tried() ? words::try_before_saving
                  : is_refused         ? words::refused_saving
                                       : words::accept_before_saving,
                  Tone::soft);
    }
}

/// Paper lies where charts are exported to: where people look for documents.
void print(BuilderTable& table, const std::string& ending, const std::string& page)
{
    try_to(table, [&] {
        const std::string path =
            (std::filesystem::path(charts_folder()) / (id_of_title(table.next.title) + ending))
                .string();
        make_folder_for(path);
        sim::atomic_write(path, page);
        tell(table, words::written_to, path);
    });
}

void show_printing(BuilderTable& table)
{
    Interface& ui = table.ui();
    OrderBuilding& building = table.building;
    const bool is_whole = still_missing(table.next).empty();
    heading(ui, words::print_head);
    const Row row(ui, {1.0F, 1.0F});
    if (button(ui, {.name = words::print_worksheet, .is_enabled = is_whole})) {
        try_to(table,
               [&] { print(table, "_worksheet.html", shop::worksheet_html(*building.order())); });
    }
    if (button(ui, {.name = words::print_key, .is_enabled = is_whole && building.is_tried()})) {
        try_to(table, [&] {
            print(table, "_key.html", shop::answer_key_html(*building.order(), *building.review()));
        });
    }
}

} // namespace

void show_builder_trial(BuilderTable& table)
{
    Interface& ui = table.ui();
    show_trying(table);
    if (const auto review = table.building.review()) {
        rule(ui);
        show_review(table, *review);
    }
    rule(ui);
    show_saving(table);
    show_printing(table);
    if (button(ui,
               {.name = words::see_as_student, .is_enabled = still_missing(table.next).empty()})) {
        table.view.wants_preview = true;
    }
}

} // namespace scenes
