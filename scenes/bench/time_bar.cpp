#include "scenes/bench/time_bar.hpp"

#include "scenes/present/readout.hpp"
#include "scenes/present/time_words.hpp"
#include "scenes/ui/handle.hpp"
#include "scenes/ui/panel.hpp"

#include <algorithm>
#include <cmath>

namespace scenes {
namespace {

TextStyle clock_style(const Look& look)
{
    return {.size = look.small(), .colour = look.theme.ink_soft, .anchor = Anchor::middle};
}

} // namespace

float TimeBar::Rail::x_of(double time) const
{
    return left + width * static_cast<float>(std::clamp(time / end, 0.0, 1.0));
}

double TimeBar::Rail::time_at(float x) const
{
    return end * static_cast<double>(std::clamp((x - left) / width, 0.0F, 1.0F));
}

TimeBar::Rail TimeBar::rail(const BenchDesk& desk, const sf::FloatRect& box) const
{
    const Look& look = desk.ui.look();
    const TextStyle style = clock_style(look);
    const float start = text_.width("0:00", style) + look.px(20.0F);
    // Room for hours from the beginning on, so that the rail keeps its length.
    const float end = text_.width("00:00:00", style) + look.px(20.0F);
    return {box.left + start, std::max(1.0F, box.width - start - end),
            std::max(1e-3, desk.model.end_seconds())};
}

void TimeBar::show_handle(BenchDesk& desk, const sf::FloatRect& box)
{
    if (box.height <= 0.0F) {
        return;
    }
    const Rail rail = this->rail(desk, box);
    const Look& look = desk.ui.look();
    const Overlay overlay(desk.ui, words::time_bar, box);
    const std::string value = clock_text(desk.model.seconds());
    const Handle knob =
        handle(desk.ui, {.name = words::time_bar,
                         .value = value,
                         .box = {rail.left - look.px(9.0F), box.top + look.px(3.0F),
                                 rail.width + look.px(18.0F), box.height - look.px(6.0F)},
                         .is_enabled = !desk.model.is_busy(),
                         .takes_arrows = true});
    if (knob.steps != 0) {
        constexpr double steps_in_all = 100.0;
        desk.model.go_to(desk.model.seconds() +
                         static_cast<double>(knob.steps) * rail.end / steps_in_all);
    } else if (knob.end != 0) {
        desk.model.go_to(knob.end > 0 ? rail.end : 0.0);
    }
    if (knob.is_held) {
        desk.model.go_to(rail.time_at(desk.pointer.x));
    }
}

void TimeBar::draw_marks(const BenchDesk& desk, const Rail& rail, float y)
{
    const Look& look = desk.ui.look();
    const auto seconds = [](sim::Tick at) { return static_cast<double>(at) * sim::tick_length; };
    const Branch& shown = desk.model.branches()[desk.model.active_branch()];
    float drawn_to = -1e9F;
    for (const OwnCommand& own : shown.plan.own) {
        const float x = std::round(rail.x_of(seconds(own.timed.at)));
        if (own.gesture == Gesture::begins && x > drawn_to + 2.0F) {
            mesh_.block({x, y - look.whole(7.0F), look.whole(2.0F), look.whole(7.0F)},
                        look.theme.ink_soft);
            drawn_to = x;
        }
    }
    for (const Branch& branch : desk.model.branches()) {
        if (branch.parent == 0 || (branch.parent != shown.id && branch.id != shown.id)) {
            continue;
        }
        // A branch leaves the rail as a twig.
        const float x = std::round(rail.x_of(seconds(branch.left_at)));
        const float length = look.px(9.0F);
        const std::array<Point, 2> twig{{{x, y}, {x + length, y + length}}};
        mesh_.stroke(twig, {.colour = look.theme.accent, .width = look.px(2.0F)});
    }
}

void TimeBar::draw(sf::RenderTarget& target, const BenchDesk& desk, const sf::FloatRect& box)
{
    if (box.height <= 0.0F) {
        return;
    }
    const Look& look = desk.ui.look();
    const Rail rail = this->rail(desk, box);
    const float y = std::round(box.top + box.height / 2.0F);
    mesh_.clear();
    text_.clear();
    const float thick = look.whole(3.0F);
    mesh_.block({rail.left, y - thick / 2.0F, rail.width, thick}, look.theme.ink_soft);
    const float knob = rail.x_of(desk.model.seconds());
    mesh_.block({rail.left, y - thick / 2.0F, knob - rail.left, thick}, look.theme.accent);
    draw_marks(desk, rail, y);
    const float half = look.px(5.0F);
    const float tall = look.px(10.0F);
    mesh_.fill({{knob - half, y - tall},
                {knob + half, y - tall},
                {knob + half, y + tall},
                {knob - half, y + tall}},
               look.theme.accent);
    TextStyle style = clock_style(look);
    text_.write("0:00", {box.left + look.px(4.0F), y}, style);
    style.align = Align::right;
    text_.write(whole_clock_text(desk.model.end_seconds()),
                {box.left + box.width - look.px(4.0F), y}, style);
    target.draw(mesh_);
    target.draw(text_);
}

} // namespace scenes
