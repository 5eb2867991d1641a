#include "scenes/ui/controls.hpp"

#include "scenes/ui/ink.hpp"
#include "scenes/ui/state.hpp"
#include "scenes/view/number.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace scenes {
namespace {

/// The ruled line a slider's pointer runs on.
struct Rail {
    float left;
    float right;
    float y;

    [[nodiscard]] float x_of(const Slider& spec, double value) const
    {
        const double share = (value - spec.low) / (spec.high - spec.low);
        return left + (right - left) * static_cast<float>(std::clamp(share, 0.0, 1.0));
    }
    [[nodiscard]] double value_at(const Slider& spec, float x) const
    {
        const float share = std::clamp((x - left) / (right - left), 0.0F, 1.0F);
        return spec.low + (spec.high - spec.low) * static_cast<double>(share);
    }
};

double snapped(const Slider& spec, double value)
{
    const double steps = std::round((value - spec.low) / spec.step);
    return std::clamp(spec.low + steps * spec.step, spec.low, spec.high);
}

std::string value_text(const Slider& spec, double value)
{
    if (!spec.value_text.empty()) {
        return std::string(spec.value_text);
    }
    std::string text = fixed_text(value * spec.shown_per_unit, spec.decimals);
    if (!spec.unit.empty()) {
        const bool is_close = spec.unit == "\u00B0"; // the one sign without a space before it
        text += is_close ? "" : " ";
        text += spec.unit;
    }
    return text;
}

/// Moves the value by the keys a focused slider understands.
double moved_by_keys(Interface::State& state, const Slider& spec, double value)
{
    using sf::Keyboard;
    const std::array moves{std::pair{Keyboard::Right, 1.0},   std::pair{Keyboard::Up, 1.0},
                           std::pair{Keyboard::Left, -1.0},   std::pair{Keyboard::Down, -1.0},
                           std::pair{Keyboard::PageUp, 10.0}, std::pair{Keyboard::PageDown, -10.0}};
    for (const auto& [key, steps] : moves) {
        while (take_own_key(state, key)) {
            value = snapped(spec, value + steps * spec.step);
        }
    }
    if (take_own_key(state, Keyboard::Home)) {
        value = spec.low;
    }
    if (take_own_key(state, Keyboard::End)) {
        value = spec.high;
    }
    if (spec.rest && take_own_key(state, Keyboard::Delete)) {
        value = *spec.rest;
    }
    return value;
}

void draw_rail(const Ink& ink, const Look& look, const Rail& rail, const Slider& spec, double value,
               const Touch& touch)
{
    const Theme& theme = look.theme;
    const float x = std::round(rail.x_of(spec, value));
    const Rgba strong = touch.is_enabled ? theme.accent : theme.ink_soft;
    const float line = look.whole(1.0F);
    constexpr int marks = 10;
    for (int i = 0; i <= marks; ++i) {
        const float at =
            std::round(rail.left + (rail.right - rail.left) * static_cast<float>(i) / marks);
        const float size = look.whole(i % 5 == 0 ? 9.0F : 5.0F);
        ink.block({at, rail.y, line, size}, theme.ink_soft);
    }
    ink.block({rail.left, rail.y - line, rail.right - rail.left + line, line}, theme.ink_soft);
    const float bar = look.whole(4.0F);
    ink.block({rail.left, rail.y - bar, x - rail.left, bar}, strong);
    // The pointer: a plate that tapers to a tip on the scale.
    const float half = look.whole(touch.is_held || touch.is_hovered ? 7.0F : 6.0F);
    const float top = rail.y - look.whole(15.0F);
    const float shoulder = rail.y - look.whole(7.0F);
    const float middle = x + 0.5F;
    const std::array<ImVec2, 5> shape{{{middle - half, top},
                                       {middle + half, top},
                                       {middle + half, shoulder},
                                       {middle, rail.y + look.px(1.5F)},
                                       {middle - half, shoulder}}};
    ink.polygon(shape.data(), static_cast<int>(shape.size()), strong);
    ink.block({x, top + look.whole(3.0F), line, look.whole(6.0F)}, theme.on_accent);
}

} // namespace

bool slider(Interface& ui, const Slider& spec, double& value)
{
    Interface::State& state = ui.state();
    const Look& look = state.look;
    const Theme& theme = look.theme;
    const Ink ink(state);
    const sf::FloatRect box = place(state, look.px(50.0F));
    const sf::FloatRect words{box.left, box.top, box.width, look.whole(22.0F)};
    const float inset = look.whole(7.0F);
    const Rail rail{box.left + inset, box.left + box.width - inset,
                    std::round(box.top + look.px(39.0F))};
    const double before = value;
    const std::string first_text = value_text(spec, value);
    const float value_width = ink.width(first_text, Type::body);
    const bool fits = ink.width(spec.name, Type::body) + value_width + look.px(8.0F) <= words.width;
    const Touch touch = scenes::touch(state, {.name = spec.name,
                                              .role = "slider",
                                              .value = first_text,
                                              .box = box,
                                              .is_enabled = spec.is_enabled,
                                              .fits = fits,
                                              .takes_enter = false});
    if (touch.is_held) {
        const double pointed = rail.value_at(spec, ImGui::GetIO().MousePos.x);
        value = spec.snaps ? snapped(spec, pointed) : pointed;
    }
    if (spec.rest && touch.is_hovered && ImGui::IsMouseDoubleClicked(ImGuiMouseButton_Left)) {
        value = *spec.rest;
    }
    if (touch.is_focused) {
        value = moved_by_keys(state, spec, value);
    }
    const Rgba colour = touch.is_enabled ? theme.ink : theme.ink_soft;
    ink.write(spec.name,
              {words.left, words.top, words.width - value_width - look.px(8.0F), words.height},
              Type::body, colour);
    ink.write(value == before ? first_text : value_text(spec, value), words, Type::body, colour,
              1.0F);
    draw_rail(ink, look, rail, spec, value, touch);
    if (touch.shows_ring) {
        ink.ring(box);
    }
    return value != before;
}

} // namespace scenes
