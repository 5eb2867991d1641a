#include "scenes/ui/list.hpp"

#include "scenes/ui/ink.hpp"
#include "scenes/ui/state.hpp"

#include <imgui.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace scenes {
namespace {

/// The left edges of the columns, and the right edge of the last.
std::vector<float> column_edges(std::span<const ListColumn> columns, float left, float width)
{
    float total = 0.0F;
    for (const ListColumn& column : columns) {
        total += column.share;
    }
    std::vector<float> edges{left};
    float spent = 0.0F;
    for (const ListColumn& column : columns) {
        spent += column.share;
        edges.push_back(left + std::round(width * spent / total));
    }
    return edges;
}

struct Table {
    Interface::State& state;
    const List& spec;
    const Ink& ink;
    std::vector<float> edges;
    float line_height;
    float row_height;

    /// The first column has a line of its own above the others.
    [[nodiscard]] bool has_two_lines() const { return row_height > line_height; }
};

bool write_cell(const Table& table, std::size_t column, float top, std::string_view text, Type type,
                Rgba colour)
{
    const float pad = table.state.look.whole(10.0F);
    const bool is_wide = table.has_two_lines() && column == 0;
    const float right = is_wide ? table.edges.back() : table.edges[column + 1];
    const sf::FloatRect box{table.edges[column] + pad, top,
                            right - table.edges[column] - 1.5F * pad, table.line_height};
    return table.ink.write(text, box, type, colour,
                           table.spec.columns[column].is_figure ? 1.0F : 0.0F);
}

void draw_head(const Table& table, const sf::FloatRect& box)
{
    const Theme& theme = table.state.look.theme;
    table.ink.block(box, theme.recess);
    for (std::size_t i = table.has_two_lines() ? 1 : 0; i < table.spec.columns.size(); ++i) {
        write_cell(table, i, box.top, table.spec.columns[i].title, Type::bold, theme.ink);
    }
    table.ink.block({box.left, box.top + box.height - 1.0F, box.width, 1.0F}, theme.ink);
}

/// Draws a row and lists it, so that tests can press it by the text of its first cell.
void draw_row(const Table& table, std::size_t row, const sf::FloatRect& box, bool is_selected,
              bool is_hovered)
{
    const Look& look = table.state.look;
    const Theme& theme = look.theme;
    if (is_selected || is_hovered) {
        table.ink.block(box, theme.accent_wash);
    }
    if (is_selected) {
        table.ink.block({box.left, box.top, look.whole(4.0F), box.height}, theme.accent);
    }
    table.ink.block({box.left, box.top + box.height - 1.0F, box.width, 1.0F}, theme.ink_grid);
    bool fits = true;
    std::string value = is_selected ? "selected" : "";
    for (std::size_t i = 0; i < table.spec.columns.size(); ++i) {
        const float top = box.top + (i > 0 ? table.row_height - table.line_height : 0.0F);
        // The line of its own is what the row is about; what stands under it only adds to it.
        const bool is_title = table.has_two_lines() && i == 0;
        const bool is_under = table.has_two_lines() && i > 0;
        fits =
            write_cell(table, i, top, table.spec.cell(row, i), is_title ? Type::bold : Type::body,
                       is_under ? theme.ink_soft : theme.ink) &&
            fits;
    }
    list_part(table.state, {.name = table.spec.cell(row, 0),
                            .role = "row",
                            .value = std::move(value),
                            .box = {box.left, box.top, box.width, box.height},
                            .fits = fits});
}

/// Moves the selection by the keys a focused list understands.
std::size_t moved_by_keys(Interface::State& state, std::size_t selected, std::size_t count,
                          std::size_t page)
{
    using sf::Keyboard;
    const bool is_none = selected >= count;
    const auto move = [&](Keyboard::Key key, std::ptrdiff_t by) {
        while (take_own_key(state, key)) {
            const std::ptrdiff_t from = is_none && selected >= count
                                            ? (by > 0 ? -1 : 1)
                                            : static_cast<std::ptrdiff_t>(selected);
            selected = static_cast<std::size_t>(
                std::clamp<std::ptrdiff_t>(from + by, 0, static_cast<std::ptrdiff_t>(count) - 1));
        }
    };
    move(Keyboard::Down, 1);
    move(Keyboard::Up, -1);
    move(Keyboard::PageDown, static_cast<std::ptrdiff_t>(page));
    move(Keyboard::PageUp, -static_cast<std::ptrdiff_t>(page));
    if (take_own_key(state, Keyboard::Home)) {
        selected = 0;
    }
    if (take_own_key(state, Keyboard::End)) {
        selected = count - 1;
    }
    return selected;
}

/// Scrolls as little as needed to show a row.
void show_row(float row_height, std::size_t row)
{
    const float top = row_height * static_cast<float>(row);
    const float room = ImGui::GetWindowHeight();
    const float scrolled = ImGui::GetScrollY();
    if (top < scrolled) {
        ImGui::SetScrollY(top);
    } else if (top + row_height > scrolled + room) {
        ImGui::SetScrollY(top + row_height - room);
    }
}

void draw_rows(const Table& table, ImVec2 origin, std::size_t selected, bool is_pointed_at)
{
    const float width = table.edges.back() - table.edges.front();
    const float scrolled = ImGui::GetScrollY();
    const auto first = static_cast<std::size_t>(scrolled / table.row_height);
    const auto shown = static_cast<std::size_t>(ImGui::GetWindowHeight() / table.row_height) + 2;
    const std::size_t last = std::min(table.spec.row_count, first + shown);
    const ImVec2 pointer = ImGui::GetIO().MousePos;
    for (std::size_t row = first; row < last; ++row) {
        const sf::FloatRect box{origin.x, origin.y + table.row_height * static_cast<float>(row),
                                width, table.row_height};
        draw_row(table, row, box, row == selected,
                 is_pointed_at && box.contains(pointer.x, pointer.y));
    }
}

/// The scrolling part: one touch area for all rows.
ListAction use_rows(const Table& table, const std::string& value, std::size_t& selected,
                    Touch& touch)
{
    Interface::State& state = table.state;
    const std::size_t count = table.spec.row_count;
    const ImVec2 origin = ImGui::GetCursorScreenPos();
    ListAction action;
    const sf::FloatRect all{origin.x, origin.y, table.edges.back() - table.edges.front(),
                            std::max(1.0F, table.row_height * static_cast<float>(count))};
    touch = scenes::touch(state, {.name = table.spec.name,
                                  .role = "list",
                                  .value = value,
                                  .box = all,
                                  .is_enabled = count > 0,
                                  .takes_enter = false});
    const std::size_t before = selected;
    if (touch.is_held && count > 0) {
        const float down = (ImGui::GetIO().MousePos.y - origin.y) / table.row_height;
        selected =
            static_cast<std::size_t>(std::clamp(down, 0.0F, static_cast<float>(count) - 0.5F));
        action.has_activated = ImGui::IsMouseDoubleClicked(ImGuiMouseButton_Left);
    }
    if (touch.is_focused && count > 0) {
        const auto page = static_cast<std::size_t>(ImGui::GetWindowHeight() / table.row_height);
        selected = moved_by_keys(state, selected, count, std::max<std::size_t>(1, page));
        action.has_activated =
            action.has_activated || (selected < count && take_own_key(state, sf::Keyboard::Enter));
        if (selected != before) {
            show_row(table.row_height, selected);
        }
    }
    draw_rows(table, origin, selected, touch.is_hovered);
    action.has_selected = selected != before;
    return action;
}

} // namespace

