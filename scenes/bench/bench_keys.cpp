#include "scenes/bench/bench_keys.hpp"

#include "scenes/bench/bench_machines.hpp"
#include "scenes/bench/chart_board.hpp"
#include "scenes/bench/drawing_board.hpp"
#include "scenes/bench/hand_board.hpp"
#include "scenes/bench/settings_dialog.hpp"
#include "scenes/bench/time_dialogs.hpp"
#include "scenes/present/hand_words.hpp"
#include "scenes/present/run_files.hpp"
#include "scenes/present/stops.hpp"
#include "scenes/present/time_words.hpp"
#include "scenes/present/words.hpp"

#include <algorithm>
#include <array>

namespace scenes {
namespace {

using Key = sf::Keyboard;

/// The letter of a doing, after the thing that is done in the trade's words.
struct DoingKey {
    std::string_view doing;
    Key::Key key;
    std::string_view shown;
};
constexpr std::array doing_keys{
    DoingKey{"pull_cord", Key::P, "P"},    DoingKey{"press_primer", Key::B, "B"},
    DoingKey{"squeeze_bulb", Key::B, "B"}, DoingKey{"stop", Key::S, "S"},
    DoingKey{"refuel", Key::T, "T"},       DoingKey{"drain", Key::D, "D"},
};

constexpr Modifiers control{.control = true};
constexpr Modifiers shift{.shift = true};

const Action* action_held(const BenchDesk& desk)
{
    const auto found = std::ranges::find(desk.actions, desk.view.held, &Action::id);
    return found == desk.actions.end() ? nullptr : &*found;
}

} // namespace

BenchKeys::BenchKeys(const std::vector<Action>& actions)
{
    for (std::size_t i = 0; i < actions.size(); ++i) {
        const auto* const found = std::ranges::find(doing_keys, actions[i].id, &DoingKey::doing);
        if (found != doing_keys.end()) {
            action_keys_.push_back({found->key, i, found->shown});
        }
    }
    name_lines(actions);
}

void BenchKeys::name_lines(const std::vector<Action>& actions)
{
    lines_.clear();
    const auto line = [this](std::string_view key, std::string_view does) {
        lines_.push_back({std::string(key), std::string(does)});
    };
    line(phrase("Space|the key"), words::key_pause);
    line("\u2190  \u2192", words::key_back);
    line(phrase("Shift + \u2190  \u2192"), words::key_frame_back);
    line("Ctrl + \u2190  \u2192", words::key_second);
    line(phrase("Page Up, Page Down"), words::key_ten);
    line(phrase("Ctrl + Home, End"), words::key_ends);
    line("G", words::key_ahead);
    line("R", words::key_branches);
    line("Esc", words::key_stop);
    line(",  .", words::key_pace);
    for (const ActionKey& key : action_keys_) {
        const Action& action = actions[key.action];
        const std::string_view title = translated(action.title);
        line(key.shown,
             action.release.empty() ? std::string(title) : filled(words::key_hold, {title}));
    }
    line("M", words::key_machine);
    line(phrase("1 to 6"), words::key_charts);
    line("+  \u2212", words::key_span);
    line("Z  X", words::key_zoom);
    line(phrase("Home, 0|the keys"), words::key_whole);
    line(phrase("N, Shift + N"), words::key_part);
    line(phrase("Enter|the key"), words::key_frame_part);
    line("V", words::key_shut);
    line("F2  F3  F4", words::key_pages);
    line("F7", words::key_changes);
    line(phrase("Tab, Shift + Tab"), words::key_tab);
    line("F6", words::key_panel);
    line(phrase("Arrow keys"), words::key_arrows);
    line("Ctrl + Z", words::undo);
    line(phrase("Ctrl + Shift + Z"), words::redo);
    line("Ctrl + S", words::save);
    line("Ctrl + O", words::open);
    line("Ctrl + +, Ctrl + \u2212", words::key_text);
    line("F5", words::key_projector);
    line(phrase("Page Down|the key"), words::key_clicker);
    line(phrase("Page Up|the key"), words::key_clicker_step);
    line("F8", words::key_settings);
    line("F9", words::key_ground);
    line("[  ]", words::key_tip);
    line("K", words::key_cap);
    line("U", words::key_mute);
    line("C", words::key_captions);
    line("F1", words::key_help);
    line("Ctrl + Q", words::key_quit);
}

void BenchKeys::take_time(BenchDesk& desk)
{
    Interface& ui = desk.ui;
    Pace& pace = desk.model.pace;
    // A presentation clicker sends the page keys.
    const bool has_clicker = desk.view.is_projector;
    if (ui.take_key(Key::Space)) {
        pace.is_paused = !pace.is_paused;
    }
    if (has_clicker && ui.take_key(Key::PageDown)) {
        show_next_stop(desk.model);
    }
    if (has_clicker && ui.take_key(Key::PageUp)) {
        show_stop_before(desk.model);
    }
    while (ui.take_key(Key::Right)) {
        desk.model.step_tick();
    }
    while (ui.take_key(Key::Right, shift)) {
        desk.model.step_frame();
    }
    take_moments(desk);
    if (desk.model.is_busy() && ui.take_key(Key::Escape)) {
        desk.model.cancel_work();
    }
    if (ui.take_key(Key::Comma)) {
        pace.choose(pace.chosen() == 0 ? 0 : pace.chosen() - 1);
    }
    if (ui.take_key(Key::Period)) {
        pace.choose(pace.chosen() + 1);
    }
}

void BenchKeys::take_moments(BenchDesk& desk)
{
    Interface& ui = desk.ui;
    BenchModel& model = desk.model;
    const auto move = [&](Key::Key key, Modifiers modifiers, double seconds) {
        double by = 0.0;
        while (ui.take_key(key, modifiers)) {
            by += seconds;
        }
        if (by != 0.0) {
            model.go_to(model.seconds() + by);
        }
    };
    move(Key::Left, {}, -sim::tick_length);
    move(Key::Left, shift, -std::max(sim::tick_length, model.pace.speed() / 60.0));
    move(Key::Left, control, -1.0);
    move(Key::Right, control, 1.0);
    move(Key::PageUp, {}, -10.0);
    move(Key::PageDown, {}, 10.0);
    move(Key::Home, control, -model.seconds());
    move(Key::End, control, model.end_seconds() - model.seconds());
}

void BenchKeys::take_actions(BenchDesk& desk)
{
    for (const ActionKey& action_key : action_keys_) {
        // A key that stays down repeats; only its first press counts.
        if (!desk.ui.take_key(action_key.key) || held_ == action_key.key) {
            continue;
        }
        const Action& action = desk.actions[action_key.action];
        if (!action.release.empty() && (!desk.view.held.empty() || !desk.model.is_ready())) {
            continue;
        }
        desk.model.press(action);
        if (!action.release.empty()) {
            held_ = action_key.key;
            desk.view.held = action.id;
            desk.view.is_held_by_key = true;
        }
    }
}

void BenchKeys::release(BenchDesk& desk, sf::Keyboard::Key key)
{
    if (held_ == Key::Unknown || key != held_) {
        return;
    }
    const Action* action = action_held(desk);
    held_ = Key::Unknown;
    desk.view.held.clear();
    desk.view.is_held_by_key = false;
    if (action != nullptr) {
        desk.model.release(*action);
    }
}

void BenchKeys::release_all(BenchDesk& desk)
{
    release(desk, held_);
}

void BenchKeys::take_bench(BenchDesk& desk)
{
    Interface& ui = desk.ui;
    BenchView& view = desk.view;
    if (ui.take_key(Key::F1)) {
        view.has_keys_open = !view.has_keys_open;
    }
    const std::array pages{std::pair{Key::F2, Page::controls}, std::pair{Key::F3, Page::faults},
                           std::pair{Key::F4, Page::run}, std::pair{Key::F7, Page::changes}};
    for (const auto& [key, page] : pages) {
        if (ui.take_key(key)) {
            view.page = page;
        }
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
    }
    if (ui.take_key(Key::F9)) {
        switch_ground(desk.settings);
    }
    const Modifiers control_shift{.control = true, .shift = true};
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
    if (ui.has_dialog()) {
        return;
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

void BenchKeys::take(BenchDesk& desk, ChartBoard& charts, DrawingBoard& drawing)
{
    take_time(desk);
    take_actions(desk);
    if (desk.model.is_ready()) {
        constexpr double tipped = 5.0; // degrees
        if (desk.ui.take_key(Key::LBracket)) {
            HandBoard::tip(desk, -tipped);
        }
        if (desk.ui.take_key(Key::RBracket)) {
            HandBoard::tip(desk, tipped);
        }
        if (desk.ui.take_key(Key::K)) {
            HandBoard::turn_cap(desk);
        }
    }
    take_bench(desk);
    Interface& ui = desk.ui;
    const std::array chart_keys{Key::Num1, Key::Num2, Key::Num3, Key::Num4, Key::Num5, Key::Num6};
    for (std::size_t i = 0; i < chart_keys.size(); ++i) {
        if (ui.take_key(chart_keys[i])) {
            charts.open_choice(i, desk.model);
        }
    }
    if (ui.take_key(Key::Equal) || ui.take_key(Key::Equal, shift) || ui.take_key(Key::Add)) {
        charts.zoom_time(0.5);
    }
    if (ui.take_key(Key::Hyphen) || ui.take_key(Key::Subtract)) {
        charts.zoom_time(2.0);
    }
    const sf::FloatRect& area = drawing.area();
    const sf::Vector2f middle{area.left + area.width / 2.0F, area.top + area.height / 2.0F};
    if (ui.take_key(Key::Z)) {
        drawing.zoom(1.25, middle);
    }
    if (ui.take_key(Key::X)) {
        drawing.zoom(0.8, middle);
    }
    if (ui.take_key(Key::Home) || ui.take_key(Key::Num0) || ui.take_key(Key::Numpad0)) {
        drawing.show_whole();
    }
    if (ui.take_key(Key::N)) {
        drawing.point_at_next(1);
    }
    if (ui.take_key(Key::N, shift)) {
        drawing.point_at_next(-1);
    }
    if (ui.take_key(Key::Enter)) {
        drawing.frame_pointed();
    }
    if (ui.take_key(Key::V)) {
        desk.view.is_shut = !desk.view.is_shut;
    }
}

} // namespace scenes
