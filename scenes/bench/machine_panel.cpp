#include "scenes/bench/bench_panels.hpp"

#include "scenes/bench/time_dialogs.hpp"
#include "scenes/present/time_words.hpp"
#include "scenes/present/words.hpp"
#include "scenes/ui/controls.hpp"
#include "scenes/ui/panel.hpp"

#include <algorithm>
#include <cctype>

// Time, doings, controls and faults.

namespace scenes {
namespace {

std::string lower(std::string_view text)
{
    std::string result(text);
    std::ranges::transform(result, result.begin(),
                           [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return result;
}

/// Shows a slider and posts what it is moved to; a drag is one gesture.
void command_slider(BenchDesk& desk, const Slider& spec, const std::string& id, double value,
                    const std::function<sim::Command(double)>& command)
{
    using Gesture = BenchModel::Gesture;
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

/// Shows a button that holds something as long as the pointer holds it.
void action_button(BenchDesk& desk, const Action& action, bool is_primary)
{
    std::string& held = desk.view.held;
    const bool was_held = held == action.id;
    const bool is_pressed = button(desk.ui, {.name = action.title,
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
    } else if (was_held && !is_down && !desk.view.is_held_by_key) {
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

void fault_slider(BenchDesk& desk, const sim::Fault& fault)
{
    const double severity = desk.model.run().machine().severity(fault.id);
    command_slider(desk,
                   {.name = fault.title,
                    .step = 0.01,
                    .shown_per_unit = 100.0,
                    .unit = "%",
                    .rest = 0.0,
                    .is_enabled = desk.model.is_ready()},
                   fault.id, severity, [&fault](double to) {
                       return sim::SetFault{fault.id, to};
                   });
    tip(desk.ui, fault.about);
}

std::vector<const sim::Fault*> active_faults(const BenchModel& model)
{
    std::vector<const sim::Fault*> active;
    for (const sim::Fault& fault : model.rig().faults) {
        if (model.run().machine().severity(fault.id) > 0.0) {
            active.push_back(&fault);
        }
    }
    return active;
}

void cure_all(BenchModel& model)
{
    auto gesture = BenchModel::Gesture::begins;
    for (const sim::Fault* fault : active_faults(model)) {
        model.post(sim::SetFault{fault->id, 0.0}, gesture);
        gesture = BenchModel::Gesture::continues;
    }
}

} // namespace

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
        const Row row(ui, {1.0F, 1.0F, 1.2F});
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
                             fits_half(desk, desk.actions[first].title) &&
                             fits_half(desk, desk.actions[next].title);
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
        const double range = control.high - control.low;
        const bool is_share = control.unit.empty() && range <= 1.0;
        const bool is_turns = control.unit.empty() && !is_share && range <= 10.0; // of a screw
        command_slider(desk,
                       {.name = control.title,
                        .low = control.low,
                        .high = control.high,
                        .step = is_share   ? 0.01
                                : is_turns ? 0.125
                                           : 1.0,
                        .decimals = is_turns ? 2 : 0,
                        .shown_per_unit = is_share ? 100.0 : 1.0,
                        .unit = is_share ? "%" : std::string_view(control.unit),
                        .rest = control.start,
                        .is_enabled = desk.model.is_ready()},
                       control.id, desk.model.run().machine().control(control.id),
                       [&control](double to) {
                           return sim::SetControl{control.id, to};
                       });
    }
}

void show_faults(BenchDesk& desk)
{
    Interface& ui = desk.ui;
    const std::size_t set = active_faults(desk.model).size();
    {
        const Row row(ui, {1.5F, 1.0F});
        heading(ui, std::string(words::page_faults) + ": " +
                        (set == 0 ? std::string(words::all_healthy)
                                  : std::to_string(set) + std::string(words::faults_set)));
        if (button(ui, {.name = words::cure_all, .is_enabled = set > 0 && desk.model.is_ready()})) {
            cure_all(desk.model);
        }
    }
    text_field(ui,
               {.name = words::search_faults, .hint = words::search_faults_hint, .is_search = true},
               desk.view.fault_search);
    const std::string wanted = lower(desk.view.fault_search);
    bool is_any = false;
    for (const sim::Fault& fault : desk.model.rig().faults) {
        const std::string text = lower(fault.title + " " + fault.where + " " + fault.about);
        if (text.find(wanted) != std::string::npos) {
            is_any = true;
            fault_slider(desk, fault);
        }
    }
    if (!is_any) {
        paragraph(ui, wanted.empty() ? words::no_faults : words::no_such_fault, Tone::soft);
    }
}

} // namespace scenes
