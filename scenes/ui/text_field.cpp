#include "scenes/ui/controls.hpp"

#include "scenes/present/soft_wrap.hpp"
#include "scenes/ui/ink.hpp"
#include "scenes/ui/state.hpp"

#include <imgui.h>
#include <imgui_internal.h>
#include <imgui_stdlib.h>

#include <algorithm>
#include <cfloat>
#include <cmath>
#include <span>

namespace scenes {
namespace {

/// Starts or ends typing as the focus comes and goes.
void follow_focus(Interface::State& state, ImGuiID id)
{
    if (!state.tab_order.has(id) || ImGui::GetActiveID() == id) {
        return;
    }
    const bool starts = state.tab_order.has_moved() || take_own_key(state, sf::Keyboard::Enter);
    if (starts) {
        // The library starts typing by itself only for the text fields it tabs to.
        ImGui::GetCurrentContext()->NavInputSource = ImGuiInputSource_Keyboard;
        ImGui::ActivateItem(id);
    }
}

void draw_lens(const Ink& ink, const Look& look, const sf::FloatRect& box)
{
    const ImVec2 centre{std::round(box.left + look.px(16.0F)),
                        std::round(box.top + box.height / 2.0F - look.px(1.0F))};
    const float radius = look.px(5.0F);
    ink.circle(centre, radius, look.theme.ink_soft, look.px(1.8F));
    const float near = radius * 0.75F;
    const float far = radius * 1.9F;
    ink.line(centre.x + near, centre.y + near, centre.x + far, centre.y + far, look.theme.ink_soft,
             look.px(2.2F));
}

/// A small cross at the right end that empties the field. Returns whether it was pressed.
bool clear_button(Interface::State& state, const Ink& ink, const sf::FloatRect& box,
                  std::string_view field)
{
    const Look& look = state.look;
    const sf::FloatRect spot{box.left + box.width - box.height, box.top, box.height, box.height};
    const std::string name = std::string(field) + " \u00D7";
    const Touch touch =
        scenes::touch(state, {.name = name, .role = "button", .value = {}, .box = spot});
    const float arm = look.px(5.0F);
    const float x = std::round(spot.left + spot.width / 2.0F);
    const float y = std::round(spot.top + spot.height / 2.0F);
    const Rgba colour = touch.is_hovered ? look.theme.accent : look.theme.ink_soft;
    ink.line(x - arm, y - arm, x + arm, y + arm, colour, look.px(1.8F));
    ink.line(x - arm, y + arm, x + arm, y - arm, colour, look.px(1.8F));
    if (touch.shows_ring) {
        ink.ring({spot.left + look.px(6.0F), spot.top + look.px(6.0F), spot.width - look.px(12.0F),
                  spot.height - look.px(12.0F)});
    }
    return touch.is_pressed;
}

/// A text broken into lines as its field is wide. The library itself breaks none.
struct Lines {
    ImFont* font;
    float width;

