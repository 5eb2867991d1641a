#pragma once

#include "scenes/ui/interface.hpp"

#include <SFML/System/Vector2.hpp>

#include <optional>
#include <span>
#include <string>
#include <string_view>

// The widgets of a panel. A name is what stands beside the widget, what tests find it by, and must
// be the only one of its kind in its panel. All text is UTF-8.

namespace scenes {

/// Writes a bold line above a group of widgets.
void heading(Interface& ui, std::string_view text);

enum class Tone { plain, soft, warning };
/// Writes text, broken into as many lines as it needs.
void paragraph(Interface& ui, std::string_view text, Tone tone = Tone::plain);

/// Writes a name at the left and a value, in figures of equal width, at the right.
void reading(Interface& ui, std::string_view name, std::string_view value, Tone tone = Tone::plain);

/// Draws a thin line across, or leaves room.
void rule(Interface& ui);
void gap(Interface& ui, float pixels_at_scale_one);

/// Shows how much of some work is done.
///
/// unit: share from 0 to 1
void progress(Interface& ui, std::string_view name, double share);

struct Button {
    std::string_view name;
    bool is_primary = false; ///< filled with the accent; at most one per panel
    bool is_down = false;    ///< drawn pressed, for buttons that hold a mode
    bool is_enabled = true;
    std::string_view id = {}; ///< when several buttons say the same
};
/// Draws a push button and returns whether it was pressed.
bool button(Interface& ui, const Button& spec);

/// Whether the last widget is held down by the pointer right now.
bool is_held(const Interface& ui);

struct Switch {
    std::string_view name;
    std::string_view on_text; ///< how its states are called
    std::string_view off_text;
    bool is_enabled = true;
};
/// Draws an on-off switch and returns whether it was thrown.
bool toggle(Interface& ui, const Switch& spec, bool& is_on);

struct Slider {
    std::string_view name;
    double low = 0.0;
    double high = 1.0;
    double step = 0.01; ///< of an arrow key; page keys move ten
    int decimals = 0;
    double shown_per_unit = 1.0; ///< 100 shows a share as percent
    std::string_view unit = {};
    std::string_view value_text = {}; ///< instead of the number
    std::optional<double> rest = {};  ///< value that Delete or a double click goes back to
    bool is_enabled = true;
    bool snaps = true; ///< the pointer too moves in steps
};
/// Draws a slider on a ruled scale and returns whether the value changed.
bool slider(Interface& ui, const Slider& spec, double& value);

struct Choice {
    std::string_view name; ///< written above; empty for none, then `id` names it
    std::span<const std::string_view> options;
    std::string_view id = {};
    bool is_enabled = true;
};
/// Draws options side by side, one of them chosen, and returns whether another was chosen.
bool choice(Interface& ui, const Choice& spec, std::size_t& chosen);

struct TextField {
    std::string_view name;      ///< written above
    std::string_view hint = {}; ///< written inside while it is empty
    bool is_search = false;     ///< with a lens and a way to clear it; the name is not written
    bool is_enabled = true;
    int lines =
        1; ///< more: at least so many, and as many as the text needs; it has no ends of lines
    bool has_undo = true; ///< of its own; else the keys for it are left to the scene
};
/// Draws a text field and returns whether the text changed. Escape leaves it as it is by then.
bool text_field(Interface& ui, const TextField& spec, std::string& text);

/// Gives the last widget a tip, shown when the pointer or the focus rests on it.
void tip(Interface& ui, std::string_view text);

} // namespace scenes
