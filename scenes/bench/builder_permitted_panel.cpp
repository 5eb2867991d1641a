#include "scenes/bench/builder_view.hpp"
#include "scenes/bench/job_list.hpp"

#include "scenes/present/builder_words.hpp"
#include "scenes/present/job_sheet.hpp"
#include "scenes/present/order_words.hpp"
#include "scenes/present/reading_words.hpp"
#include "scenes/ui/controls.hpp"
#include "scenes/ui/form.hpp"
#include "scenes/ui/list.hpp"
#include "scenes/ui/panel.hpp"
#include "scenes/view/number.hpp"
#include "sim/ids.hpp"

#include <algorithm>
#include <array>
#include <optional>

// Checks and repairs that a student may do, checks to pass, guesses to make.

namespace scenes {
namespace {

template <class Job>
std::vector<const Job*> found(const std::vector<Job>& all, const std::string& search)
{
    std::vector<const Job*> jobs;
    for (const Job& job : all) {
        if (has_words(job, search)) {
            jobs.push_back(&job);
        }
    }
    return jobs;
}

void permit(BuilderTable& table, std::vector<std::string>& ids, const std::vector<std::string>& all,
            const std::string& id, bool is_in)
{
    set_id(ids, all, id, is_in);
    tidy(table.next);
}

/// A list of work with what is permitted of it; gives the piece that is chosen.
template <class Job, class State>
const Job* choose_work(BuilderTable& table, const std::vector<Job>& all,
                       std::vector<std::string>& ids, std::string_view name, std::size_t& chosen,
                       State state)
{
    Interface& ui = table.ui();
    const auto jobs = found(all, table.view.work_search);
    const std::vector<std::string> all_ids = sim::ids_of(all);
    // Where there is less room the name has a line of its own.
    const bool is_wide = table.look().scale < 1.3F;
    const float height = std::max(table.look().whole(124.0F), std::round(0.5F * room_left(ui)));
    const ListAction action = job_list(
        ui, jobs, {.name = name, .shares = {is_wide ? 3.0F : 0.0F, 1.0F, 1.1F}, .height = height},
        state, chosen);
    const Job* job = chosen < jobs.size() ? jobs[chosen] : nullptr;
    const bool is_in = job != nullptr && has_id(ids, job->id);
    const Row row(ui, {1.0F, 1.0F, 1.0F});
    const bool is_pressed = button(ui, {.name = is_in ? words::forbid : words::permit,
                                        .is_enabled = job != nullptr,
                                        .id = words::permit});
    if (job != nullptr && (is_pressed || action.has_activated)) {
        permit(table, ids, all_ids, job->id, !is_in);
    }
    if (button(ui, {.name = words::permit_all})) {
        ids = all_ids;
    }
    if (button(ui, {.name = words::forbid_all})) {
        ids.clear();
        tidy(table.next);
    }
    return job;
}

bool has_sound(const shop::Check& check)
{
    return std::ranges::any_of(check.procedure.readings, &shop::Reading::has_sound);
}

void choose_guess(BuilderTable& table, const shop::Check& check)
{
    std::vector<std::string_view> options{words::no_guess};
    for (const shop::Reading& reading : check.procedure.readings) {
        if (!guesses_of(reading).empty()) {
            options.push_back(translated(reading.title));
        }
    }
    auto& asks = table.next.predictions;
    const auto ask = std::ranges::find(asks, check.id, &shop::Order::Ask::check);
    std::size_t chosen = 0;
    std::vector<std::string> ids{""};
    for (const shop::Reading& reading : check.procedure.readings) {
        if (!guesses_of(reading).empty()) {
            ids.push_back(reading.id);
            if (ask != asks.end() && ask->reading == reading.id) {
                chosen = ids.size() - 1;
            }
        }
    }
    if (choice(table.ui(), {.name = words::guess_before, .options = options}, chosen)) {
        std::erase_if(asks, [&](const auto& each) { return each.check == check.id; });
        if (chosen > 0) {
            asks.push_back({check.id, ids[chosen]});
        }
    }
}

void show_checks_to_permit(BuilderTable& table)
{
    Interface& ui = table.ui();
    const auto& all = table.workshop().checks;
    const shop::Check* check =
        choose_work(table, all, table.next.checks, words::page_checks, table.view.check,
                    [&](const shop::Check& each) -> std::string {
                        return has_id(table.next.solved, each.id)   ? words::must_pass
                               : has_id(table.next.checks, each.id) ? words::is_permitted
                                                                    : std::string();
                    });
    paragraph(ui,
              filled(words::counted,
                     {std::to_string(table.next.checks.size()), std::to_string(all.size()),
                      std::to_string(table.next.solved.size())}),
              Tone::soft);
    if (check == nullptr) {
        return;
    }
    std::optional<ScrollArea> area;
    if (!table.is_low) {
        area.emplace(ui, check->id);
    }
    heading(ui, translated(check->title));
    paragraph(ui, translated(check->about), Tone::soft);
    if (!has_id(table.next.checks, check->id)) {
        return;
    }
    if (!has_sound(*check)) {
        paragraph(ui, words::has_no_sound, Tone::soft);
    } else {
        bool is_to_pass = has_id(table.next.solved, check->id);
        if (tick_box(ui, {.name = words::pass_afterwards}, is_to_pass)) {
            set_id(table.next.solved, sim::ids_of(all), check->id, is_to_pass);
        }
    }
    choose_guess(table, *check);
}

void show_repairs_to_permit(BuilderTable& table)
{
    Interface& ui = table.ui();
    const auto& all = table.workshop().repairs;
    const shop::Repair* repair = choose_work(
        table, all, table.next.repairs, words::page_repairs, table.view.repair,
        [&](const shop::Repair& each) -> std::string {
            return has_id(table.next.repairs, each.id) ? words::is_permitted : std::string();
        });
    paragraph(ui,
              filled(words::counted_repairs,
                     {std::to_string(table.next.repairs.size()), std::to_string(all.size())}),
              Tone::soft);
    if (repair != nullptr) {
        std::optional<ScrollArea> area;
        if (!table.is_low) {
            area.emplace(ui, repair->id);
        }
        heading(ui, translated(repair->title));
        paragraph(ui, translated(repair->about), Tone::soft);
    }
}

} // namespace

void show_builder_permitted(BuilderTable& table)
{
    Interface& ui = table.ui();
    const std::array kinds{std::string_view(words::page_checks),
                           std::string_view(words::page_repairs)};
    choice(ui, {.name = "", .options = kinds, .id = words::kind_of_work}, table.view.kind);
    if (text_field(ui,
                   {.name = words::search_work, .hint = words::search_work_hint, .is_search = true},
                   table.view.work_search)) {
        table.view.check = table.view.repair = 0;
    }
    if (table.view.kind == 0) {
        show_checks_to_permit(table);
    } else {
        show_repairs_to_permit(table);
    }
}

} // namespace scenes
