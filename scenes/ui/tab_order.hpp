#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace scenes {

/// Which widget the keyboard acts on, and the order the Tab key visits them in.
///
/// Every widget that can be used announces itself each frame as it is drawn, so the order is the
/// order of drawing. Widgets of a dialog lie in a higher layer: while one is open, focus stays in
/// it, and afterwards returns to where it was.
class TabOrder {
public:
    using Id = std::uint32_t; ///< 0 means none

    /// Closes the last frame's order and opens a new one.
    void begin_frame();
    void add(Id widget, Id panel, int layer);

    /// Moves focus along last frame's order, round and round.
    ///
    /// sign: +1 forwards, -1 backwards
    void move(int step);
    /// Moves focus to the first widget of the next panel.
    void move_to_next_panel();
    /// Gives focus to a widget, as a click does; no ring is shown until a key is used.
    void point_at(Id widget);
    void drop() { focus_ = 0; }

    [[nodiscard]] Id focus() const { return focus_; }
    [[nodiscard]] bool has(Id widget) const { return widget != 0 && widget == focus_; }
    /// Whether focus got here by a key, and so must be seen.
    [[nodiscard]] bool shows_ring() const { return shows_ring_; }
    /// Whether focus moved since the last frame: its widget should come into view.
    [[nodiscard]] bool has_moved() const { return has_moved_; }

private:
    struct Stop {
        Id widget;
        Id panel;
        int layer;
    };

    [[nodiscard]] std::size_t index_of(Id widget) const;
    void go_to(Id widget);
    void follow_layers(int layer);

    std::vector<Stop> stops_;  ///< last frame's, top layer only
    std::vector<Stop> coming_; ///< this frame's
    std::vector<Id> left_;     ///< what had focus below each open dialog
    Id focus_ = 0;
    std::size_t last_index_ = 0;
    bool shows_ring_ = false;
    bool has_moved_ = false;
};

} // namespace scenes
