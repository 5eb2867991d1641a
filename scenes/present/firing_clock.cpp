#include "scenes/present/firing_clock.hpp"

#include "scenes/present/chance.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace scenes {
namespace {

constexpr double turn = 2.0 * std::numbers::pi;

double between(double from, double to, double share)
{
    return from + share * (to - from);
}

} // namespace

/// Turns since the last moment: by speed, corrected to the nearest that ends at the crank's angle.
double FiringClock::turned_by(const EngineMoment& moment) const
{
    const double passed = moment.seconds - last_.seconds;
    const double turned = passed * (last_.speed + moment.speed) / 2.0 / turn;
    if (!moment.crank_angle) {
        return turned;
    }
    const double off = std::remainder(turns_ + turned - *moment.crank_angle / turn, 1.0);
    return std::max(0.0, turned - off);
}

void FiringClock::take(const EngineMoment& moment, std::vector<Firing>& firings)
{
    if (!has_last_ || moment.seconds <= last_.seconds) {
        last_ = moment;
        has_last_ = true;
        return;
    }
    const double turned = turned_by(moment);
    turns_ += turned;
    while (turns_ >= turns_per_firing_) {
        turns_ -= turns_per_firing_;
        const double share = std::clamp(1.0 - turns_ / turned, 0.0, 1.0);
        const double burning = between(last_.burning, moment.burning, share);
        Firing firing{.seconds = between(last_.seconds, moment.seconds, share),
                      .load = between(last_.load, moment.load, share),
                      .richness = between(last_.richness, moment.richness, share),
                      .is_misfire = chance(seed_, count_) >= burning,
                      .number = seed_ + count_};
        ++count_;
        firings.push_back(firing);
    }
    last_ = moment;
}

} // namespace scenes
