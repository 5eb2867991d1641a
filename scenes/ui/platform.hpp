#pragma once

#include <SFML/Graphics/RenderWindow.hpp>
#include <SFML/Window/Cursor.hpp>
#include <SFML/Window/Event.hpp>
#include <SFML/Window/Keyboard.hpp>

#include <deque>
#include <vector>

namespace scenes {

/// A key that went down in this frame, or repeated.
struct KeyPress {
    sf::Event::KeyEvent key;
    bool is_taken = false;
};

/// Feeds an SFML window's events, pointer shapes and clipboard to the widget library.
class Platform {
public:
    explicit Platform(sf::RenderWindow& window);

    void handle(const sf::Event& event) { waiting_.push_back(event); }

    /// Hands over as many waiting events as one frame can tell apart.
    ///
    /// unit: seconds since the last frame
    void begin_frame(float seconds);

    /// The keys pressed in this frame, for our own widgets and for shortcuts.
    [[nodiscard]] std::vector<KeyPress>& keys() { return keys_; }

private:
    /// What this frame has changed already: a second change must wait for the next frame.
    struct Fed {
        std::vector<int> keys;
        bool has_button = false;
        bool has_text = false;
    };

    bool feed(const sf::Event& event, Fed& fed);
    static bool feed_move(const sf::Event& event, const Fed& fed);
    static bool feed_button(const sf::Event& event, Fed& fed);
    bool feed_key(const sf::Event& event, Fed& fed);
    void show_pointer();

    sf::RenderWindow* window_;
    std::deque<sf::Event> waiting_;
    std::vector<KeyPress> keys_;
    int shown_pointer_ = -2;
};

} // namespace scenes
