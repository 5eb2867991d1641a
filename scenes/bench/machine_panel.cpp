#include "scenes/bench/bench_panels.hpp"

#include "scenes/bench/time_dialogs.hpp"
#include "scenes/present/readout.hpp"
#include "scenes/present/time_words.hpp"
#include "scenes/present/words.hpp"
#include "scenes/ui/controls.hpp"
#include "scenes/ui/panel.hpp"

#include <algorithm>

// Time, doings and controls.

namespace scenes {
namespace {

/// Shows a button that holds something as long as the pointer holds it.
void action_button(BenchDesk& desk, const Action& action, bool is_primary)
{
    std::string& held = desk.view.held;
    const bool was_held = held == action.id;
    const bool is_pressed = button(desk.ui, {.name = translated(action.title),
                                             .is_primary = is_primary,
                                             .is_down = was_held,
                                             .is_enabled = desk.model.is_ready()});
    if (action.release.empty()) {
        if (is_pressed) {
            desk.model.press(action);
        }
        return;
    }
    const bool is_down = is_held(desk.ui) && desk.model.is_ready();
    if (is_down && held.empty()) {
        held = action.id;
        desk.model.press(action);
    } else if (was_held && !is_down && !desk.view.is_held_by_key && !desk.view.is_held_in_drawing) {
        held.clear();
        desk.model.release(action);
    } else if (is_pressed && !was_held) {
        desk.model.press(action); // by the keyboard: one short stroke
        desk.model.release(action);
    }
}

/// Whether a button's words fit when two buttons stand side by side.
bool fits_half(const BenchDesk& desk, std::string_view title)
{
    const Look& look = desk.ui.look();
    // Paddings of panel and button, the gap between the two, the scroll bar.
    const float room = (desk.panel_width - look.px(28.0F + 14.0F + 8.0F)) / 2.0F - look.px(20.0F);
    return desk.ruler.width(title, {.face = Face::bold, .size = look.body(), .colour = {}}) < room;
}

} // namespace

void command_slider(BenchDesk& desk, const Slider& spec, const std::string& id, double value,
                    const std::function<sim::Command(double)>& command)
{
    const bool has_moved = slider(desk.ui, spec, value);
    const bool is_dragged = is_held(desk.ui);
    std::string& dragged = desk.view.dragged;
    if (has_moved) {
        desk.model.post(command(value),
                        is_dragged && dragged == id ? Gesture::continues : Gesture::begins);
        dragged = is_dragged ? id : "";
    } else if (!is_dragged && dragged == id) {
        dragged.clear();
    }
}

void show_time(BenchDesk& desk)
{
    Interface& ui = desk.ui;
    BenchModel& model = desk.model;
    if (model.is_busy()) {
        show_long_work(desk);
        return;
    }
    bool& is_paused = model.pace.is_paused;
    {
        const Row row(ui, {1.0F, 1.0F, 1.3F});
        if (button(ui, {.name = is_paused ? words::go_on : words::pause,
                        .is_primary = true,
                        .is_enabled = model.is_ready(),
                        .id = words::pause})) {
            is_paused = !is_paused;
        }
        if (button(ui, {.name = words::step_tick, .is_enabled = model.is_ready()})) {
            model.step_tick();
        }
        if (button(ui, {.name = words::step_frame, .is_enabled = model.is_ready()})) {
            model.step_frame();
        }
    }
    std::size_t speed = model.pace.chosen();
    if (choice(ui, {.name = words::speed, .options = words::speeds}, speed)) {
        model.pace.choose(speed);
    }
    const Row row(ui, {1.0F, 1.0F});
    if (button(ui, {.name = words::go_ahead, .is_enabled = model.is_ready()})) {
        open_ahead(desk);
    }
    if (button(ui, {.name = words::branches})) {
        open_branches(desk);
    }
}

void show_controls(BenchDesk& desk)
{
    Interface& ui = desk.ui;
    heading(ui, words::doings);
    std::size_t next = 0;
    while (next < desk.actions.size()) {
        const std::size_t first = next++;
        const bool is_pair = next < desk.actions.size() &&
                             fits_half(desk, translated(desk.actions[first].title)) &&
                             fits_half(desk, translated(desk.actions[next].title));
        if (is_pair) {
            const Row row(ui, {1.0F, 1.0F});
            action_button(desk, desk.actions[first], first == 0);
            action_button(desk, desk.actions[next++], false);
        } else {
            action_button(desk, desk.actions[first], first == 0);
        }
    }
    rule(ui);
    heading(ui, words::controls);
    for (const sim::Control& control : desk.model.rig().controls) {
        if (control.is_workshop) {
            continue;
        }
        const double range = control.high - control.low;
        const bool is_share = control.unit.empty() && range <= 1.0;
        const std::string unit = unit_sign(control.unit);
        const bool is_turns = control.unit.empty() && !is_share && range <= 10.0; // of a screw
        command_slider(desk,
                       {.name = translated(control.title),
                        .low = control.low,
                        .high = control.high,
                        .step = is_share   ? 0.01
                                : is_turns ? 0.125
                                           : 1.0,
                        .decimals = is_turns ? 2 : 0,
                        .shown_per_unit = is_share ? 100.0 : 1.0,
                        .unit = is_share ? "%" : std::string_view(unit),
                        .rest = control.start,
                        .is_enabled = desk.model.is_ready()},
                       control.id, desk.model.run().machine().control(control.id),
                       [&control](double to) {
                           return sim::SetControl{control.id, to};
                       });
    }
}

} // namespace scenes
