#pragma once

#include "scenes/bench/drawing_board.hpp"
#include "scenes/bench/order_view.hpp"

namespace scenes {

/// Work orders in the bench's window: the shelf, or the order in hand with its machine from
/// outside. Nothing of it shows what is wrong with the machine before the work is handed in.
class OrderBoard {
public:
    OrderBoard(const Fonts& fonts, BenchDesk& bench);

    /// Shows the shelf, or the order in hand as it was left.
    void open();
    /// Goes on with what is under way, as long as it has leave.
    void advance(double seconds, const OrderDesk::Leave& has_leave);
    /// The pointer on the drawing: the wheel enlarges, a drag moves.
    void handle(const sf::Event& event);
    /// Makes the widgets of a frame and takes the keys that no widget used.
    void show(sf::Vector2f window);
    void take_keys();
    /// unit: seconds since the last frame
    void draw(sf::RenderTarget& target, float seconds);

    [[nodiscard]] OrderDesk& desk() { return desk_; }
    [[nodiscard]] OrderView& view() { return view_; }
    [[nodiscard]] shop::Workshops& workshops() { return workshops_; }

private:
    [[nodiscard]] OrderTable table() { return {bench_, desk_, view_, workshops_}; }
    void take_machine();
    void take_written();
    /// Whether the message says more than what can be done.
    [[nodiscard]] bool has_message() const;
    [[nodiscard]] std::string message() const;
    void draw_status(sf::RenderTarget& target);

    const Fonts& fonts_;
    BenchDesk& bench_;
    shop::Workshops workshops_;
    OrderDesk desk_;
    OrderView view_;
    std::optional<DrawingBoard> drawing_;
    int drawn_attempt_ = 0;
    std::vector<double> values_; ///< the machine's readings now
    OrderLayout layout_;
    Text status_;
    std::optional<sf::Vector2f> drag_from_;
    bool has_written_ = false; ///< what the record says was taken over into the forms
    double flow_seconds_ = 0.0;
};

} // namespace scenes
