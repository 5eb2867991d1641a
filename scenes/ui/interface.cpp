#include "scenes/ui/interface.hpp"

#include "scenes/ui/state.hpp"

#include <backends/imgui_impl_opengl2.h>
#include <imgui.h>
#include <imgui_internal.h>

#include <algorithm>
#include <utility>

namespace scenes {
namespace {

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

bool Interface::has_focus() const
{
    return state_->tab_order.focus() != 0;
}

void Interface::drop_focus()
{
    state_->tab_order.drop();
    ImGui::ClearActiveID(); // a text field would go on and keep its own text
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
