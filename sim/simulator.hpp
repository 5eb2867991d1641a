#pragma once

#include "rig.hpp"
#include "trajectory.hpp"

namespace sim {

/// The weather around the machine.
struct Weather {
    AbsolutePressure pressure{101325.0};
    Temperature temperature{293.15};
};

/// Where a machine stands in its run, small enough to be kept by the thousand.
///
/// What was done up to it is no part of it: the machine it was kept from knows that.
class MachineMoment {
public:
    [[nodiscard]] Tick at() const { return now_; }
    /// unit:    bytes of memory, the object's own included
    [[nodiscard]] std::size_t size() const { return sizeof(MachineMoment) + way_.heap_size(); }

private:
    friend class Simulator;
    explicit MachineMoment(Trajectory::Moment way) : way_(std::move(way)) {}

    Trajectory::Moment way_;
    Tick now_ = 0;
    std::size_t done_count_ = 0;
    double fuel_account_ = 0.0;
    double air_account_ = 0.0;
};

/// A machine that runs: the front door of `sim`.
///
/// Load a rig, post commands at ticks, advance, read. Strides are as long as the equations allow
/// and cover many ticks; the state at a tick inside a stride is the stride's own interpolation. A
/// command that lands inside a stride already taken undoes that stride and repeats it up to the
/// command, so what happens depends on the commands alone, never on how often anyone looked. A copy
/// is an independent machine in the same state.
class Simulator {
public:
    /// Without a tolerance, the rig's own.
    explicit Simulator(std::shared_ptr<const Rig> rig, Weather weather = {},
                       std::optional<Tolerance> tolerance = {});

    [[nodiscard]] const Rig& rig() const { return *rig_; }
    [[nodiscard]] Tick now() const { return now_; }
    [[nodiscard]] double seconds() const { return static_cast<double>(now_) * tick_length; }

    /// Why a command cannot be done, in a sentence for the person; empty when it can.
    [[nodiscard]] std::string check(const Command& command) const;
    /// Has a command done at a tick, `now()` or later. Commands of one tick are done in order.
    ///
    /// throws:  RequestError with the reason from `check`, or when the tick has passed
    void post(Command command, Tick at);
    void post(Command command) { post(std::move(command), now_); }

    /// Goes on to a tick; commands posted for it are done.
    ///
    /// throws:  NumericsError when the equations cannot be carried on
    void advance(Tick to);

    /// Where the machine stands now.
    [[nodiscard]] MachineMoment keep() const;
    /// Goes back, or on again, to a moment of this machine's own run. Commands of later ticks are
    /// posted again, so that going on from there repeats the run bit for bit.
    ///
    /// valid:   commands up to the moment are those that had been done when it was kept
    void restore(const MachineMoment& moment);
    /// Takes back the commands that are posted but not done yet.
    void clear_pending() { pending_.clear(); }

    /// Names and units of all readings; the simulator's own audit comes last.
    [[nodiscard]] const std::vector<Network::Reading>& readings() const { return readings_; }
    /// Index of a reading by name.
    ///
    /// throws:  RequestError naming the nearest when there is none
    [[nodiscard]] std::size_t reading_index(std::string_view name) const;
    /// All readings now, in SI (pressures gauge), in the order of `readings()`.
    void read(std::span<double> values);
    /// One reading now, in SI.
    double read(std::string_view name);
    /// All readings at a time in seconds not before the start of the stride in hand.
    void read_at(double time, std::span<double> values);

    [[nodiscard]] double control(std::string_view id) const;
    /// Whether the machine has an engine that is followed turn by turn, so that leaps mean
    /// anything.
    [[nodiscard]] bool can_leap() const { return network_.crank().has_value(); }
    [[nodiscard]] bool may_leap() const { return trajectory_.may_leap(); }
    [[nodiscard]] double severity(std::string_view id) const;
    /// The value a parameter has now, faults and controls included, in SI.
    ///
    /// throws:  RequestError when the rig has no such parameter
    [[nodiscard]] double parameter(std::string_view part, std::string_view name);

    /// Everything done so far, as a run sheet.
    [[nodiscard]] RunSheet sheet() const;

    /// Kilograms of fuel that have appeared from nowhere; zero but for rounding.
    double fuel_error();
    /// Moles of air that have appeared from nowhere.
    double air_error();
    /// Kilograms of fuel in the machine's account in all.
    [[nodiscard]] double fuel_total() const { return fuel_account_; }

    [[nodiscard]] const Surroundings& surroundings() const { return surroundings_; }
    [[nodiscard]] Network& network() { return network_; }
    [[nodiscard]] std::span<const double> state();
    [[nodiscard]] Work work() const { return trajectory_.work(); }

private:
    [[nodiscard]] std::string reason_against(const SetControl& command) const;
    [[nodiscard]] std::string reason_against(const Do& command) const;
    [[nodiscard]] std::string reason_against(const SetFault& command) const;
    [[nodiscard]] std::string reason_against(const Mend& command) const;
    [[nodiscard]] std::string reason_against(const SetLeaps& command) const;
    void settle(Tick at);
    void apply_all(std::span<const TimedCommand> commands, std::span<double> state);
    void apply(const SetControl& command, std::span<double> state);
    void apply(const Do& command, std::span<double> state);
    void apply(const SetFault& command, std::span<double> state);
    void apply(const Mend& command, std::span<double> state);
    void apply(const SetLeaps& command, std::span<double> state);
    /// Works out every parameter from rig, doings, controls, faults and mending, in that order.
    void refresh();
    Vector place_controls(FuelBlend& fuel);
    void place_faults(FuelBlend& fuel);
    void place_mending(FuelBlend& fuel);
    double& place(FuelBlend& fuel, const std::string& part, std::string_view name);
    [[nodiscard]] const ParameterInfo& info(const std::string& part, std::string_view name) const;
    [[nodiscard]] double audited(std::span<const double> state, double StateInfo::*share) const;

    std::shared_ptr<const Rig> rig_;
    Network network_;
    Surroundings surroundings_;
    Weather weather_;
    Trajectory trajectory_;
    Tick now_ = 0;
    std::vector<TimedCommand> done_;
    std::vector<TimedCommand> pending_;
    std::vector<double> control_values_;
    std::map<std::string, double, std::less<>> settings_;
    std::vector<double> severities_;
    std::vector<Mend>
        mending_; ///< what was worked on, a restored parameter's earlier work left out
    std::vector<Network::Reading> readings_;
    std::vector<double> state_;
    double fuel_account_ = 0.0;
    double air_account_ = 0.0;
};

} // namespace sim
