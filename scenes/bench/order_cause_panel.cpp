#include "scenes/bench/order_panels.hpp"

#include "scenes/present/order_words.hpp"
#include "scenes/present/words.hpp"
#include "scenes/ui/form.hpp"
#include "scenes/ui/list.hpp"
#include "scenes/view/number.hpp"

#include <algorithm>
#include <array>

// What the student writes: causes suspected, in their order, and the finding.

namespace scenes {
namespace {

std::vector<std::string> suspects_of(const OrderTable& table)
{
    const shop::Suspect* suspects = table.desk.attempt().suspects();
    return suspects == nullptr ? std::vector<std::string>() : suspects->causes;
}

bool is_among(const std::vector<std::string>& causes, const std::string& cause)
{
    return std::ranges::find(causes, cause) != causes.end();
}

/// All causes that match the search, and a button that suspects the chosen one.
void show_causes(OrderTable& table, float height)
{
    Interface& ui = table.ui();
    OrderView& view = table.view;
    if (text_field(
            ui,
            {.name = words::search_causes, .hint = words::search_causes_hint, .is_search = true},
            view.search)) {
        view.cause = view.search.empty() ? none_selected : 0;
    }
    const auto found = find_faults(*table.desk.order().workshop->rig, view.search);
    std::vector<std::string> causes = suspects_of(table);
    const std::array columns{ListColumn{words::all_causes, 0.0F, false},
                             ListColumn{"", 1.0F, false}};
    const ListAction action =
        list(ui,
             {.name = words::all_causes,
              .columns = columns,
              .row_count = found.size(),
              .cell =
                  [&](std::size_t row, std::size_t column) {
                      const std::string_view text =
                          translated(column == 0 ? found[row]->title : found[row]->where);
                      return std::string(text);
                  },
              .height = height,
              .has_head = false,
              .empty_text = words::no_such_fault},
             view.cause);
    const bool can_suspect = view.cause < found.size() && table.desk.is_ready() &&
                             !is_among(causes, found[view.cause]->id);
    const bool is_wanted =
        button(ui, {.name = words::suspect_it, .is_primary = true, .is_enabled = can_suspect});
    if (can_suspect && (is_wanted || action.has_activated)) {
        causes.push_back(found[view.cause]->id);
        view.suspect = causes.size() - 1;
        act(table, shop::Suspect{std::move(causes)});
    }
}

void rank(OrderTable& table, std::vector<std::string> causes, std::size_t from, std::size_t to)
{
    std::swap(causes[from], causes[to]);
    table.view.suspect = to;
    act(table, shop::Suspect{std::move(causes)});
}

void show_ranking(OrderTable& table, float height)
{
    Interface& ui = table.ui();
    std::size_t& chosen = table.view.suspect;
    std::vector<std::string> causes = suspects_of(table);
    const sim::Rig& rig = *table.desk.order().workshop->rig;
    heading(ui, words::suspected);
    const std::array columns{ListColumn{words::suspected, 1.0F, false}};
    list(ui,
         {.name = words::suspected,
          .columns = columns,
          .row_count = causes.size(),
          .cell =
              [&](std::size_t row, std::size_t) {
                  return std::to_string(row + 1) + "  " +
                         std::string(translated(rig.find_fault(causes[row])->title));
              },
          .height = height,
          .has_head = false,
          .empty_text = words::nothing_suspected},
         chosen);
    const bool has_choice = chosen < causes.size() && table.desk.is_ready();
    const Row row(ui, {1.0F, 1.2F, 1.0F});
    if (button(ui, {.name = words::move_up, .is_enabled = has_choice && chosen > 0})) {
        rank(table, causes, chosen, chosen - 1);
    }
    if (button(ui, {.name = words::move_down,
                    .is_enabled = has_choice && chosen + 1 < causes.size()})) {
        rank(table, causes, chosen, chosen + 1);
    }
    if (button(ui, {.name = words::take_off, .is_enabled = has_choice})) {
        causes.erase(causes.begin() + static_cast<std::ptrdiff_t>(chosen));
        chosen = causes.empty() ? none_selected : std::min(chosen, causes.size() - 1);
        act(table, shop::Suspect{std::move(causes)});
    }
}

shop::Finding finding_of(const FindingDraft& draft, const std::vector<std::string>& suspects)
{
    shop::Finding finding{.causes = {},
                          .advice = static_cast<shop::Advice>(draft.advice),
                          .minutes = draft.minutes,
                          .money = draft.money,
                          .note = draft.note};
    for (const std::string& cause : suspects) {
        const auto ticked = draft.causes.find(cause);
        if (ticked != draft.causes.end() && ticked->second) {
            finding.causes.push_back(cause);
        }
    }
    return finding;
}

void show_tick_causes(OrderTable& table, const std::vector<std::string>& suspects)
{
    Interface& ui = table.ui();
    heading(ui, words::cause_found);
    if (suspects.empty()) {
        paragraph(ui, words::name_suspects_first, Tone::soft);
    }
    for (const std::string& cause : suspects) {
        tick_box(ui,
                 {.name = translated(table.desk.order().workshop->rig->find_fault(cause)->title),
                  .is_enabled = table.desk.is_ready()},
                 table.view.draft.causes[cause]);
    }
}

/// The only help with an estimate: what it comes to beside what the machine is worth.
void show_sum(OrderTable& table)
{
    Interface& ui = table.ui();
    const FindingDraft& draft = table.view.draft;
    const shop::Order& order = table.desk.order();
    const std::string work_name = filled(
        words::work_at_rate, {fixed_text(draft.minutes / 60.0, 2), money_text(order.labour)});
    const std::string work = money_text(price_of(order, draft.minutes, 0.0));
    const std::string parts = money_text(draft.money);
    const std::string all = money_text(price_of(order, draft.minutes, draft.money));
    const std::string worth = money_text(order.worth);
    const auto line = [&](std::string_view name, std::string_view value, FormType type,
                          bool has_rule) {
        const std::array cells{FormCell{.text = name, .share = 3.0F, .type = type},
                               FormCell{.text = value, .share = 1.0F, .type = type, .align = 1.0F}};
        form_row(ui, {.cells = cells, .has_rule = has_rule, .is_double = type == FormType::bold});
    };
    line(work_name, work, FormType::body, true);
    line(words::parts, parts, FormType::body, false);
    line(words::estimate_total, all, FormType::bold, true);
    line(words::worth_of_machine, worth, FormType::body, true);
}

} // namespace

void show_suspects(OrderTable& table)
{
    const Look& look = table.look();
    const float room = room_left(table.ui()) - look.whole(24.0F + 3.0F * 34.0F + 6.0F * 8.0F);
    const float causes = std::max(look.whole(93.0F), std::round(0.58F * room));
    show_causes(table, causes);
    show_ranking(table, room - causes);
}

void show_finding(OrderTable& table)
{
    Interface& ui = table.ui();
    FindingDraft& draft = table.view.draft;
    const bool is_ready = table.desk.is_ready();
    const std::vector<std::string> suspects = suspects_of(table);
    const ScrollArea area(ui, words::page_finding);
    show_tick_causes(table, suspects);
    gap(ui, 6.0F);
    choice(ui,
           {.name = words::advice_to_customer,
            .options = translated(words::advices),
            .is_enabled = is_ready},
           draft.advice);
    constexpr double most_minutes = 600.0;
    slider(ui,
           {.name = words::estimate_work,
            .high = most_minutes,
            .step = 5.0,
            .unit = words::minutes_unit,
            .is_enabled = is_ready},
           draft.minutes);
    slider(ui,
           {.name = words::estimate_parts,
            .high = std::max(100.0, std::ceil(table.desk.order().worth)),
            .step = 1.0,
            .is_enabled = is_ready},
           draft.money);
    show_sum(table);
    gap(ui, 6.0F);
    text_field(ui, {.name = words::note, .is_enabled = is_ready, .lines = 3}, draft.note);
    const shop::Finding finding = finding_of(draft, suspects);
    const shop::Finding* written = table.desk.attempt().finding();
    const bool is_written = written != nullptr && *written == finding;
    paragraph(ui, is_written ? words::finding_written : words::finding_not_written, Tone::soft);
    const Row row(ui, {1.5F, 1.0F});
    if (button(ui, {.name = words::write_finding,
                    .is_primary = !is_written,
                    .is_enabled = is_ready && !is_written && !finding.causes.empty()})) {
        act(table, finding);
    }
    if (button(ui, {.name = words::hand_in,
                    .is_primary = is_written,
                    .is_enabled = is_ready && is_written})) {
        table.view.has_hand_in_open = true;
    }
}

} // namespace scenes
