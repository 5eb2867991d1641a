#include "scenes/ui/form.hpp"

#include "scenes/ui/ink.hpp"
#include "scenes/ui/state.hpp"

#include <imgui.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace scenes {
namespace {

Type type_of(FormType type)
{
    switch (type) {
    case FormType::small:
        return Type::small;
    case FormType::body:
        return Type::body;
    case FormType::bold:
        return Type::bold;
    case FormType::heading:
        return Type::heading;
    }
    return Type::body;
}

Rgba colour_of(const Theme& theme, Tone tone)
{
    return tone == Tone::plain ? theme.ink : tone == Tone::soft ? theme.ink_soft : theme.warning;
}

/// The cells' boxes, side by side, as high as the highest needs.
std::vector<sf::FloatRect> lay_out(Interface::State& state, const FormRow& row)
{
    const Look& look = state.look;
    const Ink ink(state);
    const float pad = look.whole(5.0F);
    const sf::FloatRect whole = place(state, 0.0F);
    float total = 0.0F;
    for (const FormCell& cell : row.cells) {
        total += cell.share;
    }
    std::vector<sf::FloatRect> boxes;
    float spent = 0.0F;
    float height = 0.0F;
    for (const FormCell& cell : row.cells) {
        const float left = std::round(whole.width * spent / total);
        spent += cell.share;
        const float right = std::round(whole.width * spent / total);
        const sf::FloatRect box{whole.left + left + pad, whole.top + pad, right - left - 2.0F * pad,
                                0.0F};
        height = std::max(height, ink.wrapped_height(cell.text, type_of(cell.type), box.width));
        boxes.push_back(box);
    }
    for (sf::FloatRect& box : boxes) {
        box.height = std::ceil(height);
    }
    return boxes;
}

bool write_cell(const Ink& ink, const Theme& theme, const FormCell& cell, const sf::FloatRect& box)
{
    const Type type = type_of(cell.type);
    const Rgba colour = colour_of(theme, cell.tone);
    if (cell.align > 0.0F) {
        const float width = ink.width(cell.text, type);
        const float left = box.left + (box.width - width) * cell.align;
        ink.write_wrapped(cell.text, {left, box.top, width + 1.0F, box.height}, type, colour);
        return width <= box.width + 0.5F;
    }
    ink.write_wrapped(cell.text, box, type, colour);
    return true;
}

void draw_tick(const Ink& ink, const Look& look, const sf::FloatRect& box, Rgba colour)
{
    const float width = look.px(2.6F);
    const auto x = [&](float share) { return box.left + share * box.width; };
    const auto y = [&](float share) { return box.top + share * box.height; };
    ink.line(x(0.2F), y(0.52F), x(0.43F), y(0.76F), colour, width);
    ink.line(x(0.41F), y(0.77F), x(0.82F), y(0.2F), colour, width);
}

} // namespace

void form_row(Interface& ui, const FormRow& row)
{
    Interface::State& state = ui.state();
    const Theme& theme = state.look.theme;
    const Ink ink(state);
    const std::vector<sf::FloatRect> boxes = lay_out(state, row);
    const sf::FloatRect whole = place(state, 0.0F);
    const float pad = state.look.whole(5.0F);
    const float height = (boxes.empty() ? 0.0F : boxes.front().height) + 2.0F * pad;
    const sf::FloatRect box{whole.left, whole.top, whole.width, height};
    if (row.is_head) {
        ink.block(box, theme.recess);
    }
    bool fits = true;
    std::string name;
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
        fits = write_cell(ink, theme, row.cells[i], boxes[i]) && fits;
        if (!row.cells[i].text.empty()) {
            name += (name.empty() ? "" : " | ") + std::string(row.cells[i].text);
        }
    }
    if (row.has_rule) {
        ink.block({box.left, box.top + height - 1.0F, box.width, 1.0F},
                  row.is_head || row.is_double ? theme.ink : theme.ink_grid);
    }
    if (row.is_double) {
        ink.block({box.left, box.top, box.width, 1.0F}, theme.ink);
        ink.block({box.left, box.top + state.look.whole(3.0F), box.width, 1.0F}, theme.ink);
    }
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {0.0F, 0.0F});
    show(state, {.name = name, .role = "row", .value = {}, .box = box, .fits = fits});
    ImGui::PopStyleVar();
}

void quotation(Interface& ui, std::string_view text)
{
    Interface::State& state = ui.state();
    const Look& look = state.look;
    const Ink ink(state);
    sf::FloatRect box = place(state, 0.0F);
    const float inset = look.whole(16.0F);
    const float pad = look.whole(3.0F);
    const float width = box.width - inset;
    const float height = std::ceil(ink.wrapped_height(text, Type::body, width));
    box.height = height + 2.0F * pad;
    ink.block({box.left, box.top, look.whole(4.0F), box.height}, look.theme.accent);
    ink.write_wrapped(text, {box.left + inset, box.top + pad, width, height}, Type::body,
                      look.theme.ink);
    show(state, {.name = text, .role = "text", .value = {}, .box = box});
}

bool tick_box(Interface& ui, const TickBox& spec, bool& is_ticked)
{
    Interface::State& state = ui.state();
    const Look& look = state.look;
    const Theme& theme = look.theme;
    const Ink ink(state);
    const sf::FloatRect room = place(state, 0.0F);
    const float side = look.whole(20.0F);
    const float left = room.left + side + look.whole(12.0F);
    const float width = room.left + room.width - left;
    const float name = std::ceil(ink.wrapped_height(spec.name, Type::bold, width));
    const float note =
        spec.note.empty() ? 0.0F : std::ceil(ink.wrapped_height(spec.note, Type::body, width));
    const sf::FloatRect box{room.left, room.top, room.width,
                            std::max(side + look.whole(6.0F), name + note + look.whole(4.0F))};
    const Touch touch = scenes::touch(state, {.name = spec.name,
                                              .role = "switch",
                                              .value = is_ticked ? "ticked" : "clear",
                                              .box = box,
                                              .is_enabled = spec.is_enabled});
    if (touch.is_pressed) {
        is_ticked = !is_ticked;
    }
    const sf::FloatRect square{box.left, box.top + look.whole(1.0F), side, side};
    ink.block(square, touch.is_hovered ? theme.accent_wash : theme.ground);
    ink.frame(square, touch.is_enabled ? theme.ink : theme.ink_soft, look.whole(2.0F));
    if (is_ticked) {
        draw_tick(ink, look, square, theme.accent);
    }
    const Rgba colour = touch.is_enabled ? theme.ink : theme.ink_soft;
    ink.write_wrapped(spec.name, {left, box.top, width, name}, Type::bold, colour);
    ink.write_wrapped(spec.note, {left, box.top + name, width, note}, Type::body, theme.ink_soft);
    if (touch.shows_ring) {
        ink.ring(box);
    }
    return touch.is_pressed;
}

} // namespace scenes
