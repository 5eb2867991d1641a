#pragma once

// The inside of the interface, for the files of this folder only: it names the widget library.

#include "scenes/ui/interface.hpp"
#include "scenes/ui/panel_cache.hpp"
#include "scenes/ui/platform.hpp"
#include "scenes/ui/tab_order.hpp"
#include "scenes/ui/typefaces.hpp"

#include <SFML/Graphics/Rect.hpp>

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace scenes {

/// A row of widgets side by side.
struct RowLayout {
    sf::FloatRect box; ///< its height grows with the widgets
    std::vector<float> shares;
    std::size_t next = 0;
    float spent = 0.0F; ///< shares already placed
};

struct Interface::State {
    State(sf::RenderWindow& target, FontFiles font_files, const Look& first_look);

    sf::RenderWindow& window;
    FontFiles files;
    Look look;
    std::optional<Look> next_look;
    Platform platform;
    Typefaces typefaces;
    TabOrder tab_order;
    PanelCache cache;
    WidgetList widgets;
    int redrawn_panels = 0;

    // What the widgets being drawn right now belong to.
    std::string panel;
    TabOrder::Id panel_id = 0;
    int layer = 0;
    std::optional<RowLayout> row;
    std::vector<TabOrder::Id> opaque_panels; ///< of this frame, for the cache
    std::vector<sf::FloatRect> solid_boxes;  ///< where the pointer belongs to a panel

    bool was_dialog_open = false;
    bool is_text_active = false; ///< a text field takes the letters
    bool has_pressed_widget = false;

    // The tip of the widget the pointer or the focus rests on.
    TabOrder::Id rested_on = 0;
    bool is_pointing = false; ///< the pointer is on a widget; then the focus does not count
    bool was_pointing = false;
    double rested_since = 0.0;
    TabOrder::Id last_widget = 0;
    sf::FloatRect last_box;
    std::string tip;
    sf::FloatRect tip_box;
};

/// Makes what the widget library draws by itself (scroll bars, carets) look like the rest.
void apply_style(const Look& look);

/// How a person touches a widget in this frame.
struct Touch {
    bool is_hovered = false;
    bool is_held = false;    ///< the button went down on it and is still down
    bool is_pressed = false; ///< clicked, or its key was pressed
    bool is_focused = false;
    bool shows_ring = false;
    bool is_enabled = true;
};

/// What a widget tells about itself before it is drawn.
struct Wish {
    std::string_view name;
    std::string_view role;
    std::string value;
    sf::FloatRect box;
    bool is_enabled = true;
    bool fits = true;
    bool takes_enter = true; ///< space and enter press it
};

/// The next free place in the panel or row, as wide as it gets.
///
/// unit: pixels
sf::FloatRect place(Interface::State& state, float height);

/// Makes a box usable by pointer and keyboard, and lists it.
Touch touch(Interface::State& state, const Wish& wish);

/// Takes up room and lists something that is only read.
void show(Interface::State& state, const Wish& wish);

/// Lists what is drawn right now, its box cut down to what of it is in sight.
void list_part(Interface::State& state, Widget widget);

/// Whether the focused widget gets a key; it counts as used then.
bool take_own_key(Interface::State& state, sf::Keyboard::Key key);

} // namespace scenes
