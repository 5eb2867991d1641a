#pragma once

#include "scenes/ui/interface.hpp"

#include <SFML/Graphics/Rect.hpp>

#include <initializer_list>
#include <string_view>

namespace scenes {

/// Where a panel stands and what its head says.
struct PanelSpec {
    std::string_view name; ///< unique among the panels of a frame; written in the head
    sf::FloatRect box;
    std::string_view note; ///< at the right of the head
    bool has_head = true;
};

/// A framed sheet with a head, open for widgets while the object lives. Scrolls when they need it.
class Panel {
public:
    Panel(Interface& ui, const PanelSpec& spec);
    ~Panel();
    Panel(const Panel&) = delete;
    Panel& operator=(const Panel&) = delete;

private:
    Interface::State& state_;
};

/// An unseen panel over a part of the drawing, for handles (handle.hpp): things in the drawing that
/// can be pressed, dragged and reached by Tab. Elsewhere the pointer goes through to the scene.
class Overlay {
public:
    Overlay(Interface& ui, std::string_view name, const sf::FloatRect& box);
    ~Overlay();
    Overlay(const Overlay&) = delete;
    Overlay& operator=(const Overlay&) = delete;

private:
    Interface::State& state_;
};

/// Puts the widgets made while it lives side by side, by shares of the width.
class Row {
public:
    Row(Interface& ui, std::initializer_list<float> shares);
    ~Row();
    Row(const Row&) = delete;
    Row& operator=(const Row&) = delete;

private:
    Interface::State& state_;
};

/// A part of a panel with a scroll bar of its own.
class ScrollArea {
public:
    /// unit: height in pixels; 0 takes what is left of the panel
    ScrollArea(Interface& ui, std::string_view name, float height = 0.0F);
    ~ScrollArea();
    ScrollArea(const ScrollArea&) = delete;
    ScrollArea& operator=(const ScrollArea&) = delete;

private:
    Interface::State& state_;
};

/// Height that is left in the panel or part that is open.
///
/// unit:    pixels
[[nodiscard]] float room_left(const Interface& ui);

/// Scrolls the part that is open to what was made last in it.
void show_end(Interface& ui);

} // namespace scenes
