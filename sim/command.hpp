#pragma once

#include <cstdint>
#include <string>
#include <variant>
#include <vector>

namespace sim {

/// Count of ticks since the machine came from the shelf. Commands land on ticks.
using Tick = std::int64_t;
/// Length of a tick, s.
inline constexpr double tick_length = 1e-3;

/// Moves a control to a position, in the control's own unit.
struct SetControl {
    std::string control;
    double to = 0.0;
    bool operator==(const SetControl&) const = default;
};
/// Does one of the rig's doings; `to` is its amount where it has one.
struct Do {
    std::string doing;
    double to = 0.0;
    bool operator==(const Do&) const = default;
};
/// Gives a fault a severity from 0 (healthy) to 1 (the whole of it).
struct SetFault {
    std::string fault;
    double severity = 0.0;
    bool operator==(const SetFault&) const = default;
};
/// Works on one parameter of a part with tools: puts it back to what the rig was built with,
/// whatever fault has touched it, or changes what it has come to.
///
/// unit:    amount in SI for add and set, plain for scale, unused for restore
struct Mend {
    enum class How { restore, scale, add, set };
    std::string part;
    std::string parameter;
    How how = How::restore;
    double amount = 1.0;
    bool operator==(const Mend&) const = default;
};
/// Lets an engine that is followed turn by turn leap over turns that resemble each other, or not.
/// It changes no part of the machine, but the last digits of what follows, so it is on the record.
struct SetLeaps {
    bool are_allowed = false;
    bool operator==(const SetLeaps&) const = default;
};

/// Everything a person can do to a machine.
using Command = std::variant<SetControl, Do, SetFault, Mend, SetLeaps>;

struct TimedCommand {
    Tick at = 0;
    Command command;
    bool operator==(const TimedCommand&) const = default;
};

/// A rig and what was done to it: the whole of a run, from which it can be replayed bit for bit.
struct RunSheet {
    std::string rig;
    std::vector<TimedCommand> commands;
    std::vector<std::string> hidden{}; ///< faults that the sheet's file does not name
};

} // namespace sim
