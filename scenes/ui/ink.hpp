#pragma once

// How widgets are drawn: flat shapes, ink lines, chamfered corners. For the files of this folder.

#include "scenes/ui/state.hpp"

#include <imgui.h>

#include <string_view>

namespace scenes {

inline ImU32 to_imgui(Rgba colour)
{
    return IM_COL32(colour.red, colour.green, colour.blue, colour.alpha);
}

inline ImVec4 to_imgui_vector(Rgba colour)
{
    return ImGui::ColorConvertU32ToFloat4(to_imgui(colour));
}

/// Draws into the panel that is open.
class Ink {
public:
    explicit Ink(const Interface::State& state) : Ink(state, *ImGui::GetWindowDrawList()) {}
    Ink(const Interface::State& state, ImDrawList& list) : state_(&state), list_(&list) {}

    void block(const sf::FloatRect& box, Rgba colour) const;
    void line(float x1, float y1, float x2, float y2, Rgba colour, float width) const;
    void frame(const sf::FloatRect& box, Rgba colour, float width) const;
    /// A box with two opposite corners cut off: whatever can be pressed.
    void plate(const sf::FloatRect& box, float cut, Rgba fill, Rgba outline, float width) const;
    void triangle(ImVec2 a, ImVec2 b, ImVec2 c, Rgba colour) const;
    void polygon(const ImVec2* points, int count, Rgba colour) const;
    void circle(ImVec2 centre, float radius, Rgba colour, float width) const;
    /// The focus ring: stands off its widget, so that it is seen on any colour.
    void ring(const sf::FloatRect& box) const;

    /// Writes a line into a box, centred in height, cut with an ellipsis if need be. `align` is 0
    /// for left, 0.5 for the middle, 1 for right. Returns whether all of it fitted.
    bool write(std::string_view text, const sf::FloatRect& box, Type type, Rgba colour,
               float align = 0.0F) const;
    [[nodiscard]] float width(std::string_view text, Type type) const;
    /// Height of a text broken into lines of at most a width.
    [[nodiscard]] float wrapped_height(std::string_view text, Type type, float width) const;
    /// Writes lines of at most the box's width, downwards from its top.
    void write_wrapped(std::string_view text, const sf::FloatRect& box, Type type,
                       Rgba colour) const;

private:
    [[nodiscard]] std::size_t fitting_length(std::string_view text, Type type, float width) const;

    /// Calls `use(line, y from the top)` for every line.
    template <class Use>
    float each_line(std::string_view text, Type type, float width, Use use) const;

    const Interface::State* state_;
    ImDrawList* list_;
};

} // namespace scenes
