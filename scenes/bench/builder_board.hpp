#pragma once

#include "scenes/bench/builder_view.hpp"

namespace scenes {

/// The builder of work orders in the bench's window: pages to put an order down on, and beside
/// them, where there is room, what the student gets of it.
class BuilderBoard {
public:
    BuilderBoard(const Fonts& fonts, BenchDesk& bench, shop::Workshops& workshops);

    /// Keeps drafts in a folder from now on, and has the one that lies there; without this nothing
    /// is kept.
    void keep_drafts_in(std::string folder) { keeper_ = DraftKeeper(std::move(folder)); }
    /// Shows the draft as it was left, or an empty one.
    void open();
    /// Whether the window may close: the draft is saved, kept, or given up. If not, it asks.
    bool lets_go();
    /// Makes the widgets of a frame and takes the keys that no widget used.
    ///
    /// unit:    seconds since the last frame
    void show(sf::Vector2f window, float seconds);
    void draw(sf::RenderTarget& target);

    [[nodiscard]] OrderBuilding& building() { return building_; }
    [[nodiscard]] BuilderView& view() { return view_; }

private:
    void begin();
    void keep();
    void lay_out(sf::Vector2f window);
    void show_page(BuilderTable& table);
    void show_head(BuilderTable& table);
    void take_keys();
    void undo();
    void redo();
    [[nodiscard]] std::string status() const;

    BenchDesk& bench_;
    shop::Workshops& workshops_;
    OrderBuilding building_;
    DraftKeeper keeper_;
    bool is_given_up_ = false; ///< the draft, by somebody who wants to close the window
    BuilderView view_;
    bool has_card_ = false; ///< there is room for it
    sf::FloatRect page_;
    sf::FloatRect card_;
    sf::FloatRect status_box_;
    Text status_;
    float quiet_ = 0.0F; ///< seconds since the last change
};

} // namespace scenes