    void wrap(std::span<char> text) const
    {
        wrap_softly(text, width, [&](std::string_view piece) {
            return font
                ->CalcTextSizeA(font->FontSize, FLT_MAX, 0.0F, piece.data(),
                                piece.data() + piece.size())
                .x;
        });
    }
};

/// What the library asks while a field of several lines is typed in.
int keep_wrapped(ImGuiInputTextCallbackData* data)
{
    if (data->EventFlag == ImGuiInputTextFlags_CallbackCharFilter) {
        return data->EventChar == '\n' ? 1 : 0; // nothing that is written here has paragraphs
    }
    const std::string before(data->Buf, static_cast<std::size_t>(data->BufTextLen));
    const std::span text(data->Buf, static_cast<std::size_t>(data->BufTextLen));
    static_cast<const Lines*>(data->UserData)->wrap(text);
    data->BufDirty = before != std::string_view(text.data(), text.size());
    return 0;
}

bool edit_lines(const Lines& lines, ImVec2 size, ImGuiInputTextFlags flags, std::string& text)
{
    std::string shown = text;
    lines.wrap(shown);
    constexpr ImGuiInputTextFlags calls =
        ImGuiInputTextFlags_CallbackAlways | ImGuiInputTextFlags_CallbackCharFilter;
    Lines asked = lines;
    const bool has_changed =
        ImGui::InputTextMultiline("##text", &shown, size, flags | calls, keep_wrapped, &asked);
    if (has_changed) {
        std::ranges::replace(shown, '\n', ' ');
        text = std::move(shown);
    }
    return has_changed;
}

Lines lines_of(const Interface::State& state, float width)
{
    return {state.typefaces.font(Type::body), width - state.look.whole(20.0F)};
}

/// How high a field is; one of several lines has room for one more.
float height_of(const Interface::State& state, const TextField& spec, const std::string& text)
{
    if (spec.lines <= 1) {
        return state.look.px(34.0F);
    }
    const Lines lines = lines_of(state, std::floor(ImGui::GetContentRegionAvail().x));
    std::string shown = text;
    lines.wrap(shown);
    const auto count = static_cast<int>(std::ranges::count(shown, '\n')) + 2;
    return std::ceil(static_cast<float>(std::max(count, spec.lines)) * lines.font->FontSize) +
           state.look.whole(16.0F);
}

/// The keys that the field itself undoes by undo nothing else.
void take_undo_keys(Interface::State& state)
{
    for (KeyPress& press : state.platform.keys()) {
        const bool is_undo = press.key.code == sf::Keyboard::Z || press.key.code == sf::Keyboard::Y;
        press.is_taken = press.is_taken || (press.key.control && is_undo);
    }
}

/// The library's own field, without any decoration. Returns whether the text changed.
bool edit(Interface::State& state, const sf::FloatRect& box, const TextField& spec,
          std::string& text)
{
    ImFont* font = state.typefaces.font(Type::body);
    const float side = state.look.whole(spec.is_search ? 30.0F : 10.0F);
    const float above =
        spec.lines > 1 ? state.look.whole(8.0F) : std::floor((box.height - font->FontSize) / 2.0F);
    const ImGuiInputTextFlags flags = (spec.is_enabled ? 0 : ImGuiInputTextFlags_ReadOnly) |
                                      (spec.has_undo ? 0 : ImGuiInputTextFlags_NoUndoRedo);
    const std::string before = text;
    ImGui::PushFont(font);
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {side, above});
    ImGui::SetCursorScreenPos({box.left, box.top});
    const bool has_clear = spec.is_search && !text.empty();
    ImGui::SetNextItemWidth(box.width - (has_clear ? box.height : 0.0F));
    const ImGuiID id = ImGui::GetID("##text");
    follow_focus(state, id);
    bool has_changed =
        spec.lines > 1
            ? edit_lines(lines_of(state, box.width), {box.width, box.height}, flags, text)
            : ImGui::InputTextWithHint("##text", std::string(spec.hint).c_str(), &text, flags);
    ImGui::PopStyleVar();
    ImGui::PopFont();
    if (has_changed && ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Escape))) {
        text = before; // the library would put back what stood there when the typing began
        has_changed = false;
    }
    if (spec.has_undo && ImGui::IsItemActive()) {
        take_undo_keys(state);
    }
    if (spec.is_enabled) {
        state.tab_order.add(id, state.panel_id, state.layer);
    }
    if (ImGui::IsItemActivated()) {
        if (!state.tab_order.has(id)) {
            state.tab_order.point_at(id);
        }
        state.has_pressed_widget = true;
    }
    state.is_text_active = state.is_text_active || ImGui::IsItemActive();
    state.has_pressed_widget = state.has_pressed_widget || ImGui::IsItemHovered();
    if (state.tab_order.has(id) && state.tab_order.has_moved()) {
        ImGui::ScrollToItem(ImGuiScrollFlags_KeepVisibleCenterY);
    }
    state.last_widget = id;
    return has_changed;
}

} // namespace

bool text_field(Interface& ui, const TextField& spec, std::string& text)
{
    Interface::State& state = ui.state();
    const Look& look = state.look;
    const Theme& theme = look.theme;
    const Ink ink(state);
    const float head = spec.is_search ? 0.0F : look.whole(24.0F);
    const float height = height_of(state, spec, text);
    const sf::FloatRect whole = place(state, head + height);
    const sf::FloatRect box{whole.left, whole.top + head, whole.width, whole.height - head};
    if (!spec.is_search) {
        ink.write(spec.name, {whole.left, whole.top, whole.width, look.whole(22.0F)}, Type::body,
                  theme.ink);
    }
    ink.block(box, theme.ground);
    if (spec.lines > 1 && text.empty()) { // the library writes hints in fields of one line only
        const float side = look.whole(10.0F);
        ink.write_wrapped(
            spec.hint,
            {box.left + side, box.top + look.whole(8.0F), box.width - 2.0F * side, box.height},
            Type::body, theme.ink_soft);
    }
    ImGui::PushID(spec.name.data(), spec.name.data() + spec.name.size());
    bool has_changed = edit(state, box, spec, text);
    const TabOrder::Id id = state.last_widget;
    const bool is_focused = state.tab_order.has(id);
    ink.frame(box, is_focused ? theme.accent : theme.ink, look.whole(is_focused ? 2.0F : 1.0F));
    if (spec.is_search) {
        draw_lens(ink, look, box);
    }
    list_part(state, {.name = std::string(spec.name),
                      .role = "text field",
                      .value = text,
                      .box = {box.left, box.top, box.width, box.height},
                      .is_enabled = spec.is_enabled,
                      .is_focused = is_focused});
    if (spec.is_search && !text.empty() && clear_button(state, ink, box, spec.name)) {
        text.clear();
        has_changed = true;
        state.tab_order.point_at(id);
    }
    ImGui::PopID();
    if (is_focused && state.tab_order.shows_ring()) {
        ink.ring(box);
    }
    ImGui::SetCursorScreenPos({whole.left, whole.top});
    ImGui::Dummy({whole.width, whole.height});
    state.last_widget = id;
    state.last_box = box;
    return has_changed;
}

} // namespace scenes
