#include "scenes/present/hand_moves.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace scenes {
namespace {

constexpr double least_share = 0.6; ///< of the cord
constexpr double least_speed = 0.8; ///< m/s, the mean of the pull
constexpr double set_out = 0.03;    ///< m: a hand that takes up slack has not set out

} // namespace

void CordPull::take_hold()
{
    out_ = furthest_ = moving_ = waited_ = 0.0;
    is_held_ = true;
}

double CordPull::move(double out, double seconds)
{
    if (!is_held_) {
        return 0.0;
    }
    out_ = std::clamp(out, 0.0, length_);
    if (out_ < set_out && furthest_ > set_out) {
        furthest_ = out_; // home again
        moving_ = waited_ = 0.0;
    }
    waited_ += seconds;
    const double drawn = std::max(0.0, out_ - furthest_);
    if (drawn > 0.0) {
        moving_ = out_ < set_out ? 0.0 : moving_ + waited_;
        waited_ = 0.0;
        furthest_ = out_;
    }
    return drawn;
}

CordPull::Outcome CordPull::let_go()
{
    const bool was_tried = is_held_ && furthest_ > set_out;
    is_held_ = false;
    out_ = 0.0;
    if (!was_tried) {
        return Outcome::nothing;
    }
    if (furthest_ < least_share * length_) {
        return Outcome::too_short;
    }
    return furthest_ < least_speed * moving_ ? Outcome::too_slow : Outcome::pulled;
}

double tap_open_at(double x, double y)
{
    constexpr double quarter = std::numbers::pi / 2.0;
    double angle = std::atan2(y, x); // 0 right, -quarter down
    if (angle > quarter) {
        angle = -2.0 * quarter; // upper left: beyond open
    }
    return std::clamp(-angle / quarter, 0.0, 1.0);
}

double turned_tilt(double from_tilt, double from_x, double from_y, double to_x, double to_y,
                   double low, double high)
{
    const double turned =
        std::remainder(std::atan2(from_y, from_x) - std::atan2(to_y, to_x), 2.0 * std::numbers::pi);
    return std::clamp(std::round(from_tilt + turned * 180.0 / std::numbers::pi), low, high);
}

} // namespace scenes
