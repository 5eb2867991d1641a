#include "scenes/present/captions.hpp"

#include "scenes/present/hand_words.hpp"

#include <algorithm>
#include <cmath>

namespace scenes {
namespace {

constexpr double shown_for = 2.5;      ///< s
constexpr double running_speed = 90.0; ///< rad/s: above what a pull gives for long
constexpr double stopped_speed = 30.0;
/// What of the speed a swing must be to be heard as one.
constexpr double swing_share = 0.02;
/// A swing takes a tenth of a second to some seconds; a longer one is a change of load.
constexpr double shortest_swing = 0.05;
constexpr double longest_swing = 3.0;
/// How long firings count, s.
constexpr double memory = 1.0;
constexpr double settling = 2.0; ///< s after a control was moved
constexpr double misfire_share = 0.08;

} // namespace

std::string_view Captions::words() const
{
    switch (now_) {
    case Event::cord_pulled:
        return words::caption_cord;
    case Event::starts:
        return words::caption_starts;
    case Event::stops:
        return words::caption_stops;
    case Event::hunts:
        return words::caption_hunts;
    case Event::misfires:
        return words::caption_misfires;
    case Event::none:
        break;
    }
    return {};
}

void Captions::say(Event event, double seconds)
{
    now_ = event;
    until_ = seconds + shown_for;
}

/// Notes where the speed turns back by more than a share of itself.
void Captions::follow_speed(double seconds, double speed, bool was_touched)
{
    if (was_touched) { // what follows is the person's doing
        swing_count_ = 0;
    }
    const double sign = is_rising_ ? 1.0 : -1.0;
    if (sign * (speed - extreme_) >= 0.0) {
        extreme_ = speed;
        extreme_at_ = seconds;
    } else if (sign * (extreme_ - speed) > swing_share * std::max(speed, running_speed)) {
        std::ranges::rotate(swings_, swings_.begin() + 1);
        swings_.back() = {extreme_at_, extreme_};
        ++swing_count_;
        is_rising_ = !is_rising_;
        extreme_ = speed;
        extreme_at_ = seconds;
    }
}

bool Captions::hunts(double seconds) const
{
    if (swing_count_ < swings_.size() || seconds - swings_.back().seconds > longest_swing) {
        return false;
    }
    for (std::size_t i = 1; i < swings_.size(); ++i) {
        const double length = swings_[i].seconds - swings_[i - 1].seconds;
        if (length < shortest_swing || length > longest_swing) {
            return false;
        }
    }
    return true;
}

void Captions::count(double seconds, std::span<const Firing> firings, bool was_touched)
{
    const double kept = std::exp(-(seconds - seconds_) / memory);
    fired_ *= kept;
    missed_ *= kept;
    if (was_touched) { // an engine that is given more to do stumbles for a moment
        settles_ = seconds + settling;
    }
    if (seconds < settles_) {
        return;
    }
    for (const Firing& firing : firings) {
        (firing.is_misfire ? missed_ : fired_) += 1.0;
    }
}

void Captions::take(double seconds, const EngineMoment& moment, std::span<const Firing> firings,
                    double cord, bool was_touched)
{
    if (!has_begun_ || seconds < seconds_) {
        forget();
        has_begun_ = true;
        is_running_ = moment.speed > running_speed;
        seconds_ = seconds;
        cord_ = cord;
        extreme_ = moment.speed;
        return;
    }
    follow_speed(seconds, moment.speed, was_touched);
    count(seconds, firings, was_touched);
    seconds_ = seconds;
    const bool is_pulled = cord > cord_ + 0.01;
    cord_ = cord;
    if (now_ != Event::none && seconds >= until_) {
        now_ = Event::none;
    }
    const bool runs_alone = cord < 1e-3;
    const bool fires = fired_ >= missed_;
    if (is_pulled) {
        say(Event::cord_pulled, seconds);
    } else if (!is_running_ && moment.speed > running_speed && runs_alone && fires) {
        is_running_ = true;
        say(Event::starts, seconds);
    } else if (is_running_ && moment.speed < stopped_speed) {
        is_running_ = false;
        say(Event::stops, seconds);
    } else if (now_ == Event::cord_pulled || now_ == Event::starts || now_ == Event::stops) {
        return; // what happens once is read to its end; what goes on can wait
    } else if (is_running_ && missed_ > misfire_share * (fired_ + missed_) &&
               fired_ + missed_ > 4.0) {
        say(Event::misfires, seconds);
    } else if (is_running_ && hunts(seconds)) {
        say(Event::hunts, seconds);
    }
}

} // namespace scenes
