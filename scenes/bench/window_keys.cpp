#include "scenes/bench/bench_keys.hpp"
#include "scenes/bench/bench_machines.hpp"
#include "scenes/bench/settings_dialog.hpp"
#include "scenes/bench/time_dialogs.hpp"
#include "scenes/present/run_files.hpp"

#include <array>
#include <ctime>

// Keys for pages, views, settings and dialogs.

namespace scenes {
namespace {

using Key = sf::Keyboard;
constexpr Modifiers control{.control = true};
constexpr Modifiers control_shift{.control = true, .shift = true};

} // namespace

void BenchKeys::take_window(BenchDesk& desk)
{
    Interface& ui = desk.ui;
    BenchView& view = desk.view;
    if (ui.take_key(Key::F1)) {
        view.has_keys_open = !view.has_keys_open;
    }
    if (ui.take_key(Key::U)) {
        desk.settings.change([](Settings& s) { s.is_muted = !s.is_muted; });
    }
    if (ui.take_key(Key::C)) {
        desk.settings.change([](Settings& s) { s.has_captions = !s.has_captions; });
    }
    if (ui.take_key(Key::F8)) {
        view.has_settings_open = !view.has_settings_open;
    }
    if (ui.take_key(Key::F5)) {
        view.is_projector = !view.is_projector;
    } else if (view.is_projector && ui.take_key(Key::Escape)) {
        view.is_projector = false;
    } else if (ui.has_focus() && ui.take_key(Key::Escape)) {
        ui.drop_focus();
    }
    if (ui.take_key(Key::F9)) {
        switch_ground(desk.settings);
    }
    if (ui.take_key(Key::Equal, control) || ui.take_key(Key::Equal, control_shift) ||
        ui.take_key(Key::Add, control)) {
        change_text_size(desk.settings, 1);
    }
    if (ui.take_key(Key::Hyphen, control) || ui.take_key(Key::Subtract, control)) {
        change_text_size(desk.settings, -1);
    }
    if (ui.take_key(Key::Num0, control)) {
        change_text_size(desk.settings, 0);
    }
    view.wants_to_quit = view.wants_to_quit || ui.take_key(Key::Q, control);
}

void BenchKeys::take_bench(BenchDesk& desk)
{
    Interface& ui = desk.ui;
    BenchView& view = desk.view;
    const std::array pages{std::pair{Key::F2, Page::controls}, std::pair{Key::F3, Page::faults},
                           std::pair{Key::F4, Page::run}, std::pair{Key::F7, Page::changes}};
    for (const auto& [key, page] : pages) {
        if (ui.take_key(key)) {
            view.page = page;
        }
    }
    take_window(desk);
    if (ui.has_dialog()) {
        return;
    }
    if (ui.take_key(Key::W)) {
        view.wants_orders = true;
    }
    if (ui.take_key(Key::I)) {
        view.wants_builder = true;
    }
    if (ui.take_key(Key::Z, control)) {
        desk.model.undo();
    }
    if (ui.take_key(Key::Z, control_shift)) {
        desk.model.redo();
    }
    if (ui.take_key(Key::G)) {
        open_ahead(desk);
    }
    if (ui.take_key(Key::R)) {
        open_branches(desk);
    }
    if (ui.take_key(Key::S, control)) {
        view.path = new_run_path(runs_folder(), desk.model.rig().id, std::time(nullptr));
        view.has_save_open = true;
    }
    if (ui.take_key(Key::M) && !desk.model.is_busy()) {
        open_machines(desk);
    }
    if (ui.take_key(Key::O, control) && !desk.model.is_busy()) {
        view.path.clear();
        view.open_trouble.clear();
        view.has_open_open = true;
    }
}

} // namespace scenes
