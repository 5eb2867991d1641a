#include "scenes/bench/hand_board.hpp"

#include "scenes/bench/drawing_board.hpp"
#include "scenes/present/hand_words.hpp"
#include "scenes/ui/controls.hpp"
#include "scenes/ui/panel.hpp"
#include "scenes/view/number.hpp"
#include "scenes/view/vector_maths.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace scenes {
namespace {

constexpr std::string_view tilt_control = "tilt_forward";
constexpr float least_drag = 4.0F; ///< pixels; less is a click

const sim::Control* control_of(const BenchDesk& desk, std::string_view id)
{
    return desk.model.rig().find_control(id);
}

double at(const BenchDesk& desk, std::string_view control)
{
    return desk.model.run().machine().control(control);
}

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

struct HandWords {
    Phrase name;
    Phrase tip;
};
HandWords words_of(Hand::Kind kind)
{
    switch (kind) {
    case Hand::Kind::cord:
        return {words::hand_cord, words::cord_tip};
    case Hand::Kind::bulb:
        return {words::hand_bulb, words::bulb_tip};
    case Hand::Kind::tap:
        return {words::hand_tap, words::tap_tip};
    case Hand::Kind::cap:
        break;
    }
    return {words::hand_cap, words::cap_tip};
}

sf::FloatRect pixels_of(const Hand& hand, const Camera& camera)
{
    const sf::Vector2f a = camera.to_pixels(hand.low);
    const sf::Vector2f b = camera.to_pixels(hand.high);
    return {std::min(a.x, b.x), std::min(a.y, b.y), std::abs(b.x - a.x), std::abs(b.y - a.y)};
}

/// Turns a control that is shut or open to its other end.
double other_end(const BenchDesk& desk, std::string_view control)
{
    const sim::Control& limits = *control_of(desk, control);
    return at(desk, control) > (limits.low + limits.high) / 2.0 ? limits.low : limits.high;
}

} // namespace

HandBoard::HandBoard(const sim::Rig& rig) : hands_(hands_of(rig))
{
    for (const sim::PartSpec& part : rig.parts) {
        if (part.kind == "recoil") {
            cord_.emplace(part.parameters.at("cord_length"));
        }
    }
    std::erase_if(hands_, [&](const Hand& hand) {
        return (hand.kind == Hand::Kind::cord && !cord_) ||
               (hand.kind == Hand::Kind::tap && rig.find_control("tap") == nullptr) ||
               (hand.kind == Hand::Kind::cap && rig.find_control("cap") == nullptr);
    });
}

void HandBoard::set(BenchDesk& desk, const std::string& control, double to, bool is_drag)
{
    if (to != at(desk, control)) {
        desk.model.post(sim::SetControl{control, to},
                        is_drag && has_posted_ ? Gesture::continues : Gesture::begins);
        has_posted_ = is_drag;
    }
    dragged_ = is_drag ? control : "";
}

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
        if (cord_->move(out, static_cast<double>(seconds)) == CordPull::Outcome::pulled) {
            desk.model.press(*pull);
        }
        const Look& look = desk.ui.look();
        const sf::Vector2f guide = camera.to_pixels(hand.pivot);
        const float reach = camera.to_pixels(cord_->out() * hand.drawn);
        const sf::Vector2f grip = guide + sf::Vector2f{static_cast<float>(hand.side) * reach, 0.0F};
        mesh_.stroke({guide, grip}, {.colour = look.theme.ink, .width = look.px(2.0F)});
        mesh_.stroke(
            {grip - sf::Vector2f{0.0F, look.px(9.0F)}, grip + sf::Vector2f{0.0F, look.px(9.0F)}},
            {.colour = look.theme.accent, .width = look.px(6.0F)});
        return;
    }
    if (handle.is_pressed && !cord_->is_held()) {
        desk.model.press(*pull); // by the keyboard
    }
    const CordPull::Outcome outcome = cord_->let_go();
    if (outcome == CordPull::Outcome::too_short) {
        desk.view.notice = words::pull_further;
    } else if (outcome == CordPull::Outcome::too_slow) {
        desk.view.notice = words::pull_faster;
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
        set(desk, "tap", std::round(open * 50.0) / 50.0, true);
    } else if (handle.is_pressed && dragged_ != "tap") {
        set(desk, "tap", other_end(desk, "tap"), false);
    } else if (!handle.is_held && dragged_ == "tap") {
        dragged_.clear(); // the drag is over
    }
}

