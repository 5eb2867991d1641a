#pragma once

namespace scenes {

/// A hand on the cord's handle: how much cord it draws, and what to tell about a pull that is
/// hardly one. Both limits for that are chosen for the feel; what the engine does follows from the
/// cord.
class CordPull {
public:
    /// unit:    metres of cord
    explicit CordPull(double length) : length_(length) {}

    enum class Outcome { nothing, pulled, too_short, too_slow };

    void take_hold();
    /// The hand has come so far; gives how much more cord it has drawn. Going back draws none, the
    /// cord winds itself up; once the handle is home another pull begins.
    ///
    /// unit:    metres of cord that are out, seconds since the last move
    double move(double out, double seconds);
    /// Tells what kind of pull the last one was, `nothing` for a hand that only took hold.
    Outcome let_go();

    /// Metres of cord in the hand.
    [[nodiscard]] double out() const { return out_; }
    [[nodiscard]] bool is_held() const { return is_held_; }

private:
    double length_;
    double out_ = 0.0;
    double furthest_ = 0.0; ///< in this pull
    double moving_ = 0.0;   ///< s from where the hand set out to there
    double waited_ = 0.0;   ///< s since
    bool is_held_ = false;
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
