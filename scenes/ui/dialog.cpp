#include "scenes/ui/dialog.hpp"

#include "scenes/ui/ink.hpp"
#include "scenes/ui/state.hpp"

#include <imgui.h>

#include <algorithm>
#include <cmath>
#include <string>

namespace scenes {

Dialog::Dialog(Interface& ui, const DialogSpec& spec, bool& is_open)
    : state_(ui.state()), is_open_(is_open)
{
    if (!is_open) {
        return;
    }
    const Look& look = state_.look;
    const std::string name(spec.id.empty() ? spec.name : spec.id);
    if (!ImGui::IsPopupOpen(name.c_str())) {
        ImGui::OpenPopup(name.c_str());
    }
    const ImVec2 screen = ImGui::GetIO().DisplaySize;
    const float pad = look.whole(18.0F);
    ImGui::SetNextWindowPos({std::round(screen.x / 2.0F), std::round(screen.y / 2.0F)}, 0,
                            {0.5F, 0.5F});
    const float width = std::min(look.whole(spec.width), screen.x - pad);
    ImGui::SetNextWindowSizeConstraints({width, 0.0F}, {width, screen.y - pad});
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {pad, pad});
    is_shown_ =
        ImGui::BeginPopupModal(name.c_str(), nullptr,
                               ImGuiWindowFlags_NoTitleBar | ImGuiWindowFlags_NoResize |
                                   ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
                                   ImGuiWindowFlags_NoNav | ImGuiWindowFlags_AlwaysAutoResize);
    ImGui::PopStyleVar();
    if (!is_shown_) {
        return;
    }
    state_.panel = spec.name;
    state_.panel_id = ImGui::GetID("panel");
    ++state_.layer;
    const Ink ink(state_);
    const sf::FloatRect title = place(state_, look.px(28.0F));
    const bool fits = ink.write(spec.name, title, Type::heading, look.theme.ink);
    const ImVec2 at = ImGui::GetWindowPos();
    const ImVec2 size = ImGui::GetWindowSize();
    const float inner = look.whole(5.0F);
    ImGui::GetWindowDrawList()->PushClipRect(at, {at.x + size.x, at.y + size.y});
    ink.frame({at.x, at.y, size.x, size.y}, look.theme.ink, look.whole(2.0F));
    ink.frame({at.x + inner, at.y + inner, size.x - 2.0F * inner, size.y - 2.0F * inner},
              look.theme.ink_soft, 1.0F);
    ImGui::GetWindowDrawList()->PopClipRect();
    show(state_, {.name = spec.name, .role = "dialog", .value = {}, .box = title, .fits = fits});
}

Dialog::~Dialog()
{
    if (!is_shown_) {
        return;
    }
    if (take_own_key(state_, sf::Keyboard::Escape)) {
        is_open_ = false;
    }
    if (!is_open_) {
        ImGui::CloseCurrentPopup();
    }
    ImGui::EndPopup();
    state_.panel.clear();
    state_.panel_id = 0;
}

} // namespace scenes
