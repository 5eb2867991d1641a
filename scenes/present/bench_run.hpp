#pragma once

#include "scenes/present/fuel_path.hpp"
#include "scenes/present/history.hpp"
#include "scenes/present/run_moments.hpp"
#include "scenes/present/turn_mean.hpp"

#include <optional>

namespace scenes {

/// A machine, its healthy twin, and what both have shown so far.
///
/// The twin is given every command but the faults. Up to the first fault it is one with the
/// machine, and costs nothing. A run can be put back to any time since its beginning and goes on
/// from there as it did before, bit for bit. A copy is an independent run with the same past.
///
/// Where the engine may leap, the readings are taken as means over a turn and seldom; the history
/// runs straight from one to the next.
class BenchRun {
public:
    BenchRun(const std::shared_ptr<const sim::Rig>& rig, const sim::Weather& weather,
             const std::optional<sim::Tolerance>& tolerance);

    /// throws:  RequestError with the reason when it cannot be done
    void post(const sim::Command& command, sim::Tick at);

    /// Goes on towards a tick, at most to where the history takes its next samples; with coarse
    /// samples only where a long time is passed over and readings do not swing.
    ///
    /// throws:  NumericsError when the machine's equations cannot be carried on; the twin is left
    ///          behind when its own cannot
    void advance_some(sim::Tick to, bool is_coarse = false);
    /// Takes the readings now.
    void look();

    /// How far the run has been.
    [[nodiscard]] sim::Tick end() const { return end_; }
    [[nodiscard]] bool is_at_end() const { return machine_.now() == end_; }
    /// Shows the run as it was at a tick, `end()` or before.
    void go_to(sim::Tick at);
    /// Goes back to the last moment kept before a tick, from where `advance_some` leads to it
    /// piece by piece.
    void restart_before(sim::Tick at) { restore(moments_.before(at)); }
    /// Forgets what came after now, commands included.
    void truncate();
    /// Goes back to a moment before a tick, forgets what came after it, and has `commands`, all of
    /// this run in the order of their times, done from there on.
    ///
    /// valid:   at is above 0; commands before it are those that were done
    void rewrite(sim::Tick at, std::span<const sim::TimedCommand> commands);

    [[nodiscard]] sim::Simulator& machine() { return machine_; }
    [[nodiscard]] const sim::Simulator& machine() const { return machine_; }
    [[nodiscard]] const std::vector<double>& values() const { return values_; }
    [[nodiscard]] const std::vector<double>& twin_values() const { return twin_values_; }
    [[nodiscard]] const History& history() const { return history_; }
    [[nodiscard]] const History& twin_history() const { return twin_history_; }
    [[nodiscard]] const RunMoments& moments() const { return moments_; }
    /// The readings as slow gauges show them, which follow no single pulse: what the history's
    /// fine samples hold.
    [[nodiscard]] const std::vector<double>& gauges() const { return gauges_; }
    [[nodiscard]] const std::vector<double>& twin_gauges() const { return twin_gauges_; }
    /// The longest time from look to look about a tick where the history runs straight between
    /// them, in ticks; 0 where every sample was taken.
    [[nodiscard]] sim::Tick looseness(sim::Tick at) const;
    /// Counts the times that something was forgotten.
    [[nodiscard]] int edition() const { return edition_; }
    /// Heads as a gauge shows them, which follows no single pulse.
    [[nodiscard]] FuelHeads heads() const;
    [[nodiscard]] FuelHeads twin_heads() const;
    /// How many tap points the fuel's path has.
    [[nodiscard]] std::size_t gauge_count() const { return heads().gauges.size(); }
    /// False after the twin's equations could not be carried on.
    [[nodiscard]] bool has_twin() const { return has_twin_; }

private:
    [[nodiscard]] sim::Tick next_stop(sim::Tick to, bool is_coarse) const;
    void advance_machines(sim::Tick to);
    void record(bool is_coarse);
    void note_loose(sim::Tick from, sim::Tick to);
    [[nodiscard]] bool may_leap() const { return machine_.may_leap(); }
    /// Goes on with leaps as far as a tick and takes the readings there.
    void leap_to(sim::Tick to);
    /// Takes the readings at every tick of a turn that ends at a tick, and shows gauges their mean.
    void look_through_turn(sim::Tick to, double ticks, double twin_ticks);
    /// Fills the history from the last look to this one.
    void record_between(sim::Tick from, bool is_coarse);
    /// unit:    ticks that a turn takes, nothing where there is none worth speaking of
    [[nodiscard]] std::optional<double> turn_ticks(std::span<const double> values) const;
    void find_speed();
    void keep();
    void restore(const RunMoment& moment);
    void read_values();
    void settle_gauges(double share);

    sim::Simulator machine_;
    std::optional<sim::Simulator> twin_; ///< from the first fault on
    std::shared_ptr<const FuelPath> path_;
    History history_;
    History twin_history_;
    RunMoments moments_;
    std::vector<double> values_;
    std::vector<double> twin_values_;
    std::optional<std::size_t> speed_; ///< reading of an engine that can leap
    std::vector<double> gauges_;       ///< the readings as slow gauges show them
    std::vector<double> twin_gauges_;
    std::vector<double> gauges_before_; ///< at the look before
    std::vector<double> twin_gauges_before_;
    std::vector<double> between_;
    TurnMean mean_;
    TurnMean twin_mean_;
    sim::Tick gauged_ = 0; ///< when the gauges last followed
    sim::Tick end_ = 0;
    struct LooseSpan {
        sim::Tick from = 0;
        sim::Tick to = 0;
        sim::Tick longest = 0; ///< from look to look
    };
    std::vector<LooseSpan> loose_; ///< where the history runs straight from look to look
    sim::Tick unrecorded_ = 0;     ///< the first tick that the history can still take
    std::size_t kept_work_ = 0;    ///< evaluations when the last moment was kept
    int edition_ = 0;
    bool has_failed_ = false; ///< the equations could not be carried on from here
    bool has_twin_ = true;
};

} // namespace scenes
