#include "scenes/ui/state.hpp"

#include <imgui.h>
#include <imgui_internal.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

// What every widget shares: a place in the layout, the pointer, the keyboard, the list for tests.

namespace scenes {
namespace {

void list_widget(Interface::State& state, const Wish& wish, bool is_focused)
{
    list_part(state, {.name = std::string(wish.name),
                      .role = std::string(wish.role),
                      .value = wish.value,
                      .box = {wish.box.left, wish.box.top, wish.box.width, wish.box.height},
                      .is_enabled = wish.is_enabled,
                      .is_focused = is_focused,
                      .fits = wish.fits});
}

/// Starts the clock of a tip when the pointer or the focus comes to rest on another widget.
void note_rest(Interface::State& state, TabOrder::Id id)
{
    if (std::exchange(state.rested_on, id) != id) {
        state.rested_since = ImGui::GetTime();
    }
}

ImVec2 size_of(const Wish& wish)
{
    return {std::max(1.0F, wish.box.width), std::max(1.0F, wish.box.height)};
}

Touch touch_by_pointer(Interface::State& state, const Wish& wish, ImGuiID id)
{
    Touch result;
    result.is_pressed = ImGui::InvisibleButton("touch", size_of(wish));
    result.is_hovered = ImGui::IsItemHovered();
    result.is_held = ImGui::IsItemActive();
    state.tab_order.add(id, state.panel_id, state.layer);
    if (ImGui::IsItemActivated()) {
        state.tab_order.point_at(id);
        state.has_pressed_widget = true;
    }
    if (result.is_hovered) {
        ImGui::SetMouseCursor(ImGuiMouseCursor_Hand);
    }
    return result;
}

/// A disabled widget still knows that it is pointed at: its tip may say why it cannot be used.
Touch touch_disabled(const Wish& wish)
{
    ImGui::Dummy(size_of(wish));
    return {.is_hovered = ImGui::IsItemHovered(), .is_enabled = false};
}

void touch_by_keyboard(Interface::State& state, const Wish& wish, ImGuiID id, Touch& result)
{
    result.is_focused = state.tab_order.has(id);
    result.shows_ring = result.is_focused && state.tab_order.shows_ring();
    if (!result.is_focused) {
        return;
    }
    if (state.tab_order.has_moved()) {
        ImGui::ScrollToItem(ImGuiScrollFlags_KeepVisibleCenterY);
    }
    if (wish.takes_enter &&
        (take_own_key(state, sf::Keyboard::Space) || take_own_key(state, sf::Keyboard::Enter))) {
        result.is_pressed = true;
    }
}

} // namespace

void list_part(Interface::State& state, Widget widget)
{
    WidgetBox& box = widget.box;
    ImRect seen(box.left, box.top, box.left + box.width, box.top + box.height);
    const ImRect& window = ImGui::GetCurrentWindow()->ClipRect;
    widget.is_visible = window.Overlaps(seen);
    if (widget.is_visible) {
        seen.ClipWith(window);
        box = {seen.Min.x, seen.Min.y, seen.GetWidth(), seen.GetHeight()};
    }
    widget.panel = state.panel;
    state.widgets.add(std::move(widget));
}

sf::FloatRect place(Interface::State& state, float height)
{
    if (!state.row) {
        const ImVec2 at = ImGui::GetCursorScreenPos();
        return {std::round(at.x), std::round(at.y), std::floor(ImGui::GetContentRegionAvail().x),
                std::round(height)};
    }
    RowLayout& row = *state.row;
    const float gap = state.look.whole(8.0F);
    const auto count = static_cast<float>(row.shares.size());
    const float room = row.box.width - gap * (count - 1.0F);
    const std::size_t index = std::min(row.next, row.shares.size() - 1);
    float total = 0.0F;
    for (const float share : row.shares) {
        total += share;
    }
    const float left =
        row.box.left + std::round(room * row.spent / total) + gap * static_cast<float>(index);
    row.spent += row.shares[index];
    const float right =
        row.box.left + std::round(room * row.spent / total) + gap * static_cast<float>(index);
    ++row.next;
    row.box.height = std::max(row.box.height, std::round(height));
    return {left, row.box.top, right - left, std::round(height)};
}

Touch touch(Interface::State& state, const Wish& wish)
{
    ImGui::SetCursorScreenPos({wish.box.left, wish.box.top});
    ImGui::PushID(wish.name.data(), wish.name.data() + wish.name.size());
    const ImGuiID id = ImGui::GetID("touch");
    Touch result = wish.is_enabled ? touch_by_pointer(state, wish, id) : touch_disabled(wish);
    ImGui::PopID();
    if (wish.is_enabled) {
        touch_by_keyboard(state, wish, id, result);
    }
    state.is_pointing = state.is_pointing || result.is_hovered;
    if (result.is_hovered || (result.shows_ring && !state.was_pointing)) {
        note_rest(state, id);
    }
    if (result.is_held || result.is_pressed) {
        // Whoever uses it needs no tip, which would cover what comes of it.
        state.rested_since = std::numeric_limits<double>::infinity();
    }
    state.last_widget = id;
    state.last_box = wish.box;
    list_widget(state, wish, result.is_focused);
    return result;
}

void show(Interface::State& state, const Wish& wish)
{
    ImGui::SetCursorScreenPos({wish.box.left, wish.box.top});
    ImGui::Dummy(size_of(wish));
    state.last_widget = 0;
    list_widget(state, wish, false);
}

bool take_own_key(Interface::State& state, sf::Keyboard::Key key)
{
    for (KeyPress& press : state.platform.keys()) {
        if (!press.is_taken && press.key.code == key && !press.key.control && !press.key.alt) {
            press.is_taken = true;
            return true;
        }
    }
    return false;
}

} // namespace scenes
