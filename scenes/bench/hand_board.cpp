#include "scenes/bench/hand_board.hpp"

#include "scenes/bench/bench_layout.hpp"
#include "scenes/bench/drawing_board.hpp"
#include "scenes/present/hand_words.hpp"
#include "scenes/ui/controls.hpp"
#include "scenes/ui/panel.hpp"
#include "scenes/view/number.hpp"

#include <algorithm>
#include <cmath>

// Where the handles are, and what each of them is asked to do.

namespace scenes {
namespace {

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

} // namespace

HandBoard::HandBoard(const sim::Rig& rig) : hands_(hands_of(rig))
{
    for (const sim::PartSpec& part : rig.parts) {
        if (part.kind == "recoil") {
            cord_.emplace(part.parameters.at("cord_length"));
        }
    }
    std::erase_if(hands_, [&](const Hand& hand) {
        return (hand.kind == Hand::Kind::cord &&
                (!cord_ || rig.find_doing(draw_cord) == nullptr)) ||
               (hand.kind == Hand::Kind::tap && rig.find_control("tap") == nullptr) ||
               (hand.kind == Hand::Kind::cap && rig.find_control("cap") == nullptr);
    });
}

double HandBoard::position(const BenchDesk& desk, std::string_view control)
{
    return desk.model.run().machine().control(control);
}

void HandBoard::set(BenchDesk& desk, const std::string& control, double to, bool is_drag)
{
    if (to != position(desk, control)) {
        desk.model.post(sim::SetControl{control, to},
                        is_drag && has_posted_ ? Gesture::continues : Gesture::begins);
        has_posted_ = is_drag;
    }
    dragged_ = is_drag ? control : "";
}

void HandBoard::show_hand(BenchDesk& desk, const Hand& hand, const Camera& camera, float seconds)
{
    const HandWords words = words_of(hand.kind);
    const Handle handle = scenes::handle(
        desk.ui, {.name = words.name,
                  .value = hand.kind == Hand::Kind::tap ? fixed_text(position(desk, "tap"), 2) : "",
                  .box = pixels_of(hand, camera),
                  .is_enabled = desk.model.is_ready(),
                  .takes_arrows = hand.kind == Hand::Kind::tap});
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
