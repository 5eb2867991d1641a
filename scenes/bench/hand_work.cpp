#include "scenes/bench/hand_board.hpp"
#include "scenes/present/hand_words.hpp"
#include "scenes/view/vector_maths.hpp"

#include <algorithm>
#include <cmath>

// What is done by hand in the drawing: cord, bulb, tap, cap.

namespace scenes {
namespace {

constexpr double tap_step = 0.02; ///< of the way from shut to open

/// The doing that a bulb takes: the first that is held and let go.
const Action* held_action(const BenchDesk& desk)
{
    const auto found = std::ranges::find_if(
        desk.actions, [](const Action& action) { return !action.release.empty(); });
    return found == desk.actions.end() ? nullptr : &*found;
}

const Action* action_of(const BenchDesk& desk, std::string_view id)
{
    const auto found = std::ranges::find(desk.actions, id, &Action::id);
    return found == desk.actions.end() ? nullptr : &*found;
}

/// Turns a control that is shut or open to its other end.
double other_end(const BenchDesk& desk, std::string_view control, double now)
{
    const sim::Control& limits = *desk.model.rig().find_control(control);
    return now > (limits.low + limits.high) / 2.0 ? limits.low : limits.high;
}

} // namespace

void HandBoard::work_cord(BenchDesk& desk, const Hand& hand, const Camera& camera,
                          const Handle& handle, float seconds)
{
    const Action* const pull = action_of(desk, "pull_cord");
    if (pull == nullptr) {
        return;
    }
    if (handle.is_held) {
        if (!cord_->is_held()) {
            cord_->take_hold();
        }
        const double dragged = static_cast<double>(handle.drag.x) * hand.side;
        const double out = dragged / camera.pixels_per_metre() / hand.drawn;
        const double drawn = cord_->move(out, static_cast<double>(seconds));
        if (drawn > 0.0 && desk.model.is_ready()) {
            desk.model.post(sim::Do{std::string(draw_cord), drawn},
                            has_posted_ ? Gesture::continues : Gesture::begins);
            has_posted_ = true;
        }
        return;
    }
    if (handle.is_pressed && !cord_->is_held()) {
        desk.model.press(*pull); // by the keyboard
    }
    switch (cord_->let_go()) {
    case CordPull::Outcome::too_short:
        desk.view.notice = words::pull_further;
        break;
    case CordPull::Outcome::too_slow:
        desk.view.notice = words::pull_faster;
        break;
    case CordPull::Outcome::pulled:
        desk.view.notice.clear();
        break;
    case CordPull::Outcome::nothing:
        break;
    }
}

void HandBoard::work_bulb(BenchDesk& desk, const Handle& handle)
{
    const Action* const press = held_action(desk);
    std::string& held = desk.view.held;
    if (press == nullptr || desk.view.is_held_by_key) {
        return;
    }
    const bool is_down = handle.is_held && desk.model.is_ready();
    if (is_down && held.empty()) {
        held = press->id;
        desk.view.is_held_in_drawing = true;
        desk.model.press(*press);
    } else if (!is_down && desk.view.is_held_in_drawing) {
        held.clear();
        desk.view.is_held_in_drawing = false;
        desk.model.release(*press);
    } else if (handle.is_pressed && held.empty()) {
        desk.model.press(*press); // by the keyboard: one short stroke
        desk.model.release(*press);
    }
}

void HandBoard::work_tap(BenchDesk& desk, const Hand& hand, const Camera& camera,
                         const Handle& handle)
{
    if (handle.is_held && length(handle.drag) > least_drag) {
        const sf::Vector2f pivot = camera.to_pixels(hand.pivot);
        const sf::Vector2f pointer(taken_at_ + handle.drag);
        const double open = tap_open_at(static_cast<double>(pointer.x - pivot.x),
                                        static_cast<double>(pivot.y - pointer.y));
        set(desk, "tap", std::round(open / tap_step) * tap_step, true);
    } else if (handle.steps != 0 || handle.end != 0) {
        const sim::Control& limits = *desk.model.rig().find_control("tap");
        const double wanted = handle.end > 0   ? limits.high
                              : handle.end < 0 ? limits.low
                                               : position(desk, "tap") + handle.steps * tap_step;
        set(desk, "tap", std::clamp(wanted, limits.low, limits.high), false);
    } else if (handle.is_pressed && dragged_ != "tap") {
        set(desk, "tap", other_end(desk, "tap", position(desk, "tap")), false);
    } else if (!handle.is_held && dragged_ == "tap") {
        dragged_.clear(); // the drag is over
    }
}

void HandBoard::turn_over(BenchDesk& desk, const std::string& control)
{
    if (desk.model.rig().find_control(control) != nullptr) {
        desk.model.post(
            sim::SetControl{control, other_end(desk, control, position(desk, control))});
    }
}

} // namespace scenes
