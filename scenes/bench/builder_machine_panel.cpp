#include "scenes/bench/builder_view.hpp"

#include "scenes/present/builder_words.hpp"
#include "scenes/present/readout.hpp"
#include "scenes/shop/order_files.hpp"
#include "scenes/ui/controls.hpp"
#include "scenes/ui/list.hpp"
#include "scenes/ui/panel.hpp"
#include "scenes/view/number.hpp"

#include <algorithm>
#include <array>

// The builder's first page: where the order begins, the machine, the weather, what happened before.

namespace scenes {
namespace {

void show_beginnings(BuilderTable& table)
{
    Interface& ui = table.ui();
    heading(ui, words::begin_from);
    const Row row(ui, {1.0F, 1.35F, 1.0F});
    if (button(ui, {.name = words::begin_empty})) {
        begin_draft(table, empty_draft(table.workshop()), "");
    }
    const bool has_workshop = has_id(table.view.rigs, table.bench.model.rig().id);
    if (button(ui, {.name = words::begin_bench, .is_enabled = has_workshop})) {
        try_to(table, [&] {
            const sim::Simulator& machine = table.bench.model.run().machine();
            begin_draft(table, draft_of(*table.workshops.of(table.bench.model.rig().id), machine),
                        "");
        });
    }
    if (button(ui, {.name = words::begin_other})) {
        table.view.shelf = orders_on_shelf(table.workshops, shop::order_files());
        table.view.order = 0;
        table.view.has_orders_open = true;
    }
}

void choose_rig(BuilderTable& table)
{
    BuilderView& view = table.view;
    std::vector<std::string> titles;
    for (const std::string& rig : view.rigs) {
        const std::string_view title = translated(table.workshops.of(rig)->rig->title);
        titles.emplace_back(title.substr(0, title.find(',')));
    }
    const std::vector<std::string_view> options(titles.begin(), titles.end());
    auto chosen =
        static_cast<std::size_t>(std::ranges::find(view.rigs, table.next.rig) - view.rigs.begin());
    if (choice(table.ui(), {.name = words::page_machine_of_order, .options = options}, chosen)) {
        // Faults, checks and repairs are others there; what is written stays.
        DraftValues fresh = empty_draft(*table.workshops.of(view.rigs[chosen]));
        fresh.title = table.next.title;
        fresh.level = table.next.level;
        fresh.customer = table.next.customer;
        fresh.complaint = table.next.complaint;
        fresh.temperature = table.next.temperature;
        fresh.pressure = table.next.pressure;
        fresh.weights = table.next.weights;
        fresh.seed = table.next.seed;
        table.next = std::move(fresh);
        view.fault = view.check = view.repair = 0;
    }
}

void choose_level(BuilderTable& table)
{
    constexpr std::array<std::string_view, 4> levels{"1", "2", "3", "4"};
    auto level = static_cast<std::size_t>(table.next.level - 1);
    if (choice(table.ui(), {.name = words::level_choice, .options = levels}, level)) {
        table.next.level = static_cast<int>(level) + 1;
    }
}

void show_weather(BuilderTable& table)
{
    const Readout temperature = readout_of("degC");
    const std::string shown = temperature.text(table.next.temperature);
    constexpr double zero = 273.15;
    double celsius = table.next.temperature - zero;
    entry(table,
          {.name = words::air_temperature,
           .low = -25.0,
           .high = 45.0,
           .step = 1.0,
           .value_text = shown,
           .rest = 20.0},
          celsius);
    table.next.temperature = celsius + zero;
    const std::string pressure = readout_of("kPa").text(table.next.pressure);
    constexpr double kilo = 1e3;
    double kilopascals = table.next.pressure / kilo;
    entry(table,
          {.name = words::air_pressure,
           .low = 70.0,
           .high = 105.0,
           .step = 0.5,
           .value_text = pressure,
           .rest = 101.325},
          kilopascals);
    table.next.pressure = kilopascals * kilo;
}

void choose_history(BuilderTable& table)
{
    BuilderView& view = table.view;
    if (view.histories_of != table.next.rig) {
        view.histories = shop::ready_histories(table.workshops.assets(), table.next.rig);
        view.histories_of = table.next.rig;
    }
    std::vector<std::string> steps;
    for (const shop::History& history : view.histories) {
        steps.push_back(history.steps);
    }
    std::vector<std::string_view> options = translated(words::histories);
    if (std::ranges::find(steps, table.next.history) == steps.end()) {
        view.own_history = table.next.history;
    }
    if (!view.own_history.empty()) {
        steps.push_back(view.own_history);
        options.push_back(words::history_own);
    }
    auto chosen =
        static_cast<std::size_t>(std::ranges::find(steps, table.next.history) - steps.begin());
    if (choice(table.ui(), {.name = words::history_choice, .options = options}, chosen)) {
        table.next.history = steps[chosen];
    }
}

} // namespace

void show_builder_machine(BuilderTable& table)
{
    Interface& ui = table.ui();
    show_beginnings(table);
    rule(ui);
    entry(table, {.name = words::order_title, .hint = words::order_title_hint}, table.next.title);
    choose_rig(table);
    choose_level(table);
    show_weather(table);
    choose_history(table);
    auto seed = static_cast<double>(table.next.seed);
    entry(table, {.name = words::seed, .low = 0.0, .high = std::max(99.0, seed), .step = 1.0},
          seed);
    table.next.seed = static_cast<std::uint64_t>(seed + 0.5);
    paragraph(ui, words::seed_note, Tone::soft);
}

} // namespace scenes
