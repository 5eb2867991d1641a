#include "scenes/ui/interface.hpp"

#include "scenes/ui/ink.hpp"
#include "scenes/ui/state.hpp"

#include <SFML/OpenGL.hpp>

#include <backends/imgui_impl_opengl2.h>
#include <imgui.h>
#include <imgui_internal.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace scenes {
namespace {

/// Seconds that the pointer or the focus rests on a widget before its tip appears.
constexpr double tip_delay = 0.5;

/// Makes what the widget library draws by itself (scroll bars, carets) look like the rest.
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

void move_focus(Interface::State& state)
{
    for (KeyPress& press : state.platform.keys()) {
        const bool is_plain = !press.key.control && !press.key.alt;
        if (press.key.code == sf::Keyboard::Tab && is_plain) {
            press.is_taken = true;
            state.tab_order.move(press.key.shift ? -1 : 1);
        } else if (press.key.code == sf::Keyboard::F6 && is_plain && state.layer == 0) {
            press.is_taken = true;
            state.tab_order.move_to_next_panel();
        }
    }
    if (state.tab_order.has_moved()) {
        ImGui::ClearActiveID(); // a text field left by Tab stops taking letters
    }
}

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

Interface::State::State(sf::RenderWindow& target, FontFiles font_files, const Look& first_look)
    : window(target),
      files(std::move(font_files)),
      look(first_look),
      next_look(first_look),
      platform(target)
{
}

Interface::Interface(sf::RenderWindow& window, const FontFiles& fonts, const Look& look)
{
    IMGUI_CHECKVERSION();
    ImGui::CreateContext();
    ImGui_ImplOpenGL2_Init();
    state_ = std::make_unique<State>(window, fonts, look);
}

Interface::~Interface()
{
    state_->window.setActive(true);
    ImGui_ImplOpenGL2_Shutdown();
    ImGui::DestroyContext();
}

void Interface::set_look(const Look& look)
{
    state_->next_look = look;
}

const Look& Interface::look() const
{
    return state_->look;
}

void Interface::handle(const sf::Event& event)
{
    state_->platform.handle(event);
}

void Interface::begin_frame(float seconds)
{
    State& state = *state_;
    state.window.setActive(true);
    if (state.next_look) {
        const bool is_new_size = state.typefaces.font(Type::body) == nullptr ||
                                 state.next_look->scale != state.look.scale;
        state.look = *std::exchange(state.next_look, std::nullopt);
        apply_style(state.look);
        if (is_new_size) {
            state.typefaces.load(state.files, state.look);
        }
        state.cache.forget();
    }
    state.platform.begin_frame(seconds);
    state.tab_order.begin_frame();
    state.was_dialog_open = state.layer > 0;
    move_focus(state);
    ImGui_ImplOpenGL2_NewFrame();
    ImGui::NewFrame();
    state.widgets.clear();
    state.opaque_panels.clear();
    state.solid_boxes.clear();
    state.layer = 0;
    state.is_text_active = false;
    state.has_pressed_widget = false;
    state.was_pointing = std::exchange(state.is_pointing, false);
    state.tip.clear();
}

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

bool Interface::has_mouse() const
{
    const ImVec2 at = ImGui::GetIO().MousePos;
    const auto& boxes = state_->solid_boxes;
    return has_dialog() || ImGui::IsAnyItemActive() || ImGui::IsAnyItemHovered() ||
           std::any_of(boxes.begin(), boxes.end(),
                       [at](const sf::FloatRect& box) { return box.contains(at.x, at.y); });
}

bool Interface::is_typing() const
{
    return state_->is_text_active;
}

bool Interface::has_dialog() const
{
    return state_->layer > 0 || state_->was_dialog_open;
}

bool Interface::take_key(sf::Keyboard::Key key, Modifiers modifiers)
{
    const bool is_function_key = key >= sf::Keyboard::F1 && key <= sf::Keyboard::F15;
    if ((is_typing() || has_dialog()) && !is_function_key && !modifiers.control) {
        return false;
    }
    for (KeyPress& press : state_->platform.keys()) {
        const Modifiers held{press.key.control, press.key.shift, press.key.alt};
        if (!press.is_taken && press.key.code == key && held == modifiers) {
            press.is_taken = true;
            return true;
        }
    }
    return false;
}

const WidgetList& Interface::widgets() const
{
    return state_->widgets;
}

int Interface::redrawn_panels() const
{
    return state_->redrawn_panels;
}

} // namespace scenes
