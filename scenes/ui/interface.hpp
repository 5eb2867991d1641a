#pragma once

#include "scenes/ui/widget_list.hpp"
#include "scenes/view/fonts.hpp"
#include "scenes/view/theme.hpp"

#include <SFML/Graphics/RenderWindow.hpp>
#include <SFML/Window/Event.hpp>
#include <SFML/Window/Keyboard.hpp>

#include <memory>

namespace scenes {

/// Keys held together with another.
struct Modifiers {
    bool control = false;
    bool shift = false;
    bool alt = false;
    constexpr bool operator==(const Modifiers&) const = default;
};

/// The panels, buttons, lists and dialogs of one window.
///
/// Widgets are functions called anew every frame (panel.hpp, controls.hpp, list.hpp, dialog.hpp).
/// A frame runs: `handle` each event, `begin_frame`, panels with widgets, shortcuts by `take_key`,
/// the scene's own drawing into the window, `draw`. Only one interface can exist at a time.
class Interface {
public:
    Interface(sf::RenderWindow& window, const FontFiles& fonts, const Look& look);
    ~Interface();
    Interface(const Interface&) = delete;
    Interface& operator=(const Interface&) = delete;

    /// Changes theme or size from the next frame on; a new size loads the fonts anew (about 15 ms).
    void set_look(const Look& look);
    [[nodiscard]] const Look& look() const;

    void handle(const sf::Event& event);

    /// unit: seconds since the last frame
    void begin_frame(float seconds);

    /// Ends the frame and draws it over what is in the window.
    void draw();

    /// Whether the pointer is over a panel or drags one of its widgets: the scene leaves it alone.
    [[nodiscard]] bool has_mouse() const;
    /// Whether letters go into a text field.
    [[nodiscard]] bool is_typing() const;
    [[nodiscard]] bool has_dialog() const;
    /// Whether a widget has the keyboard's focus, and taking it away, so that keys mean the bench.
    [[nodiscard]] bool has_focus() const;
    void drop_focus();

    /// Whether a key was pressed that no widget used; it counts as used from then on. While a text
    /// field or a dialog takes the keyboard, only function keys and keys with Ctrl come through.
    bool take_key(sf::Keyboard::Key key, Modifiers modifiers = {});

    /// The widgets of the frame, complete once `draw` was called.
    [[nodiscard]] const WidgetList& widgets() const;

    /// How many panels were drawn anew in the last frame; the others came from the cache.
    [[nodiscard]] int redrawn_panels() const;

    struct State;
    /// For the files of this folder only.
    [[nodiscard]] State& state() { return *state_; }

private:
    std::unique_ptr<State> state_;
};

} // namespace scenes
