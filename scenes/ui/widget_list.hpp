#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

// No SFML and no widget library here: tests read and judge these without a window.

namespace scenes {

/// A rectangle of the window in pixels.
struct WidgetBox {
    float left = 0.0F;
    float top = 0.0F;
    float width = 0.0F;
    float height = 0.0F;
};

/// What a person can see or use at one moment: its name, what it is, what it says.
struct Widget {
    std::string name;
    std::string role; ///< button, switch, slider, choice, text field, list, row, reading, ...
    std::string value = {};
    std::string panel = {};
    WidgetBox box{};
    bool is_enabled = true;
    bool is_focused = false;
    bool is_visible = true; ///< false when scrolled out of sight
    bool fits = true;       ///< false when some of its text was cut off
};

/// All widgets of a frame, in the order they were drawn: how tests find a button by its name, and
/// what a voice could read out.
class WidgetList {
public:
    void clear() { widgets_.clear(); }
    void add(Widget widget) { widgets_.push_back(std::move(widget)); }
    [[nodiscard]] const std::vector<Widget>& all() const { return widgets_; }

    /// The first widget with a name, or null. An empty panel means any.
    [[nodiscard]] const Widget* find(std::string_view name, std::string_view panel = {}) const;

    /// Writes the list as JSON in one piece: a reader sees the old file or the new one, whole.
    ///
    /// throws: std::system_error when the file cannot be written
    void save(const std::filesystem::path& file) const;

private:
    std::vector<Widget> widgets_;
};

} // namespace scenes
