#include "scenes/shop/worksheet.hpp"

#include "scenes/present/job_sheet.hpp"
#include "scenes/present/order_words.hpp"
#include "scenes/present/readout.hpp"
#include "scenes/present/worksheet_words.hpp"
#include "scenes/shop/print_page.hpp"
#include "scenes/view/number.hpp"

#include <algorithm>

namespace shop {
namespace {

namespace words = scenes::words;
using scenes::filled;
using scenes::fixed_text;
using scenes::money_text;
using scenes::translated;

std::string joined(const std::vector<std::string>& texts)
{
    std::string all;
    for (const std::string& text : texts) {
        all += (all.empty() ? "" : ", ") + text_of(text);
    }
    return all;
}

std::string caution_titles(const Workshop& workshop, const Job& job)
{
    std::vector<std::string> titles;
    for (const std::string& id : job.cautions) {
        titles.push_back(workshop.find_caution(id)->title);
    }
    return joined(titles);
}

void put_customer(PrintPage& page, const Order& order)
{
    page.heading(words::complaint_head);
    page.quotation(translated(order.complaint));
    page.heading(words::customer_head);
    page.paragraph(translated(order.customer));
    const std::vector<std::pair<std::string, std::string>> facts{
        {words::sheet_machine, text_of(order.workshop->rig->title)},
        {words::weather_now, filled(words::weather_value,
                                    {scenes::readout_of("degC").text(order.weather.temperature.si),
                                     scenes::readout_of("kPa").text(order.weather.pressure.si)})},
        {words::budget_minutes, filled(words::some_minutes, {fixed_text(order.minutes, 0)})},
        {words::budget_money, money_text(order.money)},
        {words::labour_hour, money_text(order.labour)},
        {words::worth_of_machine, money_text(order.worth)}};
    page.facts(facts);
}

template <class Each>
void for_permitted(const Order& order, Each each)
{
    for (const std::string& id : order.checks) {
        each(static_cast<const Job&>(*order.workshop->find_check(id)));
    }
    for (const std::string& id : order.repairs) {
        each(static_cast<const Job&>(*order.workshop->find_repair(id)));
    }
}

void put_cautions(PrintPage& page, const Order& order)
{
    std::vector<std::string> ids;
    for_permitted(order, [&](const Job& job) {
        for (const std::string& id : job.cautions) {
            if (std::ranges::find(ids, id) == ids.end()) {
                ids.push_back(id);
            }
        }
    });
    std::vector<std::string> says;
    for (const std::string& id : ids) {
        const Caution& caution = *order.workshop->find_caution(id);
        says.push_back(text_of(caution.title) + ": " + text_of(caution.says));
    }
    page.heading(words::cautions);
    page.paragraph(words::worksheet_cautions);
    page.list(says);
}

void put_checks(PrintPage& page, const Order& order)
{
    const std::vector<PrintColumn> columns{{words::column_check, 28},
                                           {words::column_with, 23},
                                           {words::cautions, 34},
                                           {words::sheet_minutes, 6, true},
                                           {words::sheet_parts, 9, true}};
    std::vector<std::vector<std::string>> rows;
    for (const std::string& id : order.checks) {
        const Check& check = *order.workshop->find_check(id);
        rows.push_back({text_of(check.title), joined(check.tools),
                        caution_titles(*order.workshop, check), fixed_text(check.minutes, 0),
                        money_text(check.money)});
    }
    page.heading(words::checks_allowed);
    page.table(columns, rows);
}

void put_repairs(PrintPage& page, const Order& order)
{
    const std::vector<PrintColumn> columns{{words::column_repair, 33},
                                           {words::column_kind, 12},
                                           {words::cautions, 40},
                                           {words::sheet_minutes, 6, true},
                                           {words::sheet_parts, 9, true}};
    std::vector<std::vector<std::string>> rows;
    for (const std::string& id : order.repairs) {
        const Repair& repair = *order.workshop->find_repair(id);
        rows.push_back({text_of(repair.title),
                        words::repair_kinds.at(static_cast<std::size_t>(repair.kind)),
                        caution_titles(*order.workshop, repair), fixed_text(repair.minutes, 0),
                        money_text(repair.money)});
    }
    page.heading(words::repairs_allowed);
    page.table(columns, rows);
}

void put_job_sheet(PrintPage& page, const Order& order)
{
    constexpr std::size_t lines = 12;
    constexpr int height = 17; // mm, for two or three lines by hand
    page.new_sheet();
    page.heading(words::page_job_sheet);
    std::vector<std::string> asks;
    for (const Order::Ask& ask : order.predictions) {
        const Check& check = *order.workshop->find_check(ask.check);
        asks.push_back(
            filled(words::expect_line, {translated(check.title),
                                        translated(check.procedure.find(ask.reading)->title)}));
    }
    if (!asks.empty()) {
        page.paragraph(words::expect_first);
        page.list(asks);
    }
    const std::vector<PrintColumn> columns{
        {words::column_number, 5},    {words::column_suspected, 15},
        {words::column_work, 14},     {words::column_expected, 13},
        {words::column_read, 13},     {words::column_conclusion, 16},
        {words::column_next, 9},      {words::sheet_minutes, 6, true},
        {words::sheet_parts, 9, true}};
    std::vector<std::vector<std::string>> rows;
    for (std::size_t i = 1; i <= lines; ++i) {
        rows.emplace_back(columns.size());
        rows.back().front() = std::to_string(i);
    }
    page.table(columns, rows, height);
}

void put_finding(PrintPage& page, const Order& order)
{
    page.new_sheet();
    page.heading(words::finding_and_advice);
    page.paragraph(words::cause_line);
    page.lines(3);
    page.paragraph(words::reasons_line);
    page.lines(8);
    page.paragraph(words::advice_to_customer);
    const std::vector<std::string> advices(words::advices.begin(), words::advices.end());
    page.ticks(advices);
    const std::vector<PrintColumn> columns{{words::estimate, 70}, {"", 30, true}};
    const std::vector<std::vector<std::string>> rows{
        {words::hours, ""},
        {filled(words::work_at_rate, {"\u2026", money_text(order.labour)}), ""},
        {words::parts, ""},
        {words::estimate_total, ""},
        {words::worth_of_machine, money_text(order.worth)}};
    constexpr int height = 8; // mm
    page.table(columns, rows, height);
}

} // namespace

std::string worksheet_html(const Order& order)
{
    PrintPage page(translated(order.title), words::worksheet);
    const std::vector<std::string> blanks{words::worksheet_name, words::worksheet_date};
    page.blanks(blanks);
    put_customer(page, order);
    put_cautions(page, order);
    put_checks(page, order);
    put_repairs(page, order);
    put_job_sheet(page, order);
    put_finding(page, order);
    return page.text();
}

} // namespace shop
