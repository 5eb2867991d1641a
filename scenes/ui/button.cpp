#include "scenes/ui/controls.hpp"

#include "scenes/ui/ink.hpp"
#include "scenes/ui/state.hpp"

#include <cmath>

namespace scenes {
namespace {

struct PlateColours {
    Rgba fill;
    Rgba outline;
    Rgba text;
};

PlateColours plate_colours(const Theme& theme, const Touch& touch, bool is_strong)
{
    if (!touch.is_enabled) {
        return {theme.sheet, theme.ink_grid, theme.ink_soft};
    }
    if (touch.is_held || is_strong) {
        const Rgba fill =
            touch.is_hovered && !touch.is_held ? mix(theme.accent, theme.ink, 0.15) : theme.accent;
        return {fill, fill, theme.on_accent};
    }
    if (touch.is_hovered) {
        return {theme.accent_wash, theme.accent, theme.ink};
    }
    return {theme.sheet, theme.ink, theme.ink};
}

} // namespace

bool button(Interface& ui, const Button& spec)
{
    Interface::State& state = ui.state();
    const Look& look = state.look;
    const sf::FloatRect box = place(state, look.px(34.0F));
    const Ink ink(state);
    const float pad = look.whole(10.0F);
    const bool fits = ink.width(spec.name, Type::body) <= box.width - 2.0F * pad;
    const Touch touch = scenes::touch(state, {.name = spec.id.empty() ? spec.name : spec.id,
                                              .role = "button",
                                              .value = spec.is_down ? "down" : "",
                                              .box = box,
                                              .is_enabled = spec.is_enabled,
                                              .fits = fits});
    const PlateColours colours = plate_colours(look.theme, touch, spec.is_primary || spec.is_down);
    ink.plate(box, look.px(6.0F), colours.fill, colours.outline, look.px(1.5F));
    ink.write(spec.name, {box.left + pad, box.top, box.width - 2.0F * pad, box.height},
              spec.is_primary ? Type::bold : Type::body, colours.text, 0.5F);
    if (touch.shows_ring) {
        ink.ring(box);
    }
    return touch.is_pressed;
}

bool is_held(const Interface&)
{
    return ImGui::IsItemActive();
}

bool toggle(Interface& ui, const Switch& spec, bool& is_on)
{
    Interface::State& state = ui.state();
    const Look& look = state.look;
    const Theme& theme = look.theme;
    const Ink ink(state);
    const sf::FloatRect box = place(state, look.px(30.0F));
    const float slot_width = look.whole(46.0F);
    const float slot_height = look.whole(22.0F);
    const sf::FloatRect slot{box.left + box.width - slot_width,
                             box.top + std::floor((box.height - slot_height) / 2.0F), slot_width,
                             slot_height};
    const std::string_view text = is_on ? spec.on_text : spec.off_text;
    const float word = ink.width(text, Type::body) + look.px(10.0F);
    const sf::FloatRect name{box.left, box.top, box.width - slot_width - word - look.px(8.0F),
                             box.height};
    const bool fits = ink.width(spec.name, Type::body) <= name.width;
    const Touch touch = scenes::touch(state, {.name = spec.name,
                                              .role = "switch",
                                              .value = std::string(text),
                                              .box = box,
                                              .is_enabled = spec.is_enabled,
                                              .fits = fits});
    if (touch.is_pressed) {
        is_on = !is_on;
    }
    const Rgba ink_colour = touch.is_enabled ? theme.ink : theme.ink_soft;
    ink.write(spec.name, name, Type::body, ink_colour);
    ink.write(text, {slot.left - word, box.top, word - look.px(10.0F), box.height}, Type::body,
              is_on ? theme.accent : theme.ink_soft, 1.0F);
    ink.plate(slot, look.px(5.0F), is_on ? theme.accent : theme.recess,
              touch.is_hovered ? theme.accent : ink_colour, look.px(1.5F));
    // The knob is a block that lies left for off and right for on.
    const float knob = slot_height - look.whole(8.0F);
    const float inset = look.whole(4.0F);
    const sf::FloatRect block{is_on ? slot.left + slot_width - knob - inset - look.whole(2.0F)
                                    : slot.left + inset + look.whole(2.0F),
                              slot.top + inset, knob, knob};
    ink.block(block, is_on ? theme.on_accent : ink_colour);
    if (touch.shows_ring) {
        ink.ring(box);
    }
    return touch.is_pressed;
}

} // namespace scenes