ListAction list(Interface& ui, const List& spec, std::size_t& selected)
{
    Interface::State& state = ui.state();
    const Look& look = state.look;
    const Ink ink(state);
    const float wanted =
        spec.height > 0.0F ? spec.height : ImGui::GetContentRegionAvail().y - look.px(4.0F);
    const sf::FloatRect box = place(state, std::max(wanted, look.px(90.0F)));
    const float line_height = look.whole(30.0F);
    const bool has_two_lines = !spec.columns.empty() && spec.columns.front().share <= 0.0F;
    const float row_height = has_two_lines ? look.whole(52.0F) : line_height;
    const float head_height = spec.has_head ? line_height : 0.0F;
    const bool scrolls =
        row_height * static_cast<float>(spec.row_count) > box.height - head_height - 2.0F;
    const float inner = box.width - 2.0F - (scrolls ? ImGui::GetStyle().ScrollbarSize : 0.0F);
    const Table head{state,       spec,
                     ink,         column_edges(spec.columns, box.left + 1.0F, inner),
                     line_height, row_height};
    if (spec.has_head) {
        draw_head(head, {box.left, box.top, box.width, head_height});
    }
    ImGui::SetCursorScreenPos({box.left + 1.0F, box.top + head_height + 1.0F});
    ImGui::PushID(spec.name.data(), spec.name.data() + spec.name.size());
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {0.0F, 0.0F});
    ImGui::BeginChild("rows", {box.width - 2.0F, box.height - head_height - 2.0F}, false,
                      ImGuiWindowFlags_NoNav);
    ImGui::PopStyleVar();
    const Ink row_ink(state);
    const Table rows{state, spec, row_ink, head.edges, line_height, row_height};
    const std::string value = selected < spec.row_count ? spec.cell(selected, 0) : std::string();
    Touch touch;
    const ListAction action = use_rows(rows, value, selected, touch);
    if (spec.row_count == 0) {
        const float pad = look.whole(10.0F);
        row_ink.write_wrapped(
            spec.empty_text,
            {box.left + pad, box.top + head_height + pad, box.width - 2.0F * pad, box.height},
            Type::body, look.theme.ink_soft);
    }
    ImGui::EndChild();
    ImGui::PopID();
    ink.frame(box, look.theme.ink, look.whole(1.0F));
    if (touch.shows_ring) {
        ink.ring(box);
    }
    ImGui::SetCursorScreenPos({box.left, box.top});
    ImGui::Dummy({box.width, box.height});
    return action;
}

} // namespace scenes
