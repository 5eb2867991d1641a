#include "scenes/bench/order_panels.hpp"

#include "scenes/present/order_words.hpp"
#include "scenes/present/readout.hpp"
#include "scenes/ui/form.hpp"
#include "scenes/view/number.hpp"

#include <array>

// The papers of a work order: the customer's card and the job sheet.

namespace scenes {
namespace {

/// Height that is left in a panel over something at its foot.
///
/// unit:    foot in pixels at text scale 1
float room_over(const OrderTable& table, float foot)
{
    return std::max(table.look().whole(60.0F),
                    room_left(table.ui()) - table.look().whole(foot + 8.0F));
}

void write_head(OrderTable& table)
{
    const std::array cells{
        FormCell{.text = "", .share = 0.5F, .type = FormType::bold},
        FormCell{.text = words::sheet_work, .share = 5.0F, .type = FormType::bold},
        FormCell{
            .text = words::sheet_minutes, .share = 1.0F, .type = FormType::bold, .align = 1.0F},
        FormCell{.text = words::sheet_parts, .share = 1.2F, .type = FormType::bold, .align = 1.0F}};
    form_row(table.ui(), {.cells = cells, .is_head = true});
}

void write_reading(OrderTable& table, const SheetReading& line, bool is_last)
{
    const bool has_more = !line.sound.empty() || !line.expected.empty();
    const std::array cells{FormCell{.text = "", .share = 0.5F},
                           FormCell{.text = line.title, .share = line.shown.empty() ? 7.2F : 3.9F},
                           FormCell{.text = line.shown,
                                    .share = line.shown.empty() ? 0.01F : 3.3F,
                                    .type = FormType::bold}};
    form_row(table.ui(), {.cells = cells, .has_rule = is_last && !has_more});
    if (!has_more) {
        return;
    }
    const std::string sound = line.sound.empty() ? "" : filled(words::sound_is, {line.sound});
    const std::array more{
        FormCell{.text = "", .share = 0.5F},
        FormCell{.text = line.expected, .share = 3.9F, .type = FormType::small, .tone = Tone::soft},
        FormCell{.text = sound, .share = 3.3F, .type = FormType::small, .tone = Tone::soft}};
    form_row(table.ui(), {.cells = more, .has_rule = is_last});
}

void write_entry(OrderTable& table, const SheetEntry& entry)
{
    const std::string number = entry.number > 0 ? std::to_string(entry.number) : "";
    const std::array cells{FormCell{.text = number, .share = 0.5F, .type = FormType::bold},
                           FormCell{.text = entry.title,
                                    .share = 5.0F,
                                    .type = entry.number > 0 ? FormType::bold : FormType::body},
                           FormCell{.text = entry.minutes, .share = 1.0F, .align = 1.0F},
                           FormCell{.text = entry.money, .share = 1.2F, .align = 1.0F}};
    form_row(table.ui(), {.cells = cells, .has_rule = entry.readings.empty()});
    for (std::size_t i = 0; i < entry.readings.size(); ++i) {
        write_reading(table, entry.readings[i], i + 1 == entry.readings.size());
    }
}

void write_totals(OrderTable& table)
{
    const shop::Attempt& attempt = table.desk.attempt();
    const shop::Order& order = attempt.order();
    const auto tone = [](double spent, double budget) {
        return spent > budget ? Tone::warning : Tone::plain;
    };
    const std::string minutes = fixed_text(attempt.minutes(), 0);
    const std::string money = money_text(attempt.money());
    const std::array sums{FormCell{.text = words::total, .share = 5.5F, .type = FormType::bold},
                          FormCell{.text = minutes,
                                   .share = 1.0F,
                                   .type = FormType::bold,
                                   .tone = tone(attempt.minutes(), order.minutes),
                                   .align = 1.0F},
                          FormCell{.text = money,
                                   .share = 1.2F,
                                   .type = FormType::bold,
                                   .tone = tone(attempt.money(), order.money),
                                   .align = 1.0F}};
    form_row(table.ui(), {.cells = sums, .has_rule = false, .is_double = true});
    const std::string most_minutes = fixed_text(order.minutes, 0);
    const std::string most_money = money_text(order.money);
    const std::array budgets{
        FormCell{.text = words::allowed, .share = 5.5F, .tone = Tone::soft},
        FormCell{.text = most_minutes, .share = 1.0F, .tone = Tone::soft, .align = 1.0F},
        FormCell{.text = most_money, .share = 1.2F, .tone = Tone::soft, .align = 1.0F}};
    form_row(table.ui(), {.cells = budgets, .has_rule = false});
}

/// Writes the sheet anew when something was done, or another language is chosen.
void refresh(OrderTable& table)
{
    OrderView& view = table.view;
    const std::size_t lines = table.desk.attempt().lines().size();
    const int attempt = table.desk.attempt_number();
    if (view.sheet_lines != lines || view.sheet_wording != wording_age() ||
        view.sheet_attempt != attempt) {
        view.sheet = job_sheet(table.desk.attempt());
        view.sheet_lines = lines;
        view.sheet_wording = wording_age();
        view.sheet_attempt = attempt;
        view.scrolls_to_end = true;
    }
}

} // namespace

void show_card(OrderTable& table, const sf::FloatRect& box)
{
    Interface& ui = table.ui();
    const shop::Order& order = table.desk.order();
    const std::string level = filled(words::level, {std::to_string(order.level)});
    const Panel panel(ui, {.name = translated(order.title), .box = box, .note = level});
    {
        const ScrollArea area(ui, words::page_order, room_over(table, 34.0F + 4.0F));
        heading(ui, words::complaint_head);
        quotation(ui, translated(order.complaint));
        gap(ui, 6.0F);
        heading(ui, words::customer_head);
        paragraph(ui, translated(order.customer));
        reading(ui, words::weather_now,
                filled(words::weather_value, {readout_of("degC").text(order.weather.temperature.si),
                                              readout_of("kPa").text(order.weather.pressure.si)}));
    }
    const Row row(ui, {1.0F, 1.0F});
    if (button(ui, {.name = words::to_orders})) {
        table.desk.put_away();
        read_shelf(table);
        return;
    }
    if (button(ui, {.name = words::to_bench})) {
        table.bench.view.shows_orders = false;
    }
}

void show_job_sheet(OrderTable& table, const sf::FloatRect& box)
{
    Interface& ui = table.ui();
    refresh(table);
    const Panel panel(ui,
                      {.name = words::page_job_sheet, .box = box, .note = table.desk.student()});
    {
        const ScrollArea area(ui, words::page_job_sheet, room_over(table, 2.0F * 30.0F + 4.0F));
        write_head(table);
        for (const SheetEntry& entry : table.view.sheet) {
            write_entry(table, entry);
        }
        if (table.view.sheet.empty()) {
            gap(ui, 10.0F);
            paragraph(ui, words::sheet_is_empty, Tone::soft);
        }
        if (table.view.scrolls_to_end) {
            show_end(ui);
            table.view.scrolls_to_end = false;
        }
    }
    write_totals(table);
}

} // namespace scenes
