#include "scenes/present/job_sheet.hpp"
#include "scenes/present/order_words.hpp"
#include "scenes/present/reading_words.hpp"
#include "scenes/present/worksheet_words.hpp"
#include "scenes/shop/print_page.hpp"
#include "scenes/shop/worksheet.hpp"
#include "scenes/view/number.hpp"

#include <algorithm>
#include <array>

// What the instructor keeps of a worksheet.

namespace shop {
namespace {

namespace words = scenes::words;
using scenes::filled;
using scenes::fixed_text;
using scenes::money_text;
using scenes::translated;

std::string_view advice_text(Advice advice)
{
    return words::advices.at(static_cast<std::size_t>(advice));
}

void put_hidden(PrintPage& page, const Order& order)
{
    page.heading(words::what_is_hidden);
    const sim::Rig& rig = *order.workshop->rig;
    for (const sim::SetFault& hidden : order.answer.faults) {
        const sim::Fault& fault = *rig.find_fault(hidden.fault);
        const std::string share =
            filled(words::of_its_worst, {fixed_text(100.0 * hidden.severity, 0)});
        page.paragraph(text_of(fault.title) + ", " + share);
        const std::vector<std::pair<std::string, std::string>> facts{
            {words::where_it_is, text_of(fault.where)},
            {words::how_it_works, text_of(fault.about)},
            {words::look_shows, text_of(fault.found)}};
        page.facts(facts);
    }
    std::vector<std::pair<std::string, std::string>> facts{
        {words::finding_of_order, text_of(order.answer.finding)},
        {words::advice_of_order, std::string(advice_text(order.answer.advice))}};
    if (!order.answer.causes.empty()) {
        facts.emplace_back(words::also_right, scenes::fault_titles(rig, order.answer.causes));
    }
    page.facts(facts);
}

struct StepText {
    const Order& order;

    std::string operator()(const Predict& step) const
    {
        const Reading& reading =
            *order.workshop->find_check(step.check)->procedure.find(step.reading);
        return filled(words::expect_line,
                      {translated(order.workshop->find_check(step.check)->title),
                       text_of(reading.title) + ": " + scenes::guess_text(reading, step.guess)});
    }
    std::string operator()(const DoCheck& step) const
    {
        return text_of(order.workshop->find_check(step.check)->title);
    }
    std::string operator()(const DoRepair& step) const
    {
        return filled(words::sheet_repair,
                      {translated(order.workshop->find_repair(step.repair)->title)});
    }
    std::string operator()(const Suspect& step) const
    {
        return filled(words::sheet_suspects,
                      {scenes::fault_titles(*order.workshop->rig, step.causes)});
    }
    std::string operator()(const Finding& step) const
    {
        return filled(words::sheet_finding,
                      {scenes::fault_titles(*order.workshop->rig, step.causes)}) +
               "\n" + std::string(advice_text(step.advice)) + ", " +
               filled(words::minutes_and_parts,
                      {fixed_text(step.minutes, 0), money_text(step.money)});
    }
    std::string operator()(const HandIn& /*step*/) const { return words::sheet_handed_in; }
};

/// What was read, and what a sound machine would show, reading by reading.
std::array<std::string, 2> readings_of(const Order& order, const JobLine& line)
{
    std::array<std::string, 2> texts;
    const auto* done = std::get_if<DoCheck>(&line.action);
    if (done == nullptr) {
        return texts;
    }
    const auto& readings = order.workshop->find_check(done->check)->procedure.readings;
    for (std::size_t r = 0; r < line.observations.size(); ++r) {
        const std::string lead = r == 0 ? "" : "\n";
        const std::string title = text_of(readings[r].title) + ": ";
        texts[0] += lead + title + scenes::shown_text(readings[r], line.observations[r]);
        if (const std::string sound = scenes::sound_words(readings[r]); !sound.empty()) {
            texts[1] += (texts[1].empty() ? "" : "\n") + title + sound;
        }
    }
    return texts;
}

void put_good_work(PrintPage& page, const Order& order, const Path& good)
{
    const std::vector<PrintColumn> columns{{words::column_step, 26},
                                           {words::column_read, 31},
                                           {words::column_sound, 28},
                                           {words::sheet_minutes, 6, true},
                                           {words::sheet_parts, 9, true}};
    std::vector<std::vector<std::string>> rows;
    for (const JobLine& line : good.lines) {
        const auto read = readings_of(order, line);
        rows.push_back({std::visit(StepText{order}, line.action), read[0], read[1],
                        fixed_text(line.minutes, 0), money_text(line.money)});
    }
    rows.push_back({words::in_all, "", "", fixed_text(good.minutes, 0), money_text(good.money)});
    rows.push_back(
        {words::allowed_to_spend, "", "", fixed_text(order.minutes, 0), money_text(order.money)});
    page.heading(words::good_work);
    page.table(columns, rows);
    page.paragraph(filled(words::work_and_parts,
                          {money_text(scenes::price_of(order, good.minutes, good.money))}));
}

void put_tests(PrintPage& page, const Order& order)
{
    std::vector<std::string> tests;
    for (const std::string& id : order.solved) {
        const Check& check = *order.workshop->find_check(id);
        std::string text = text_of(check.title);
        for (const Reading& reading : check.procedure.readings) {
            if (reading.has_sound()) {
                text += "\n" + text_of(reading.title) + ": " + scenes::sound_words(reading);
            }
        }
        tests.push_back(text);
    }
    page.heading(words::judged_by);
    page.list(tests);
}

void put_marks(PrintPage& page, const Order& order)
{
    const Order::Weights& weights = order.weights;
    const std::array values{weights.solved, weights.cause,    weights.minutes, weights.money,
                            weights.order,  weights.verified, weights.harm,    weights.cautions};
    const std::vector<PrintColumn> columns{
        {words::column_mark, 22}, {words::column_marks, 9, true}, {words::column_why, 69}};
    std::vector<std::vector<std::string>> rows;
    for (std::size_t i = 0; i < values.size(); ++i) {
        rows.push_back(
            {words::mark_titles.at(i), fixed_text(values.at(i), 0), words::mark_rules.at(i)});
    }
    rows.push_back({words::in_all, fixed_text(weights.sum(), 0), ""});
    page.heading(words::marks_scheme);
    page.table(columns, rows);
}

void put_look_alikes(PrintPage& page, const Order& order, const Review& review)
{
    page.heading(words::look_alikes);
    if (review.alike.empty()) {
        page.paragraph(words::no_look_alikes);
        return;
    }
    std::vector<std::string> titles;
    for (const std::string& id : review.alike) {
        const sim::Fault* fault = order.workshop->rig->find_fault(id);
        const std::string title = fault == nullptr ? id : text_of(fault->title);
        const bool is_meant =
            std::ranges::find(review.unmeant, id) == review.unmeant.end() && fault != nullptr;
        titles.push_back(is_meant ? filled(words::look_alike_meant, {title}) : title);
    }
    page.paragraph(words::look_alikes_note);
    page.list(titles);
}

} // namespace

std::string answer_key_html(const Order& order, const Review& review)
{
    PrintPage page(translated(order.title), words::answer_key);
    page.paragraph(words::for_instructor);
    put_hidden(page, order);
    put_good_work(page, order, review.good);
    put_tests(page, order);
    put_marks(page, order);
    put_look_alikes(page, order, review);
    return page.text();
}

} // namespace shop
