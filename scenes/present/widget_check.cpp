#include "scenes/present/widget_check.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace scenes {
namespace {

/// Widgets that hold no others: no two of them may share a place.
constexpr std::array<std::string_view, 11> leaves{"button",     "switch",   "slider", "option",
                                                  "text field", "heading",  "text",   "reading",
                                                  "row",        "progress", "dialog"};

bool is_leaf(const Widget& widget)
{
    return std::ranges::find(leaves, widget.role) != leaves.end();
}

/// Whether two boxes share more than a pixel of edge.
bool overlap(const WidgetBox& a, const WidgetBox& b)
{
    constexpr float edge = 1.0F;
    return a.left + a.width > b.left + edge && b.left + b.width > a.left + edge &&
           a.top + a.height > b.top + edge && b.top + b.height > a.top + edge;
}

/// A text field holds the button that clears it.
bool is_inside(const Widget& inner, const Widget& outer)
{
    return outer.role == "text field" && inner.role == "button" &&
           inner.box.left >= outer.box.left &&
           inner.box.left + inner.box.width <= outer.box.left + outer.box.width + 1.0F;
}

std::string called(const Widget& widget)
{
    return widget.role + " \"" + widget.name + "\" of \"" + widget.panel + "\"";
}

} // namespace

std::vector<std::string> widget_troubles(const std::vector<Widget>& widgets, float width,
                                         float height)
{
    std::vector<std::string> troubles;
    for (std::size_t i = 0; i < widgets.size(); ++i) {
        const Widget& widget = widgets[i];
        if (!widget.is_visible) {
            continue;
        }
        if (!widget.fits) {
            troubles.push_back(called(widget) + " is cut off");
        }
        const WidgetBox& box = widget.box;
        const bool is_in_window = box.left > -1.0F && box.left + box.width < width + 1.0F &&
                                  box.top < height && box.top + box.height > 0.0F;
        if (!is_in_window) {
            troubles.push_back(called(widget) + " reaches beyond the window");
        }
        for (std::size_t k = 0; is_leaf(widget) && k < i; ++k) {
            const Widget& other = widgets[k];
            const bool may_touch = other.panel == widget.panel && is_leaf(other) &&
                                   other.is_visible && !is_inside(widget, other) &&
                                   !is_inside(other, widget);
            if (may_touch && overlap(box, other.box)) {
                troubles.push_back(called(widget) + " lies on " + called(other));
            }
        }
    }
    return troubles;
}

} // namespace scenes
