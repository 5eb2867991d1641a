#include "scenes/ui/ink.hpp"
#include "scenes/ui/state.hpp"

#include <imgui.h>

namespace scenes {

void apply_style(const Look& look)
{
    const Theme& theme = look.theme;
    ImGuiStyle style;
    style.AntiAliasedLinesUseTex = false;
    style.WindowPadding = {0.0F, 0.0F};
    style.WindowBorderSize = 0.0F;
    style.ChildBorderSize = 0.0F;
    style.PopupBorderSize = 0.0F;
    style.FramePadding = {look.whole(10.0F), look.whole(5.0F)};
    style.FrameBorderSize = 0.0F;
    style.ItemSpacing = {look.whole(8.0F), look.whole(8.0F)};
    style.ScrollbarSize = look.whole(12.0F);
    style.ScrollbarRounding = 0.0F;
    style.GrabMinSize = look.whole(24.0F);
    style.WindowMinSize = {1.0F, 1.0F};
    const auto set = [&style](ImGuiCol which, Rgba colour) {
        style.Colors[which] = to_imgui_vector(colour);
    };
    set(ImGuiCol_Text, theme.ink);
    set(ImGuiCol_TextDisabled, theme.ink_soft);
    set(ImGuiCol_WindowBg, theme.sheet);
    set(ImGuiCol_PopupBg, theme.sheet);
    set(ImGuiCol_ChildBg, with_alpha(theme.sheet, 0));
    set(ImGuiCol_FrameBg, with_alpha(theme.sheet, 0));
    set(ImGuiCol_TextSelectedBg, theme.accent_wash);
    set(ImGuiCol_ScrollbarBg, theme.recess);
    set(ImGuiCol_ScrollbarGrab, theme.ink_soft);
    set(ImGuiCol_ScrollbarGrabHovered, theme.ink);
    set(ImGuiCol_ScrollbarGrabActive, theme.accent);
    set(ImGuiCol_ModalWindowDimBg, with_alpha(theme.scrim, 0)); // drawn by ourselves
    ImGui::GetStyle() = style;
}

} // namespace scenes
