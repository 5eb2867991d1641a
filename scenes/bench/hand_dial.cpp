#include "scenes/bench/bench_layout.hpp"
#include "scenes/bench/hand_board.hpp"
#include "scenes/present/hand_words.hpp"
#include "scenes/ui/controls.hpp"
#include "scenes/view/number.hpp"
#include "scenes/view/vector_maths.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

// The dial that tips the machine.

namespace scenes {
namespace {

constexpr std::string_view tilt_control = "tilt_forward";
constexpr double dial_step = 5.0; ///< degrees, of a key

const sim::Control* tilt_of(const BenchDesk& desk)
{
    return desk.model.rig().find_control(tilt_control);
}

} // namespace

/// Where the dial stands, at the drawing's upper left.
void HandBoard::tip(BenchDesk& desk, double degrees)
{
    const std::string id(tilt_control);
    if (const sim::Control* const tilt = tilt_of(desk)) {
        desk.model.post(
            sim::SetControl{id, std::clamp(position(desk, id) + degrees, tilt->low, tilt->high)});
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
    const sim::Control* const tilt = tilt_of(desk);
    if (tilt == nullptr) {
        return;
    }
    const Look& look = desk.ui.look();
    const sf::FloatRect box = tilt_dial_box(area, look);
    const sf::Vector2f middle{box.left + box.width / 2.0F, box.top + box.height / 2.0F};
    const double degrees = position(desk, tilt_control);
    const Handle handle = scenes::handle(desk.ui, {.name = words::hand_tilt,
                                                   .value = fixed_text(degrees, 0),
                                                   .box = box,
                                                   .is_enabled = desk.model.is_ready(),
                                                   .takes_arrows = true});
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
    } else if (handle.steps != 0) {
        tip(desk, handle.steps * dial_step);
    } else if (handle.is_pressed && dragged_ != id) {
        set(desk, id, 0.0, false);
    } else if (!handle.is_held && dragged_ == id) {
        dragged_.clear();
    }
    draw_tilt(look, middle, position(desk, tilt_control), handle.is_hovered || handle.is_held);
}

} // namespace scenes
