#include "scenes/ui/handle.hpp"

#include "scenes/ui/ink.hpp"
#include "scenes/ui/state.hpp"

#include <imgui.h>

#include <array>
#include <utility>

namespace scenes {
namespace {

void take_arrows(Interface::State& state, Handle& result)
{
    using sf::Keyboard;
    const std::array moves{std::pair{Keyboard::Right, 1}, std::pair{Keyboard::Up, 1},
                           std::pair{Keyboard::Left, -1}, std::pair{Keyboard::Down, -1}};
    for (const auto& [key, step] : moves) {
        while (take_own_key(state, key)) {
            result.steps += step;
        }
    }
    if (take_own_key(state, Keyboard::Home)) {
        result.end = -1;
    }
    if (take_own_key(state, Keyboard::End)) {
        result.end = 1;
    }
}

} // namespace

Handle handle(Interface& ui, const HandleSpec& spec)
{
    Interface::State& state = ui.state();
    const Touch touch = scenes::touch(state, {.name = spec.name,
                                              .role = "handle",
                                              .value = std::string(spec.value),
                                              .box = spec.box,
                                              .is_enabled = spec.is_enabled});
    if (touch.shows_ring) {
        Ink(state).ring(spec.box);
    }
    Handle result{.is_hovered = touch.is_hovered,
                  .is_focused = touch.is_focused,
                  .is_held = touch.is_held,
                  .is_pressed = touch.is_pressed};
    result.is_double_clicked =
        touch.is_hovered && ImGui::IsMouseDoubleClicked(ImGuiMouseButton_Left);
    if (touch.is_focused && spec.takes_arrows) {
        take_arrows(state, result);
    }
    if (touch.is_held) {
        const ImVec2 drag = ImGui::GetMouseDragDelta(ImGuiMouseButton_Left, 0.0F);
        result.drag = {drag.x, drag.y};
    }
    return result;
}

} // namespace scenes
