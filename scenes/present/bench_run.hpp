#pragma once

#include "scenes/present/fuel_path.hpp"
#include "scenes/present/history.hpp"

#include <optional>

namespace scenes {

/// A machine, its healthy twin, and what both have shown so far.
///
/// The twin is given every command but the faults. Up to the first fault it is one with the
/// machine, and costs nothing.
class BenchRun {
public:
    BenchRun(const std::shared_ptr<const sim::Rig>& rig, const sim::Weather& weather,
             const std::optional<sim::Tolerance>& tolerance);

    /// throws:  RequestError with the reason when it cannot be done
    void post(const sim::Command& command, sim::Tick at);

    /// Goes on towards a tick, at most to where the history takes its next samples.
    ///
    /// throws:  NumericsError when the machine's equations cannot be carried on; the twin is left
    ///          behind when its own cannot
    void advance_some(sim::Tick to);
    /// Takes the readings now.
    void look();

    [[nodiscard]] sim::Simulator& machine() { return machine_; }
    [[nodiscard]] const sim::Simulator& machine() const { return machine_; }
    [[nodiscard]] const std::vector<double>& values() const { return values_; }
    [[nodiscard]] const History& history() const { return history_; }
    [[nodiscard]] const History& twin_history() const { return twin_history_; }
    /// Heads as a gauge shows them, which follows no single pulse.
    [[nodiscard]] FuelHeads heads() const;
    [[nodiscard]] FuelHeads twin_heads() const;
    /// How many tap points the fuel's path has.
    [[nodiscard]] std::size_t gauge_count() const { return heads().gauges.size(); }
    /// False after the twin's equations could not be carried on.
    [[nodiscard]] bool has_twin() const { return has_twin_; }

private:
    void read_values();
    void settle_gauges(double share);

    sim::Simulator machine_;
    std::optional<sim::Simulator> twin_; ///< from the first fault on
    std::unique_ptr<const FuelPath> path_;
    History history_;
    History twin_history_;
    std::vector<double> values_;
    std::vector<double> twin_values_;
    std::vector<double> gauges_; ///< the readings as slow gauges show them
    std::vector<double> twin_gauges_;
    sim::Tick gauged_ = 0; ///< when the gauges last followed
    sim::Tick next_sample_ = 0;
    bool has_twin_ = true;
};

} // namespace scenes
