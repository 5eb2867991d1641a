#include "scenes/present/bench_run.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

// How a run is looked at while its engine may leap.

namespace scenes {
namespace {

/// A slower engine is as good as standing, and leaps nowhere.
constexpr double longest_turn = 60.0; // ticks

} // namespace

void BenchRun::find_speed()
{
    for (const sim::Network::Reading& reading : machine_.readings()) {
        constexpr std::string_view crank = "crank_angle";
        if (machine_.can_leap() && reading.name.ends_with(crank)) {
            const std::string part = reading.name.substr(0, reading.name.size() - crank.size());
            speed_ = machine_.reading_index(part + "speed");
        }
    }
}

std::optional<double> BenchRun::turn_ticks(std::span<const double> values) const
{
    const double turns = speed_ ? values[*speed_] / (2.0 * std::numbers::pi) : 0.0; // 1/s
    const double ticks = 1.0 / (std::max(turns, 1e-3) * sim::tick_length);
    return ticks <= longest_turn ? std::optional(ticks) : std::nullopt;
}

void BenchRun::leap_to(sim::Tick to)
{
    std::ranges::copy(gauges_, gauges_before_.begin());
    std::ranges::copy(twin_gauges_, twin_gauges_before_.begin());
    const std::optional<double> turn = turn_ticks(values_);
    const double twin_turn = turn_ticks(twin_values_).value_or(turn.value_or(1.0));
    const auto reach = static_cast<sim::Tick>(std::ceil(std::max(turn.value_or(1.0), twin_turn)));
    if (turn && to - machine_.now() > reach) {
        advance_machines(to - reach);
        look_through_turn(to, *turn, twin_turn);
    } else {
        advance_machines(to);
        look();
    }
}

void BenchRun::look_through_turn(sim::Tick to, double ticks, double twin_ticks)
{
    mean_.begin(values_.size(), ticks);
    twin_mean_.begin(values_.size(), twin_ticks);
    for (sim::Tick at = machine_.now(); at <= to; ++at) {
        advance_machines(at);
        read_values();
        mean_.add(static_cast<std::size_t>(to - at), values_);
        twin_mean_.add(static_cast<std::size_t>(to - at), twin_values_);
    }
    gauged_ = to;
    std::ranges::copy(mean_.mean(), gauges_.begin());
    std::ranges::copy(twin_mean_.mean(), twin_gauges_.begin());
}

void BenchRun::record_between(sim::Tick from, bool is_coarse)
{
    const sim::Tick now = machine_.now();
    const auto put = [&](History& history, sim::Tick at, std::span<const double> before,
                         std::span<const double> after) {
        const double share = static_cast<double>(at - from) / static_cast<double>(now - from);
        for (std::size_t i = 0; i < between_.size(); ++i) {
            between_[i] = share >= 1.0 ? after[i] : before[i] + share * (after[i] - before[i]);
        }
        history.record(at, between_, is_coarse);
    };
    constexpr sim::Tick step = History::fine_ticks;
    for (sim::Tick at = (std::max(from, unrecorded_ - 1) / step + 1) * step; at <= now;
         at += step) {
        put(history_, at, gauges_before_, gauges_);
        if (has_twin_) {
            put(twin_history_, at, twin_gauges_before_, twin_gauges_);
        }
    }
    if (now >= unrecorded_) {
        note_loose(from, now);
    }
    unrecorded_ = std::max(unrecorded_, now + 1);
}

void BenchRun::note_loose(sim::Tick from, sim::Tick to)
{
    if (loose_.empty() || loose_.back().to < from) {
        loose_.push_back({from, to, to - from});
    } else {
        loose_.back().to = to;
        loose_.back().longest = std::max(loose_.back().longest, to - from);
    }
}

sim::Tick BenchRun::looseness(sim::Tick at) const
{
    for (const LooseSpan& span : loose_) {
        if (at > span.from && at <= span.to) {
            return span.longest;
        }
    }
    return 0;
}

} // namespace scenes
