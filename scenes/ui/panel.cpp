#include "scenes/ui/panel.hpp"

#include "scenes/ui/ink.hpp"
#include "scenes/ui/state.hpp"

#include <imgui.h>
#include <imgui_internal.h>

#include <cassert>
#include <cmath>
#include <string>

namespace scenes {
namespace {

constexpr ImGuiWindowFlags fixed_window =
    ImGuiWindowFlags_NoTitleBar | ImGuiWindowFlags_NoResize | ImGuiWindowFlags_NoMove |
    ImGuiWindowFlags_NoCollapse | ImGuiWindowFlags_NoSavedSettings | ImGuiWindowFlags_NoNav |
    ImGuiWindowFlags_NoBringToFrontOnFocus | ImGuiWindowFlags_NoScrollbar |
    ImGuiWindowFlags_NoScrollWithMouse;

void begin_window(std::string_view name, const sf::FloatRect& box, ImGuiWindowFlags flags)
{
    ImGui::SetNextWindowPos({std::round(box.left), std::round(box.top)});
    ImGui::SetNextWindowSize({std::round(box.width), std::round(box.height)});
    ImGui::Begin(std::string(name).c_str(), nullptr, fixed_window | flags);
}

/// Draws the head: name in bold, note at the right, a rule below. Returns its height.
float draw_head(Interface::State& state, const PanelSpec& spec)
{
    const Look& look = state.look;
    const Ink ink(state);
    const float height = look.whole(34.0F);
    const float pad = look.whole(14.0F);
    const float note = spec.note.empty() ? 0.0F : ink.width(spec.note, Type::small) + pad;
    const sf::FloatRect box{spec.box.left + pad, spec.box.top, spec.box.width - 2.0F * pad - note,
                            height};
    const bool fits = ink.write(spec.name, box, Type::bold, look.theme.ink);
    if (!spec.note.empty()) {
        const sf::FloatRect right{box.left + box.width, box.top, note, height};
        ink.write(spec.note, right, Type::small, look.theme.ink_soft, 1.0F);
    }
    ink.block({spec.box.left, spec.box.top + height - 1.0F, spec.box.width, 1.0F},
              look.theme.ink_soft);
    show(state, {.name = spec.name,
                 .role = "panel",
                 .value = std::string(spec.note),
                 .box = {spec.box.left, spec.box.top, spec.box.width, height},
                 .fits = fits});
    return height;
}

/// Opens the part of a window that holds widgets, with room for focus rings at its edges.
void begin_content(Interface::State& state, const char* name, ImVec2 size, float side)
{
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {side, state.look.whole(10.0F)});
    ImGui::BeginChild(name, size, false,
                      ImGuiWindowFlags_AlwaysUseWindowPadding | ImGuiWindowFlags_NoNav);
    ImGui::PopStyleVar();
}

} // namespace

Panel::Panel(Interface& ui, const PanelSpec& spec) : state_(ui.state())
{
    const Look& look = state_.look;
    begin_window(spec.name, spec.box, 0);
    state_.panel = spec.name;
    state_.panel_id = ImGui::GetID("panel");
    state_.opaque_panels.push_back(ImGui::GetCurrentWindowRead()->ID);
    state_.solid_boxes.push_back(spec.box);
    const float head = spec.has_head ? draw_head(state_, spec) : 0.0F;
    const float line = look.whole(2.0F);
    Ink(state_).frame({std::round(spec.box.left), std::round(spec.box.top),
                       std::round(spec.box.width), std::round(spec.box.height)},
                      look.theme.ink, line);
    ImGui::SetCursorScreenPos(
        {std::round(spec.box.left) + line, std::round(spec.box.top) + head + line * 0.5F});
    begin_content(state_, "content",
                  {std::round(spec.box.width) - 2.0F * line,
                   std::round(spec.box.height) - head - 1.5F * line},
                  look.whole(12.0F));
}

Panel::~Panel()
{
    assert(!state_.row);
    ImGui::EndChild();
    ImGui::End();
    state_.panel.clear();
    state_.panel_id = 0;
}

Overlay::Overlay(Interface& ui, std::string_view name, const sf::FloatRect& box)
    : state_(ui.state())
{
    begin_window(name, box, ImGuiWindowFlags_NoBackground);
    state_.panel = name;
    state_.panel_id = ImGui::GetID("panel");
}

Overlay::~Overlay()
{
    ImGui::End();
    state_.panel.clear();
    state_.panel_id = 0;
}

Row::Row(Interface& ui, std::initializer_list<float> shares) : state_(ui.state())
{
    assert(!state_.row && shares.size() > 0);
    sf::FloatRect box = place(state_, 0.0F);
    state_.row = RowLayout{.box = box, .shares = shares};
}

Row::~Row()
{
    const sf::FloatRect box = state_.row->box;
    state_.row.reset();
    ImGui::SetCursorScreenPos({box.left, box.top});
    ImGui::Dummy({box.width, box.height});
}

ScrollArea::ScrollArea(Interface& ui, std::string_view name, float height) : state_(ui.state())
{
    assert(!state_.row);
    // Wider than the panel's other widgets by the room that focus rings need: edges stay in line.
    const float side = state_.look.whole(7.0F);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    ImGui::SetCursorScreenPos({at.x - side, at.y});
    begin_content(state_, std::string(name).c_str(),
                  {ImGui::GetContentRegionAvail().x + side, height}, side);
}

ScrollArea::~ScrollArea()
{
    ImGui::EndChild();
}

float room_left(const Interface& /*ui*/)
{
    return ImGui::GetContentRegionAvail().y;
}

void show_end(Interface& /*ui*/)
{
    ImGui::SetScrollHereY(1.0F);
}

} // namespace scenes
