#include "run_sheet.hpp"

#include "file_write.hpp"
#include "json_reader.hpp"
#include "veil.hpp"

#include <algorithm>

// Writing run sheets; run_sheet.cpp reads them.

namespace sim {

namespace {

/// A tick as seconds, exactly.
std::string time_text(Tick tick)
{
    constexpr Tick ticks_in_second = 1000;
    static_assert(ticks_in_second * tick_length == 1.0);
    std::string fraction = std::to_string(ticks_in_second + tick % ticks_in_second);
    fraction.front() = '.';
    fraction.erase(fraction.find_last_not_of("0.") + 1);
    return std::to_string(tick / ticks_in_second) + fraction + " s";
}

bool is_listed(std::span<const std::string> faults, const SetFault& fault)
{
    return std::ranges::find(faults, fault.fault) != faults.end();
}

/// Writes each kind of command as the keys it has in a run sheet.
struct CommandWriter {
    const Rig& rig;
    std::span<const std::string> hidden;
    nlohmann::ordered_json entry;

    void operator()(const SetControl& command)
    {
        entry["do"] = "set";
        entry["control"] = command.control;
        entry["to"] = command.to;
    }
    void operator()(const Do& command)
    {
        entry["do"] = command.doing;
        const Doing* doing = rig.find_doing(command.doing);
        if (doing != nullptr && doing->has_amount()) {
            entry["to"] = command.to;
        }
    }
    void operator()(const SetFault& command)
    {
        if (is_listed(hidden, command)) {
            entry["do"] = "hidden";
            entry["what"] = veil(nlohmann::ordered_json{
                {"at", entry["at"]}, {"id", command.fault}, {"to", command.severity}}
                                     .dump());
            return;
        }
        entry["do"] = "fault";
        entry["id"] = command.fault;
        entry["to"] = command.severity;
    }
    void operator()(const Mend& command)
    {
        entry["do"] = "mend";
        entry["part"] = command.part;
        entry["parameter"] = command.parameter;
        switch (command.how) {
        case Mend::How::restore:
            entry["restore"] = true;
            break;
        case Mend::How::scale:
            entry["scale"] = command.amount;
            break;
        case Mend::How::add:
            entry["add"] = command.amount;
            break;
        case Mend::How::set:
            entry["set"] = command.amount;
            break;
        }
    }
    void operator()(const SetLeaps& command)
    {
        entry["do"] = "leaps";
        entry["to"] = command.are_allowed ? 1 : 0;
    }
};

/// How many of the first commands can stand in the list of faults at the top.
std::size_t count_first_faults(const std::vector<TimedCommand>& commands,
                               std::span<const std::string> hidden)
{
    std::vector<std::string> listed;
    for (const TimedCommand& command : commands) {
        const auto* fault = std::get_if<SetFault>(&command.command);
        if (command.at != 0 || fault == nullptr || is_listed(hidden, *fault) ||
            is_listed(listed, *fault)) {
            break;
        }
        listed.push_back(fault->fault);
    }
    return listed.size();
}

/// A JSON list with one entry a line.
std::string list_text(const std::vector<std::string>& entries)
{
    std::string text = "[";
    for (const std::string& entry : entries) {
        text += (text.size() == 1 ? "\n    " : ",\n    ") + entry;
    }
    return text + (entries.empty() ? "]" : "\n  ]");
}

} // namespace

std::string write_run_sheet(const RunSheet& sheet, const Rig& rig,
                            std::span<const std::string> hidden)
{
    const std::size_t first_faults = count_first_faults(sheet.commands, hidden);
    std::vector<std::string> faults;
    std::vector<std::string> commands;
    for (const TimedCommand& timed : sheet.commands) {
        if (faults.size() < first_faults) {
            const auto& fault = std::get<SetFault>(timed.command);
            faults.push_back(
                nlohmann::ordered_json{{"id", fault.fault}, {"severity", fault.severity}}.dump());
        } else {
            CommandWriter writer{rig, hidden, {{"at", time_text(timed.at)}}};
            std::visit(writer, timed.command);
            commands.push_back(writer.entry.dump());
        }
    }
    return "{\n  \"format\": 1,\n  \"rig\": " + nlohmann::json(sheet.rig).dump() +
           ",\n  \"faults\": " + list_text(faults) + ",\n  \"commands\": " + list_text(commands) +
           "\n}\n";
}

void save_run_sheet(const RunSheet& sheet, const Rig& rig, const std::string& path,
                    std::span<const std::string> hidden)
{
    atomic_write(path, write_run_sheet(sheet, rig, hidden));
}

} // namespace sim