void HandBoard::show_hand(BenchDesk& desk, const Hand& hand, const Camera& camera, float seconds)
{
    const HandWords words = words_of(hand.kind);
    const Handle handle = scenes::handle(
        desk.ui,
        {.name = words.name, .box = pixels_of(hand, camera), .is_enabled = desk.model.is_ready()});
    if (!handle.is_held) {
        scenes::tip(desk.ui, words.tip);
    }
    if (handle.is_hovered && !handle.is_held) {
        const sf::FloatRect box = pixels_of(hand, camera);
        const Look& look = desk.ui.look();
        mesh_.stroke({{box.left, box.top},
                      {box.left + box.width, box.top},
                      {box.left + box.width, box.top + box.height},
                      {box.left, box.top + box.height}},
                     {.colour = look.theme.accent, .width = look.px(1.4F), .closed = true});
    }
    if (handle.is_held && handle.drag == sf::Vector2f()) {
        taken_at_ = sf::Vector2f(desk.pointer);
        has_posted_ = false;
    }
    switch (hand.kind) {
    case Hand::Kind::cord:
        work_cord(desk, hand, camera, handle, seconds);
        break;
    case Hand::Kind::bulb:
        work_bulb(desk, handle);
        break;
    case Hand::Kind::tap:
        work_tap(desk, hand, camera, handle);
        break;
    case Hand::Kind::cap:
        if (handle.is_pressed) {
            turn_cap(desk);
        }
        break;
    }
}

void HandBoard::turn_cap(BenchDesk& desk)
{
    if (control_of(desk, "cap") != nullptr) {
        desk.model.post(sim::SetControl{"cap", other_end(desk, "cap")});
    }
}

void HandBoard::tip(BenchDesk& desk, double degrees)
{
    const std::string id(tilt_control);
    if (const sim::Control* const tilt = control_of(desk, id)) {
        desk.model.post(
            sim::SetControl{id, std::clamp(at(desk, id) + degrees, tilt->low, tilt->high)});
    }
}

void HandBoard::draw_tilt(const Look& look, sf::Vector2f middle, double degrees, bool is_lit)
{
    const float radius = look.px(13.0F);
    const Rgba colour = is_lit ? look.theme.accent : look.theme.ink;
    mesh_.disc(middle, radius + look.px(2.0F), look.theme.ground);
    mesh_.ring(middle, radius, {.colour = colour, .width = look.px(1.6F)});
    // The line is the machine's own "up".
    const double angle = (90.0 - degrees) * std::numbers::pi / 180.0;
    const sf::Vector2f up{static_cast<float>(std::cos(angle)),
                          -static_cast<float>(std::sin(angle))};
    mesh_.stroke({middle - 0.6F * radius * up, middle + radius * up},
                 {.colour = colour, .width = look.px(2.0F)});
    mesh_.disc(middle + radius * up, look.px(4.0F), colour);
}

void HandBoard::show_tilt(BenchDesk& desk, const sf::FloatRect& area)
{
    const sim::Control* const tilt = control_of(desk, tilt_control);
    if (tilt == nullptr) {
        return;
    }
    const Look& look = desk.ui.look();
    const sf::FloatRect box = tilt_dial_box(area, look);
    const sf::Vector2f middle{box.left + box.width / 2.0F, box.top + box.height / 2.0F};
    const double degrees = at(desk, tilt_control);
    const Handle handle = scenes::handle(desk.ui, {.name = words::hand_tilt,
                                                   .value = fixed_text(degrees, 0),
                                                   .box = box,
                                                   .is_enabled = desk.model.is_ready()});
    if (!handle.is_held) {
        scenes::tip(desk.ui, words::tilt_tip);
    }
    const std::string id(tilt_control);
    if (handle.is_held && handle.drag == sf::Vector2f()) {
        taken_at_ = sf::Vector2f(desk.pointer);
        tilt_from_ = degrees;
        has_posted_ = false;
    }
    if (handle.is_held && length(handle.drag) > least_drag) {
        const sf::Vector2f from = taken_at_ - middle;
        const sf::Vector2f to = from + handle.drag;
        const auto d = [](float value) { return static_cast<double>(value); };
        set(desk, id,
            turned_tilt(tilt_from_, d(from.x), -d(from.y), d(to.x), -d(to.y), tilt->low,
                        tilt->high),
            true);
    } else if (handle.is_pressed && dragged_ != id) {
        set(desk, id, 0.0, false);
    } else if (!handle.is_held && dragged_ == id) {
        dragged_.clear();
    }
    draw_tilt(look, middle, at(desk, tilt_control), handle.is_hovered || handle.is_held);
}

bool HandBoard::is_over(const DrawingBoard& drawing, sf::Vector2f pixel, const Look& look) const
{
    return tilt_dial_box(drawing.area(), look).contains(pixel) ||
           std::ranges::any_of(hands_, [&](const Hand& hand) {
               return pixels_of(hand, drawing.camera()).contains(pixel);
           });
}

void HandBoard::show(BenchDesk& desk, const DrawingBoard& drawing, float seconds)
{
    mesh_.clear();
    const sf::FloatRect& area = drawing.area();
    if (area.height <= 0.0F) {
        return;
    }
    const Overlay overlay(desk.ui, words::hands, area);
    for (const Hand& hand : hands_) {
        const sf::FloatRect box = pixels_of(hand, drawing.camera());
        if (area.contains(box.left, box.top) &&
            area.contains(box.left + box.width, box.top + box.height)) {
            show_hand(desk, hand, drawing.camera(), seconds);
        }
    }
    show_tilt(desk, area);
}

void HandBoard::draw(sf::RenderTarget& target) const
{
    target.draw(mesh_);
}

} // namespace scenes
