#include "scenes/ui/platform.hpp"

#include <SFML/System/String.hpp>
#include <SFML/Window/Clipboard.hpp>
#include <SFML/Window/Mouse.hpp>

#include <imgui.h>

#include <algorithm>
#include <array>
#include <cfloat>
#include <string>
#include <string_view>
#include <utility>

// Dear ImGui 1.86 looks at the state of keys and buttons once a frame. A press and its release
// within one frame, as slow frames and test drivers make them, would vanish. So events wait in a
// queue, and a frame takes them only up to the first that would undo or overtake a change it has
// already seen. The Tab key is never passed on: 1.86 visits text fields only, tab_order.hpp all.

namespace scenes {
namespace {

constexpr std::array key_map{std::pair{ImGuiKey_LeftArrow, sf::Keyboard::Left},
                             std::pair{ImGuiKey_RightArrow, sf::Keyboard::Right},
                             std::pair{ImGuiKey_UpArrow, sf::Keyboard::Up},
                             std::pair{ImGuiKey_DownArrow, sf::Keyboard::Down},
                             std::pair{ImGuiKey_Home, sf::Keyboard::Home},
                             std::pair{ImGuiKey_End, sf::Keyboard::End},
                             std::pair{ImGuiKey_Insert, sf::Keyboard::Insert},
                             std::pair{ImGuiKey_Delete, sf::Keyboard::Delete},
                             std::pair{ImGuiKey_Backspace, sf::Keyboard::BackSpace},
                             std::pair{ImGuiKey_Enter, sf::Keyboard::Enter},
                             std::pair{ImGuiKey_Escape, sf::Keyboard::Escape},
                             std::pair{ImGuiKey_A, sf::Keyboard::A},
                             std::pair{ImGuiKey_C, sf::Keyboard::C},
                             std::pair{ImGuiKey_V, sf::Keyboard::V},
                             std::pair{ImGuiKey_X, sf::Keyboard::X},
                             std::pair{ImGuiKey_Y, sf::Keyboard::Y},
                             std::pair{ImGuiKey_Z, sf::Keyboard::Z}};

/// Text from the clipboard, kept until it is asked for again, as the widget library wants it.
const char* clipboard_text(void* kept)
{
    std::string& text = *static_cast<std::string*>(kept);
    const auto bytes = sf::Clipboard::getString().toUtf8();
    text.assign(bytes.begin(), bytes.end());
    return text.c_str();
}

void set_clipboard_text(void*, const char* text)
{
    const std::string_view view(text);
    sf::Clipboard::setString(sf::String::fromUtf8(view.begin(), view.end()));
}

/// The system's pointer of a shape. They live as long as the program: X reports an error when a
/// pointer is freed while a window still shows it.
const sf::Cursor* system_pointer(int shape)
{
    struct Pointer {
        sf::Cursor cursor;
        bool is_loaded = false;
    };
    static auto& pointers = *new std::array<Pointer, ImGuiMouseCursor_COUNT>;
    static const bool are_loaded = [] {
        constexpr std::array shapes{
            std::pair{ImGuiMouseCursor_Arrow, sf::Cursor::Arrow},
            std::pair{ImGuiMouseCursor_TextInput, sf::Cursor::Text},
            std::pair{ImGuiMouseCursor_Hand, sf::Cursor::Hand},
            std::pair{ImGuiMouseCursor_ResizeEW, sf::Cursor::SizeHorizontal},
            std::pair{ImGuiMouseCursor_ResizeNS, sf::Cursor::SizeVertical}};
        for (const auto& [ours, theirs] : shapes) {
            Pointer& pointer = pointers[static_cast<std::size_t>(ours)];
            pointer.is_loaded = pointer.cursor.loadFromSystem(theirs);
        }
        return true;
    }();
    if (!are_loaded || shape < 0 || shape >= ImGuiMouseCursor_COUNT) {
        return nullptr;
    }
    const Pointer& pointer = pointers[static_cast<std::size_t>(shape)];
    return pointer.is_loaded ? &pointer.cursor : nullptr;
}

/// When the window loses the keyboard, releases of keys held then never arrive.
void release_everything()
{
    ImGuiIO& io = ImGui::GetIO();
    std::fill(std::begin(io.KeysDown), std::end(io.KeysDown), false);
    std::fill(std::begin(io.MouseDown), std::end(io.MouseDown), false);
    io.KeyCtrl = io.KeyShift = io.KeyAlt = io.KeySuper = false;
    io.AddFocusEvent(false);
}

bool feed_text(sf::Uint32 character)
{
    const bool is_letter = character >= 32 && character != 127;
    if (is_letter) {
        ImGui::GetIO().AddInputCharacter(character);
    }
    return is_letter;
}

void feed_wheel(const sf::Event::MouseWheelScrollEvent& wheel)
{
    ImGuiIO& io = ImGui::GetIO();
    (wheel.wheel == sf::Mouse::VerticalWheel ? io.MouseWheel : io.MouseWheelH) += wheel.delta;
}

} // namespace

Platform::Platform(sf::RenderWindow& window) : window_(&window)
{
    static std::string clipboard;
    ImGuiIO& io = ImGui::GetIO();
    io.BackendPlatformName = "standpipe";
    io.BackendFlags |= ImGuiBackendFlags_HasMouseCursors;
    io.IniFilename = nullptr; // panels stand where the scene puts them
    io.LogFilename = nullptr;
    io.GetClipboardTextFn = clipboard_text;
    io.SetClipboardTextFn = set_clipboard_text;
    io.ClipboardUserData = &clipboard;
    for (const auto& [theirs, ours] : key_map) {
        io.KeyMap[theirs] = ours;
    }
}

bool Platform::feed_button(const sf::Event& event, Fed& fed)
{
    ImGuiIO& io = ImGui::GetIO();
    if (event.mouseButton.button >= 5) {
        return true;
    }
    if (std::exchange(fed.has_button, true)) {
        return false;
    }
    io.MousePos = {static_cast<float>(event.mouseButton.x),
                   static_cast<float>(event.mouseButton.y)};
    io.MouseDown[event.mouseButton.button] = event.type == sf::Event::MouseButtonPressed;
    return true;
}

bool Platform::feed_key(const sf::Event& event, Fed& fed)
{
    ImGuiIO& io = ImGui::GetIO();
    const bool is_down = event.type == sf::Event::KeyPressed;
    const int code = event.key.code;
    if (code >= 0 && io.KeysDown[code] != is_down) {
        const bool has_changed =
            std::find(fed.keys.begin(), fed.keys.end(), code) != fed.keys.end();
        // Letters already typed must not be overtaken by a key that ends the typing.
        if (fed.has_text || has_changed) {
            return false;
        }
        fed.keys.push_back(code);
        io.KeysDown[code] = is_down;
    }
    if (is_down) {
        keys_.push_back({event.key, false});
    }
    io.KeyCtrl = event.key.control;
    io.KeyShift = event.key.shift;
    io.KeyAlt = event.key.alt;
    io.KeySuper = event.key.system;
    return true;
}

bool Platform::feed_move(const sf::Event& event, const Fed& fed)
{
    if (fed.has_button) {
        return false;
    }
    ImGui::GetIO().MousePos = {static_cast<float>(event.mouseMove.x),
                               static_cast<float>(event.mouseMove.y)};
    return true;
}

bool Platform::feed(const sf::Event& event, Fed& fed)
{
    using Type = sf::Event::EventType;
    switch (static_cast<int>(event.type)) { // an int: most kinds of event mean nothing here
    case Type::MouseMoved:
        return feed_move(event, fed);
    case Type::MouseButtonPressed:
    case Type::MouseButtonReleased:
        return feed_button(event, fed);
    case Type::KeyPressed:
    case Type::KeyReleased:
        return feed_key(event, fed);
    case Type::TextEntered:
        fed.has_text = feed_text(event.text.unicode) || fed.has_text;
        break;
    case Type::MouseWheelScrolled:
        feed_wheel(event.mouseWheelScroll);
        break;
    case Type::LostFocus:
        release_everything();
        break;
    case Type::GainedFocus:
        ImGui::GetIO().AddFocusEvent(true);
        break;
    case Type::MouseLeft:
        ImGui::GetIO().MousePos = {-FLT_MAX, -FLT_MAX};
        break;
    }
    return true;
}

void Platform::show_pointer()
{
    const int shape = ImGui::GetMouseCursor();
    if (shape == shown_pointer_) {
        return;
    }
    shown_pointer_ = shape;
    if (const sf::Cursor* pointer = system_pointer(shape)) {
        window_->setMouseCursor(*pointer);
    }
}

void Platform::begin_frame(float seconds)
{
    ImGuiIO& io = ImGui::GetIO();
    const sf::Vector2u size = window_->getSize();
    io.DisplaySize = {static_cast<float>(size.x), static_cast<float>(size.y)};
    io.DeltaTime = seconds > 0.0F ? seconds : 1.0F / 60.0F;
    keys_.clear();
    Fed fed;
    while (!waiting_.empty() && feed(waiting_.front(), fed)) {
        waiting_.pop_front();
    }
    show_pointer();
}

} // namespace scenes
