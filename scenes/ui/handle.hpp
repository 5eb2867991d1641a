#pragma once

#include "scenes/ui/interface.hpp"

#include <SFML/Graphics/Rect.hpp>
#include <SFML/System/Vector2.hpp>

#include <string_view>

namespace scenes {

/// A place in the drawing that can be pressed, dragged and reached by the keyboard: the cord's
/// handle, the bulb, a part to look at. Lives in an `Overlay`; the scene draws what is seen.
struct HandleSpec {
    std::string_view name;
    std::string_view value = {}; ///< what it says now, for tests and for reading out
    sf::FloatRect box;
    bool is_enabled = true;
    bool takes_arrows = false; ///< arrow keys, Home and End move it
};

struct Handle {
    bool is_hovered = false;
    bool is_focused = false;
    bool is_held = false;           ///< by the pointer
    bool is_pressed = false;        ///< clicked, or Space or Enter pressed
    bool is_double_clicked = false; ///< the first click counted as pressed
    sf::Vector2f drag{};            ///< pixels from where it was taken hold of
    int steps = 0;                  ///< by arrow keys; right and up are positive
    int end = 0;                    ///< -1 for the Home key, 1 for the End key
};

Handle handle(Interface& ui, const HandleSpec& spec);

} // namespace scenes
