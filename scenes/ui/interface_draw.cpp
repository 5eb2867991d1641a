#include "scenes/ui/ink.hpp"
#include "scenes/ui/interface.hpp"
#include "scenes/ui/state.hpp"

#include <SFML/OpenGL.hpp>

#include <imgui.h>
#include <imgui_internal.h>

#include <algorithm>
#include <cmath>

// The end of a frame: tip, panels, what lies over them.

namespace scenes {
namespace {

/// Seconds that the pointer or the focus rests on a widget before its tip appears.
constexpr double tip_delay = 0.5;

void draw_tip(Interface::State& state)
{
    const bool is_shown = !state.tip.empty() && ImGui::GetTime() - state.rested_since > tip_delay;
    if (!is_shown) {
        return;
    }
    const Look& look = state.look;
    const Ink ink(state, *ImGui::GetForegroundDrawList());
    const float pad = look.whole(9.0F);
    const float widest = look.whole(300.0F);
    const float width = std::min(widest, std::ceil(ink.width(state.tip, Type::body)) + 1.0F);
    const float height = ink.wrapped_height(state.tip, Type::body, width);
    const ImVec2 screen = ImGui::GetIO().DisplaySize;
    sf::FloatRect box{state.tip_box.left, state.tip_box.top + state.tip_box.height + pad,
                      width + 2.0F * pad, height + 2.0F * pad};
    box.left = std::max(0.0F, std::min(box.left, screen.x - box.width - pad));
    if (box.top + box.height > screen.y) {
        box.top = state.tip_box.top - box.height - pad;
    }
    ink.block(box, look.theme.ink);
    ink.write_wrapped(state.tip, {box.left + pad, box.top + pad, width, height}, Type::body,
                      look.theme.sheet);
    state.widgets.add({.name = state.tip,
                       .role = "tip",
                       .value = {},
                       .panel = {},
                       .box = {box.left, box.top, box.width, box.height}});
}

/// Sorts the frame's draw lists: those of opaque panels by panel, the rest as they come.
struct SortedLists {
    std::vector<PanelPicture> panels;
    std::vector<ImDrawList*> loose;
};

SortedLists sort_lists(const Interface::State& state)
{
    SortedLists sorted;
    const ImDrawData& data = *ImGui::GetDrawData();
    const ImVector<ImGuiWindow*>& windows = ImGui::GetCurrentContext()->Windows;
    for (int i = 0; i < data.CmdListsCount; ++i) {
        ImDrawList* list = data.CmdLists[i];
        const auto window =
            std::find_if(windows.begin(), windows.end(),
                         [list](const ImGuiWindow* w) { return w->DrawList == list; });
        const ImGuiWindow* root = window == windows.end() ? nullptr : (*window)->RootWindow;
        const bool is_opaque =
            root != nullptr && std::find(state.opaque_panels.begin(), state.opaque_panels.end(),
                                         root->ID) != state.opaque_panels.end();
        if (!is_opaque) {
            sorted.loose.push_back(list);
            continue;
        }
        const auto known = std::find_if(sorted.panels.begin(), sorted.panels.end(),
                                        [root](const PanelPicture& p) { return p.id == root->ID; });
        if (known != sorted.panels.end()) {
            known->lists.push_back(list);
        } else {
            sorted.panels.push_back(
                {root->ID, {root->Pos.x, root->Pos.y, root->Size.x, root->Size.y}, {list}});
        }
    }
    return sorted;
}

void draw_scrim(sf::RenderWindow& window, const Theme& theme)
{
    sf::RectangleShape scrim(sf::Vector2f(window.getSize()));
    scrim.setFillColor({theme.scrim.red, theme.scrim.green, theme.scrim.blue, theme.scrim.alpha});
    const sf::View view = window.getView();
    window.setView(sf::View(sf::FloatRect({}, scrim.getSize())));
    window.draw(scrim);
    window.setView(view);
}

} // namespace

void Interface::draw()
{
    State& state = *state_;
    draw_tip(state);
    if (ImGui::IsMouseClicked(ImGuiMouseButton_Left) && !state.has_pressed_widget) {
        state.tab_order.drop();
    }
    ImGui::Render();
    const SortedLists sorted = sort_lists(state);
    state.redrawn_panels = state.cache.draw(state.window, sorted.panels);
    if (state.layer > 0) {
        draw_scrim(state.window, state.look.theme);
    }
    if (!sorted.loose.empty()) {
        state.window.setActive(true);
        state.window.resetGLStates();
        glMatrixMode(GL_TEXTURE);
        glLoadIdentity();
        glMatrixMode(GL_MODELVIEW);
        draw_lists(sorted.loose, state.window.getSize());
    }
    state.window.resetGLStates();
}

} // namespace scenes
