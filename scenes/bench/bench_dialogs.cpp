#include "scenes/bench/bench_dialogs.hpp"

#include "scenes/bench/bench_machines.hpp"
#include "scenes/bench/settings_dialog.hpp"
#include "scenes/present/run_files.hpp"
#include "scenes/present/wording.hpp"
#include "scenes/present/words.hpp"
#include "scenes/ui/controls.hpp"
#include "scenes/ui/dialog.hpp"
#include "scenes/ui/list.hpp"
#include "scenes/ui/panel.hpp"
#include "sim/error.hpp"

#include <algorithm>
#include <array>
#include <filesystem>

namespace scenes {
namespace {

/// What a list in a dialog can have of the window's height.
float list_height(const BenchDesk& desk, float others)
{
    const Look& look = desk.ui.look();
    return std::clamp(desk.window_height - look.px(others), look.px(70.0F), look.px(420.0F));
}

void show_keys(BenchDesk& desk, std::span<const KeyLine> keys)
{
    const Dialog dialog{desk.ui, {.name = words::keys, .width = 640.0F}, desk.view.has_keys_open};
    if (!dialog) {
        return;
    }
    const std::array columns{ListColumn{words::key_column, 1.2F, false},
                             ListColumn{words::key_does_column, 2.6F, false}};
    std::size_t none = keys.size();
    list(desk.ui,
         {.name = words::keys,
          .columns = columns,
          .row_count = keys.size(),
          .cell = [&](std::size_t row,
                      std::size_t column) { return column == 0 ? keys[row].key : keys[row].does; },
          .height = list_height(desk, 180.0F)},
         none);
    if (button(desk.ui, {.name = words::close, .is_primary = true})) {
        desk.view.has_keys_open = false;
    }
}

void show_save(BenchDesk& desk)
{
    const Dialog dialog{desk.ui, {.name = words::save, .width = 560.0F}, desk.view.has_save_open};
    if (!dialog) {
        return;
    }
    text_field(desk.ui, {.name = words::file_to_save}, desk.view.path);
    const Row row(desk.ui, {1.0F, 1.0F});
    if (button(desk.ui, {.name = words::save_short,
                         .is_primary = true,
                         .is_enabled = !desk.view.path.empty()})) {
        save_run(desk, desk.view.path);
        desk.view.has_save_open = false;
    }
    if (button(desk.ui, {.name = words::cancel})) {
        desk.view.has_save_open = false;
    }
}

void open_run(BenchDesk& desk)
{
    try {
        for (const std::string& fault : desk.model.open(desk.view.path)) {
            desk.view.hidden.hide(fault);
        }
        desk.view.notice = filled(words::opened, {short_path(desk.view.path)});
        desk.view.has_open_open = false;
    } catch (const std::runtime_error& error) { // the file's own troubles
        desk.view.open_trouble = worded(error.what());
    }
}

void show_open(BenchDesk& desk)
{
    const Dialog dialog{desk.ui, {.name = words::open, .width = 560.0F}, desk.view.has_open_open};
    if (!dialog) {
        return;
    }
    const std::vector<std::string> runs = saved_runs(runs_folder());
    const std::array columns{ListColumn{words::file_column, 1.0F, false}};
    std::size_t chosen =
        static_cast<std::size_t>(std::ranges::find(runs, desk.view.path) - runs.begin());
    const ListAction action = list(
        desk.ui,
        {.name = words::saved_runs,
         .columns = columns,
         .row_count = runs.size(),
         .cell = [&](std::size_t row,
                     std::size_t) { return std::filesystem::path(runs[row]).filename().string(); },
         .height = std::min(list_height(desk, 320.0F), desk.ui.look().px(200.0F)),
         .has_head = false,
         .empty_text = words::no_saved_runs},
        chosen);
    if (action.has_selected && chosen < runs.size()) {
        desk.view.path = runs[chosen];
    }
    text_field(desk.ui, {.name = words::file_to_open}, desk.view.path);
    if (!desk.view.open_trouble.empty()) {
        paragraph(desk.ui, desk.view.open_trouble, Tone::warning);
    }
    const Row row(desk.ui, {1.0F, 1.0F});
    const bool is_wanted = button(
        desk.ui,
        {.name = words::open_short, .is_primary = true, .is_enabled = !desk.view.path.empty()});
    if (is_wanted || action.has_activated) {
        open_run(desk);
    }
    if (button(desk.ui, {.name = words::cancel})) {
        desk.view.has_open_open = false;
    }
}

} // namespace

void show_dialogs(BenchDesk& desk, std::span<const KeyLine> keys)
{
    if (desk.view.has_keys_open) {
        show_keys(desk, keys);
    } else if (desk.view.has_settings_open) {
        show_settings(desk);
    } else if (desk.view.has_save_open) {
        show_save(desk);
    } else if (desk.view.has_open_open) {
        show_open(desk);
    } else if (desk.view.has_machines_open) {
        show_machines(desk);
    }
}

void save_run(BenchDesk& desk, const std::string& path)
{
    try {
        make_folder_for(path);
        desk.model.save(path, desk.view.hidden.ids());
        desk.view.notice = filled(words::saved_in, {short_path(path)});
    } catch (const sim::RequestError& error) {
        desk.view.notice = worded(error.what());
    }
}

void keep_frozen_run(BenchDesk& desk)
{
    const std::string path = new_run_path(runs_folder(), desk.model.rig().id, std::time(nullptr));
    try {
        make_folder_for(path);
        desk.model.save(path, desk.view.hidden.ids());
        desk.view.notice = filled(words::kept_in, {short_path(path)});
    } catch (const sim::RequestError& error) {
        desk.view.notice = filled(words::not_kept, {worded(error.what())});
    }
}

} // namespace scenes
