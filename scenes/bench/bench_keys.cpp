#include "scenes/bench/bench_keys.hpp"

#include "scenes/bench/chart_board.hpp"
#include "scenes/bench/drawing_board.hpp"
#include "scenes/bench/hand_board.hpp"
#include "scenes/present/stops.hpp"

#include <algorithm>
#include <array>

// Keys for time, doings, charts and the drawing.

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
        if (desk.ui.take_key(Key::S)) { // on machines without a doing for it
            HandBoard::turn_over(desk, "stop_switch");
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
    const auto point = [&](int step) {
        ui.drop_focus(); // Enter is to frame the part, not to press what had the focus
        drawing.point_at_next(step);
    };
    if (ui.take_key(Key::N)) {
        point(1);
    }
    if (ui.take_key(Key::N, shift)) {
        point(-1);
    }
    if (ui.take_key(Key::Enter)) {
        drawing.frame_pointed();
    }
    if (ui.take_key(Key::V)) {
        desk.view.is_shut = !desk.view.is_shut;
    }
}

} // namespace scenes
