#pragma once

namespace scenes {

/// A hand on the cord's handle: how far and how fast decides whether it is a pull.
///
/// A pull must bring out the most of the cord, and fast: what turns an engine over slowly does not
/// start it. Both limits are chosen for the feel.
class CordPull {
public:
    /// unit:    metres of cord
    explicit CordPull(double length) : length_(length) {}

    enum class Outcome { going_on, pulled, too_short, too_slow };

    void take_hold();
    /// The hand has come so far; gives `pulled` once, when it becomes a pull.
    ///
    /// unit:    metres of cord that are out, seconds since the last move
    Outcome move(double out, double seconds);
    /// Tells what became of a hold that was no pull, `going_on` when there is nothing to say.
    Outcome let_go();

    /// Metres of cord in the hand.
    [[nodiscard]] double out() const { return out_; }
    [[nodiscard]] bool is_held() const { return is_held_; }

private:
    double length_;
    double out_ = 0.0;
    double moving_ = 0.0; ///< s since the hand set out
    bool is_held_ = false;
    bool has_pulled_ = false;
};

/// How far a tap is open whose handle points from its hub to a place: down is open, right is shut.
///
/// sign:    x to the right, y upwards
/// unit:    0 shut to 1 open
double tap_open_at(double x, double y);

/// The tilt after a dial was turned from one place to another about its middle.
///
/// sign:    clockwise tips forward
/// unit:    degrees, whole ones, within low and high
double turned_tilt(double from_tilt, double from_x, double from_y, double to_x, double to_y,
                   double low, double high);

} // namespace scenes
