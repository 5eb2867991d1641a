#include "scenes/ui/controls.hpp"

#include "scenes/ui/ink.hpp"
#include "scenes/ui/state.hpp"
#include "scenes/view/number.hpp"

#include <algorithm>
#include <cmath>

// Widgets that are only read.

namespace scenes {
namespace {

Rgba tone_colour(const Theme& theme, Tone tone)
{
    switch (tone) {
    case Tone::plain:
        return theme.ink;
    case Tone::soft:
        return theme.ink_soft;
    case Tone::warning:
        return theme.warning;
    }
    return theme.ink;
}

} // namespace

void heading(Interface& ui, std::string_view text)
{
    Interface::State& state = ui.state();
    const sf::FloatRect box = place(state, state.look.px(24.0F));
    const bool fits = Ink(state).write(text, box, Type::bold, state.look.theme.ink);
    show(state, {.name = text, .role = "heading", .value = {}, .box = box, .fits = fits});
}

void paragraph(Interface& ui, std::string_view text, Tone tone)
{
    Interface::State& state = ui.state();
    const Ink ink(state);
    sf::FloatRect box = place(state, 0.0F);
    const float height = std::ceil(ink.wrapped_height(text, Type::body, box.width));
    box.height = height;
    if (state.row) {
        state.row->box.height = std::max(state.row->box.height, height);
    }
    ink.write_wrapped(text, box, Type::body, tone_colour(state.look.theme, tone));
    show(state, {.name = text, .role = "text", .value = {}, .box = box});
}

void reading(Interface& ui, std::string_view name, std::string_view value, Tone tone)
{
    Interface::State& state = ui.state();
    const Theme& theme = state.look.theme;
    const Ink ink(state);
    const sf::FloatRect box = place(state, state.look.px(22.0F));
    const float value_width = ink.width(value, Type::body);
    const float name_width = box.width - value_width - state.look.px(8.0F);
    const bool fits =
        ink.write(name, {box.left, box.top, name_width, box.height}, Type::body, theme.ink_soft);
    ink.write(value, box, Type::body, tone_colour(theme, tone), 1.0F);
    show(state, {.name = name,
                 .role = "reading",
                 .value = std::string(value),
                 .box = box,
                 .fits = fits && value_width <= box.width});
}

void rule(Interface& ui)
{
    Interface::State& state = ui.state();
    const sf::FloatRect box = place(state, state.look.px(9.0F));
    Ink(state).block({box.left, box.top + std::floor(box.height / 2.0F), box.width, 1.0F},
                     state.look.theme.ink_soft);
    gap(ui, 9.0F);
}

void gap(Interface& ui, float pixels_at_scale_one)
{
    Interface::State& state = ui.state();
    // The spacing before and after a widget is there already.
    ImGui::Dummy({1.0F, std::max(1.0F, state.look.whole(pixels_at_scale_one) -
                                           ImGui::GetStyle().ItemSpacing.y)});
}

void progress(Interface& ui, std::string_view name, double share)
{
    Interface::State& state = ui.state();
    const Theme& theme = state.look.theme;
    const Ink ink(state);
    const sf::FloatRect box = place(state, state.look.px(40.0F));
    const double done = std::clamp(share, 0.0, 1.0);
    const std::string value = fixed_text(done * 100.0, 0) + " %";
    const sf::FloatRect words{box.left, box.top, box.width, state.look.whole(22.0F)};
    const bool fits = ink.write(name, words, Type::body, theme.ink);
    ink.write(value, words, Type::body, theme.ink, 1.0F);
    const sf::FloatRect rail{box.left, words.top + words.height + state.look.whole(4.0F), box.width,
                             state.look.whole(10.0F)};
    ink.block(rail, theme.recess);
    ink.block({rail.left, rail.top, rail.width * static_cast<float>(done), rail.height},
              theme.accent);
    ink.frame(rail, theme.ink_soft, 1.0F);
    show(state, {.name = name, .role = "progress", .value = value, .box = box, .fits = fits});
}

void tip(Interface& ui, std::string_view text)
{
    Interface::State& state = ui.state();
    const bool is_pointed_at = ImGui::IsMouseHoveringRect(
        {state.last_box.left, state.last_box.top},
        {state.last_box.left + state.last_box.width, state.last_box.top + state.last_box.height});
    const bool has_focus = state.tab_order.has(state.last_widget) && state.tab_order.shows_ring();
    if (state.last_widget != 0 && state.rested_on == state.last_widget &&
        (is_pointed_at || has_focus)) {
        state.tip = text;
        state.tip_box = state.last_box;
    }
}

} // namespace scenes
