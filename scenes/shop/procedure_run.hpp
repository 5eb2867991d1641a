#pragma once

#include "scenes/shop/procedure.hpp"

namespace shop {

/// Has a command done at once.
void do_to(sim::Simulator& machine, const sim::Command& command);

/// A procedure under way on a machine.
///
/// It goes on in pieces, so that a window can show the machine meanwhile; how it is divided changes
/// nothing. The machine is given anew each time and must be the same one, or its copy.
class ProcedureRun {
public:
    explicit ProcedureRun(const Procedure& procedure);

    /// Goes on for so much of the machine's time at most; true when everything is done.
    ///
    /// throws:  NumericsError when the machine's equations cannot be carried on
    bool advance(sim::Simulator& machine, sim::Tick ticks);
    /// Goes on until everything is done.
    void finish(sim::Simulator& machine);

    /// Goes on as far as it can while no time goes by and nothing is done to the machine; true when
    /// everything is done. What it wants next is `command`, or, without one, to be at `next`.
    bool settle(sim::Simulator& machine);
    /// What it wants done to the machine now; null when it wants time to go by.
    [[nodiscard]] const sim::Command* command() const { return command_; }
    void command_is_done() { command_ = nullptr; }
    /// The tick at which it wants to look at the machine, or at which it has waited long enough.
    [[nodiscard]] sim::Tick next() const;
    /// Takes note that the machine stands at `next`.
    void arrive(sim::Simulator& machine);
    /// Whether the steps that are left, if any, take no more readings.
    [[nodiscard]] bool has_read_all() const;

    /// What was read, in SI and without noise, in the order of the procedure's readings; nothing
    /// where the steps passed a reading by.
    [[nodiscard]] const std::vector<std::optional<double>>& values() const { return values_; }

private:
    struct Frame {
        const std::vector<Step>* steps = nullptr;
        std::size_t next = 0;
        const Repeat* repeat = nullptr; ///< that goes through these steps again
        std::size_t rounds = 0;
    };
    /// Least, most and so on of one reading while it is watched.
    struct Sum {
        double first = 0.0;
        double last = 0.0;
        double total = 0.0;
        double least = 0.0;
        double most = 0.0;
        std::optional<double> passed_at; ///< seconds from the beginning
    };
    struct Watching {
        const Watch* watch = nullptr;
        sim::Tick from = 0;
        sim::Tick every = 1;
        std::size_t count = 0;
        std::vector<Sum> sums;
    };

    void begin_next(sim::Simulator& machine);
    void begin(const Act& act, sim::Simulator& machine);
    void begin(const Wait& wait, sim::Simulator& machine);
    void begin(const Watch& watch, sim::Simulator& machine);
    void begin(const Repeat& repeat, sim::Simulator& machine);
    void begin(const Choose& choose, sim::Simulator& machine);
    void end_round(sim::Simulator& machine);
    void look(sim::Simulator& machine);
    void sample(sim::Simulator& machine);
    void end_watch(sim::Simulator& machine);

    const Procedure* procedure_;
    std::vector<Frame> frames_;
    std::vector<std::optional<double>> values_;
    std::vector<double> seen_; ///< the machine's readings now
    const sim::Command* command_ = nullptr;
    std::optional<sim::Tick> waits_until_;
    std::optional<Watching> watching_;
};

} // namespace shop
