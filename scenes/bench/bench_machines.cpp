#include "scenes/bench/bench_machines.hpp"

#include "scenes/present/wording.hpp"
#include "scenes/present/words.hpp"
#include "scenes/ui/controls.hpp"
#include "scenes/ui/dialog.hpp"
#include "scenes/ui/list.hpp"
#include "scenes/ui/panel.hpp"
#include "sim/error.hpp"

#include <algorithm>
#include <array>

namespace scenes {
namespace {

/// The entry of a rig; a rig with an error in it has the error for a title.
MachineEntry entry_of(const std::string& id)
{
    try {
        return {id, sim::load_rig(id).title};
    } catch (const sim::AssetError& error) {
        return {id, worded(error.what())};
    }
}

void put_on_bench(BenchDesk& desk)
{
    try {
        desk.model.choose(std::make_shared<const sim::Rig>(
            sim::load_rig(desk.view.machines[desk.view.machine].id)));
        desk.view.has_machines_open = false;
    } catch (const sim::AssetError& error) {
        desk.view.open_trouble = worded(error.what());
    }
}

} // namespace

void open_machines(BenchDesk& desk)
{
    BenchView& view = desk.view;
    view.machines.clear();
    for (const std::string& id : sim::rig_ids()) {
        view.machines.push_back(entry_of(id));
    }
    const auto shown = std::ranges::find(view.machines, desk.model.rig().id, &MachineEntry::id);
    view.machine = static_cast<std::size_t>(shown - view.machines.begin());
    view.open_trouble.clear();
    view.has_machines_open = true;
}

void show_machines(BenchDesk& desk)
{
    BenchView& view = desk.view;
    const Dialog dialog{
        desk.ui, {.name = words::choose_machine, .width = 620.0F}, view.has_machines_open};
    if (!dialog) {
        return;
    }
    const std::array columns{ListColumn{words::machines, 1.0F, false}};
    const Look& look = desk.ui.look();
    const ListAction action = list(
        desk.ui,
        {.name = words::machines,
         .columns = columns,
         .row_count = view.machines.size(),
         .cell = [&](std::size_t row,
                     std::size_t) { return std::string(translated(view.machines[row].title)); },
         .height =
             std::clamp(desk.window_height - look.px(280.0F), look.px(70.0F), look.px(160.0F)),
         .has_head = false},
        view.machine);
    if (!view.open_trouble.empty()) {
        paragraph(desk.ui, view.open_trouble, Tone::warning);
    }
    const Row row(desk.ui, {1.0F, 1.0F});
    const bool has_choice = view.machine < view.machines.size();
    const bool is_wanted = button(
        desk.ui, {.name = words::put_on_bench, .is_primary = true, .is_enabled = has_choice});
    if (has_choice && (is_wanted || action.has_activated)) {
        put_on_bench(desk);
    }
    if (button(desk.ui, {.name = words::cancel})) {
        view.has_machines_open = false;
    }
}

} // namespace scenes
