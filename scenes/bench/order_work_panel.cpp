#include "scenes/bench/job_list.hpp"
#include "scenes/bench/order_panels.hpp"

#include "scenes/present/order_words.hpp"
#include "scenes/present/wording.hpp"
#include "scenes/present/words.hpp"
#include "scenes/ui/form.hpp"
#include "scenes/ui/list.hpp"
#include "scenes/view/number.hpp"
#include "sim/error.hpp"

#include <algorithm>
#include <array>

// Checks and repairs to choose from, and the panel that holds them.

namespace scenes {
namespace {

constexpr std::array all_pages{words::page_order,   words::page_machine, words::page_job_sheet,
                               words::page_checks,  words::page_repairs, words::page_suspects,
                               words::page_finding, words::page_marks};
constexpr std::array work_pages{words::page_checks, words::page_repairs, words::page_suspects,
                                words::page_finding, words::page_marks};

/// Pages from one on; the marks only after hand-in.
template <std::size_t Count>
void choose_page(OrderTable& table, const std::array<Phrase, Count>& titles, OrderPage first)
{
    OrderPage& page = table.view.page;
    std::vector<std::string_view> shown = translated(titles);
    if (!table.desk.attempt().is_handed_in()) {
        shown.pop_back();
    }
    const auto from = static_cast<std::size_t>(first);
    std::size_t chosen =
        std::min(std::max(static_cast<std::size_t>(page), from) - from, shown.size() - 1);
    if (choice(table.ui(), {.name = "", .options = shown, .id = words::order_pages}, chosen)) {
        page = static_cast<OrderPage>(from + chosen);
    }
}

/// The permitted jobs whose words have what is searched for.
template <class Job>
std::vector<const Job*> permitted(const std::vector<Job>& all, const std::vector<std::string>& ids,
                                  const std::string& search)
{
    std::vector<const Job*> jobs;
    for (const Job& job : all) {
        if (std::ranges::find(ids, job.id) != ids.end() && has_words(job, search)) {
            jobs.push_back(&job);
        }
    }
    return jobs;
}

void search_for(OrderTable& table, std::string& search, std::size_t& chosen)
{
    if (text_field(table.ui(),
                   {.name = words::search_work, .hint = words::search_work_hint, .is_search = true},
                   search)) {
        chosen = 0;
    }
}

std::string done_text(int times)
{
    return times == 0   ? ""
           : times == 1 ? std::string(words::done_once)
                        : filled(words::done_times, {std::to_string(times)});
}

int times_done(const shop::Attempt& attempt, const std::string& id)
{
    int times = 0;
    for (const shop::JobLine& line : attempt.lines()) {
        const auto* check = std::get_if<shop::DoCheck>(&line.action);
        const auto* repair = std::get_if<shop::DoRepair>(&line.action);
        times +=
            (check != nullptr && check->check == id) || (repair != nullptr && repair->repair == id)
                ? 1
                : 0;
    }
    return times;
}

std::string joined(const std::vector<std::string>& texts)
{
    std::string all;
    for (const std::string& text : texts) {
        all += (all.empty() ? "" : ", ") + std::string(translated(text));
    }
    return all;
}

std::string caution_titles(const shop::Workshop& workshop, const shop::Job& job)
{
    std::vector<std::string> titles;
    for (const std::string& id : job.cautions) {
        titles.push_back(workshop.find_caution(id)->title);
    }
    return joined(titles);
}

/// What a piece of work is for and what it takes.
void show_job(OrderTable& table, const shop::Job& job, std::string_view disturbs)
{
    Interface& ui = table.ui();
    const shop::Workshop& workshop = *table.desk.order().workshop;
    heading(ui, translated(job.title));
    paragraph(ui, translated(job.about));
    gap(ui, 4.0F);
    const std::string tools = joined(job.tools);
    const std::string cautions = caution_titles(workshop, job);
    const auto line = [&](std::string_view name, std::string_view text) {
        if (!text.empty()) {
            const std::array cells{FormCell{.text = name, .share = 1.0F, .tone = Tone::soft},
                                   FormCell{.text = text, .share = 2.2F}};
            form_row(ui, {.cells = cells});
        }
    };
    line(words::tools, tools);
    line(words::begins_from, translated(workshop.find_beginning(job.begins)->title));
    line(words::disturbs, disturbs.empty() ? disturbs : translated(disturbs));
    line(words::cautions, cautions);
}

/// "4 min", and what parts cost where they cost anything.
/// A list of work, what the chosen piece is about, and a button that begins it; gives its index
/// when it is to begin.
template <class Job, class State>
std::optional<std::size_t> choose_job(OrderTable& table, const std::vector<const Job*>& jobs,
                                      std::string_view name, std::string_view begin,
                                      std::size_t& chosen, State state)
{
    Interface& ui = table.ui();
    const Look& look = table.look();
    const bool is_short = room_left(ui) < look.px(330.0F);
    const float height = std::max(look.whole(108.0F), std::round(0.46F * room_left(ui)));
    const ListAction action = job_list(
        ui, jobs, {.name = name, .shares = {0.0F, 1.0F, 1.3F}, .height = height}, state, chosen);
    const bool has_choice = chosen < jobs.size();
    const auto details = [&] {
        if (has_choice) {
            if constexpr (std::is_same_v<Job, shop::Check>) {
                show_job(table, *jobs[chosen], jobs[chosen]->disturbs);
            } else {
                show_job(table, *jobs[chosen], "");
            }
        }
    };
    if (!is_short) {
        const float foot = look.whole(34.0F + 8.0F + 4.0F);
        // Another piece of work is shown from its beginning.
        const ScrollArea area(ui, has_choice ? std::string_view(jobs[chosen]->id) : begin,
                              room_left(ui) - foot);
        details();
    }
    const bool can_begin = has_choice && table.desk.is_ready();
    const bool is_wanted = button(ui, {.name = begin, .is_primary = true, .is_enabled = can_begin});
    if (is_short) { // it scrolls with all the rest
        details();
    }
    return can_begin && (is_wanted || action.has_activated) ? std::optional(chosen) : std::nullopt;
}

/// While a record's work is done again there is nothing to choose.
void show_replay(OrderTable& table)
{
    Interface& ui = table.ui();
    const auto count = static_cast<double>(std::max<std::size_t>(1, table.desk.to_replay()));
    progress(ui, words::doing_again, static_cast<double>(table.desk.replayed()) / count);
    paragraph(ui,
              filled(words::doing_again_count, {std::to_string(table.desk.replayed()),
                                                std::to_string(table.desk.to_replay())}),
              Tone::soft);
}

} // namespace

bool act(OrderTable& table, const shop::Action& action)
{
    try {
        table.desk.act(action);
        table.view.notice.clear();
        return true;
    } catch (const sim::RequestError& error) { // the reason why not
        table.view.notice = worded(error.what());
        return false;
    }
}

void show_checks(OrderTable& table)
{
    const shop::Order& order = table.desk.order();
    if (order.checks.empty()) {
        paragraph(table.ui(), words::no_checks, Tone::soft);
        return;
    }
    search_for(table, table.view.check_search, table.view.check);
    const auto checks = permitted(order.workshop->checks, order.checks, table.view.check_search);
    const auto chosen = choose_job(table, checks, words::page_checks, words::do_check,
                                   table.view.check, [&](const shop::Check& check) {
                                       return done_text(times_done(table.desk.attempt(), check.id));
                                   });
    if (chosen) {
        begin_check(table, checks[*chosen]->id);
    }
}

void show_repairs(OrderTable& table)
{
    const shop::Order& order = table.desk.order();
    if (order.repairs.empty()) {
        paragraph(table.ui(), words::no_repairs, Tone::soft);
        return;
    }
    search_for(table, table.view.repair_search, table.view.repair);
    const auto repairs =
        permitted(order.workshop->repairs, order.repairs, table.view.repair_search);
    const auto chosen = choose_job(
        table, repairs, words::page_repairs, words::do_repair, table.view.repair,
        [&](const shop::Repair& repair) {
            const std::string done = done_text(times_done(table.desk.attempt(), repair.id));
            return done.empty()
                       ? std::string(words::repair_kinds[static_cast<std::size_t>(repair.kind)])
                       : done;
        });
    if (chosen) {
        begin_repair(table, repairs[*chosen]->id);
    }
}

void show_order_pages(OrderTable& table, const sf::FloatRect& box)
{
    const Panel panel(table.ui(),
                      {.name = words::order_pages, .box = box, .note = {}, .has_head = false});
    choose_page(table, all_pages, OrderPage::order);
}

void show_work(OrderTable& table, const OrderLayout& layout)
{
    Interface& ui = table.ui();
    const Panel panel(ui, {.name = words::work, .box = layout.work, .note = {}, .has_head = false});
    if (!layout.is_compact) {
        choose_page(table, work_pages, OrderPage::checks);
    }
    if (table.desk.is_replaying()) {
        show_replay(table);
        return;
    }
    switch (table.view.page) {
    case OrderPage::repairs:
        show_repairs(table);
        break;
    case OrderPage::suspects:
        show_suspects(table);
        break;
    case OrderPage::finding:
        show_finding(table);
        break;
    case OrderPage::marks:
        show_marks(table);
        break;
    case OrderPage::order:
    case OrderPage::machine:
    case OrderPage::sheet:
    case OrderPage::checks:
        show_checks(table);
        break;
    }
}

} // namespace scenes
