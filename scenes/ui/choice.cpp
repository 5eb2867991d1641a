#include "scenes/ui/controls.hpp"

#include "scenes/ui/ink.hpp"
#include "scenes/ui/state.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace scenes {
namespace {

/// Options of equal width, in as many rows as their texts need.
struct Grid {
    sf::FloatRect box;
    std::size_t columns;
    std::size_t rows;
    float row_height;

    [[nodiscard]] sf::FloatRect cell(std::size_t index, std::size_t count) const
    {
        const std::size_t row = index / columns;
        const std::size_t in_row = std::min(columns, count - row * columns);
        const float width = box.width / static_cast<float>(in_row);
        const float left = std::round(width * static_cast<float>(index % columns));
        const float right = std::round(width * static_cast<float>(index % columns + 1));
        return {box.left + left, box.top + row_height * static_cast<float>(row), right - left,
                row_height};
    }
};

Grid lay_out(const Ink& ink, const Look& look, std::span<const std::string_view> options,
             float width)
{
    float widest = 0.0F;
    for (const std::string_view option : options) {
        widest = std::max(widest, ink.width(option, Type::bold));
    }
    const auto fitting = static_cast<std::size_t>(width / (widest + look.px(16.0F)));
    const std::size_t most = std::clamp<std::size_t>(fitting, 1, options.size());
    const std::size_t rows = (options.size() + most - 1) / most;
    // Rows filled evenly: four options in two rows are two and two, not three and one.
    return {{}, (options.size() + rows - 1) / rows, rows, look.whole(32.0F)};
}

/// Arrow keys choose the next or the one before.
std::size_t moved_by_keys(Interface::State& state, std::size_t chosen, std::size_t count)
{
    using sf::Keyboard;
    if (take_own_key(state, Keyboard::Right) || take_own_key(state, Keyboard::Down)) {
        return std::min(chosen + 1, count - 1);
    }
    if (take_own_key(state, Keyboard::Left) || take_own_key(state, Keyboard::Up)) {
        return chosen == 0 ? 0 : chosen - 1;
    }
    if (take_own_key(state, Keyboard::Home)) {
        return 0;
    }
    return take_own_key(state, Keyboard::End) ? count - 1 : chosen;
}

/// Draws one option and lists it, so that a test can press it by name.
void draw_option(Interface::State& state, const Ink& ink, std::string_view text,
                 const sf::FloatRect& cell, bool is_chosen, bool is_hovered)
{
    const Look& look = state.look;
    const Theme& theme = look.theme;
    if (is_chosen) {
        ink.block(cell, theme.accent);
    } else if (is_hovered) {
        ink.block(cell, theme.accent_wash);
    }
    const float pad = look.px(6.0F);
    const bool fits = ink.write(
        text, {cell.left + pad, cell.top, cell.width - 2.0F * pad, cell.height},
        is_chosen ? Type::bold : Type::body, is_chosen ? theme.on_accent : theme.ink, 0.5F);
    list_part(state, {.name = std::string(text),
                      .role = "option",
                      .value = is_chosen ? "chosen" : "",
                      .box = {cell.left, cell.top, cell.width, cell.height},
                      .fits = fits});
}

std::optional<std::size_t> option_under_pointer(const Grid& grid, std::size_t count)
{
    const ImVec2 pointer = ImGui::GetIO().MousePos;
    for (std::size_t i = 0; i < count; ++i) {
        if (grid.cell(i, count).contains(pointer.x, pointer.y)) {
            return i;
        }
    }
    return std::nullopt;
}

/// Draws the line before an option, or above its row.
void draw_partition(const Ink& ink, const Theme& theme, const Grid& grid, std::size_t index,
                    std::size_t count)
{
    const sf::FloatRect cell = grid.cell(index, count);
    if (index % grid.columns != 0) {
        ink.block({cell.left, cell.top, 1.0F, cell.height}, theme.ink_soft);
    } else if (index > 0) {
        ink.block({grid.box.left, cell.top, grid.box.width, 1.0F}, theme.ink_soft);
    }
}

} // namespace

bool choice(Interface& ui, const Choice& spec, std::size_t& chosen)
{
    Interface::State& state = ui.state();
    const Look& look = state.look;
    const Theme& theme = look.theme;
    const Ink ink(state);
    const std::size_t count = spec.options.size();
    const float head = spec.name.empty() ? 0.0F : look.whole(24.0F);
    const sf::FloatRect room = place(state, 0.0F);
    Grid grid = lay_out(ink, look, spec.options, room.width);
    const float height = head + grid.row_height * static_cast<float>(grid.rows);
    if (state.row) {
        state.row->box.height = std::max(state.row->box.height, height);
    }
    const sf::FloatRect box{room.left, room.top, room.width, height};
    grid.box = {box.left, box.top + head, box.width, height - head};
    const bool fits = ink.width(spec.name, Type::body) <= box.width;
    const Touch touch = scenes::touch(state, {.name = spec.id.empty() ? spec.name : spec.id,
                                              .role = "choice",
                                              .value = std::string(spec.options[chosen]),
                                              .box = box,
                                              .is_enabled = spec.is_enabled,
                                              .fits = fits,
                                              .takes_enter = false});
    const std::size_t before = chosen;
    if (touch.is_focused) {
        chosen = moved_by_keys(state, chosen, count);
    }
    if (!spec.name.empty()) {
        ink.write(spec.name, {box.left, box.top, box.width, look.whole(22.0F)}, Type::body,
                  theme.ink);
    }
    if (touch.is_pressed) {
        chosen = option_under_pointer(grid, count).value_or(chosen);
    }
    const std::optional<std::size_t> hovered =
        touch.is_hovered ? option_under_pointer(grid, count) : std::nullopt;
    for (std::size_t i = 0; i < count; ++i) {
        draw_option(state, ink, spec.options[i], grid.cell(i, count), i == chosen, i == hovered);
        draw_partition(ink, theme, grid, i, count);
    }
    ink.frame(grid.box, theme.ink, look.whole(1.0F));
    if (touch.shows_ring) {
        ink.ring(grid.box);
    }
    return chosen != before;
}

} // namespace scenes
