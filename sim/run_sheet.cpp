#include "run_sheet.hpp"

#include "ids.hpp"
#include "json_reader.hpp"
#include "printable.hpp"
#include "veil.hpp"
#include "words.hpp"

#include <algorithm>
#include <cmath>

// Reading run sheets; run_sheet_write.cpp writes them.

namespace sim {

namespace {

constexpr auto mending_words =
    std::to_array<std::pair<const char*, Mend::How>>({{"restore", Mend::How::restore},
                                                      {"scale", Mend::How::scale},
                                                      {"add", Mend::How::add},
                                                      {"set", Mend::How::set}});

/// The thing of the rig that a node names.
template <class T>
const T& named(const JsonNode& node, const T* found, std::string_view what,
               const std::vector<T>& things)
{
    if (found == nullptr) {
        const std::string name = node.text();
        throw node.wrong("unknown " + std::string(what) + " " + in_quotes(name) +
                         choices_hint(name, ids_of(things)));
    }
    return *found;
}

Tick read_time(const JsonNode& node)
{
    const double seconds = node.quantity(Dimension::duration);
    if (!(seconds >= 0.0 && seconds <= longest_run)) {
        throw node.wrong(in_quotes(node.text()) + " is out of range; allowed: 0 s to 10 day");
    }
    return std::llround(seconds / tick_length);
}

SetFault read_fault(const JsonNode& node, std::string_view severity_key, const Rig& rig)
{
    const JsonNode id = node.at("id");
    const Fault& fault = named(id, rig.find_fault(id.text()), "fault", rig.faults);
    return {fault.id, node.at(severity_key).number_between(0.0, 1.0)};
}

Command read_set(const JsonNode& node, const Rig& rig)
{
    node.allow_keys({"at", "do", "control", "to"});
    const JsonNode id = node.at("control");
    const Control& control = named(id, rig.find_control(id.text()), "control", rig.controls);
    return SetControl{control.id, node.at("to").number_between(control.low, control.high)};
}

Command read_doing(const JsonNode& node, const Rig& rig)
{
    const std::string name = node.at("do").text();
    const Doing* doing = rig.find_doing(name);
    if (doing == nullptr) {
        std::vector<std::string> allowed = ids_of(rig.doings);
        allowed.insert(allowed.end(), {"set", "fault", "hidden", "mend", "leaps"});
        throw node.at("do").wrong("unknown doing " + in_quotes(name) + choices_hint(name, allowed));
    }
    if (!doing->has_amount()) {
        node.allow_keys({"at", "do"});
        return Do{doing->id, 0.0};
    }
    node.allow_keys({"at", "do", "to"});
    return Do{doing->id, node.at("to").number_between(0.0, doing->most)};
}

/// A whole attitude at once: the direction in the machine's axes that is to point up, as three
/// numbers of any size. It becomes the two tilts.
std::array<Command, 2> read_attitude(const JsonNode& node, const Rig& rig)
{
    node.allow_keys({"at", "do", "control", "to"});
    const JsonNode direction = node.at("to");
    const auto numbers = direction.items();
    if (numbers.size() != 3) {
        throw direction.wrong("wants three numbers, got " + std::to_string(numbers.size()));
    }
    const Vector up{numbers[0].number_between(-1e3, 1e3), numbers[1].number_between(-1e3, 1e3),
                    numbers[2].number_between(-1e3, 1e3)};
    if (!(dot(up, up) > 1e-12)) {
        throw direction.wrong("is no direction; allowed: three numbers that are not all 0");
    }
    const Tilt tilt = tilt_for(up);
    constexpr double degree = 0.017453292519943295;
    const std::array<SetControl, 2> parts{SetControl{"tilt_forward", tilt.forward.si / degree},
                                          SetControl{"tilt_side", tilt.side.si / degree}};
    for (const SetControl& part : parts) {
        const Control* control = rig.find_control(part.control);
        if (control == nullptr || part.to < control->low || part.to > control->high) {
            throw direction.wrong("tips the machine further than it goes");
        }
    }
    return {parts[0], parts[1]};
}

/// A fault that is not to be read in the file: `{"at":...,"do":"hidden","what":"..."}`.
SetFault read_hidden(const JsonNode& node, const Rig& rig)
{
    node.allow_keys({"at", "do", "what"});
    const JsonNode what = node.at("what");
    std::string text;
    try {
        text = unveil(what.text());
    } catch (const RequestError& error) {
        throw what.wrong(std::string("the hidden fault ") + error.what());
    }
    try {
        const JsonNode fault = JsonNode::parse(text, "hidden fault");
        SetFault command = read_fault(fault, "to", rig);
        if (fault.at("at").text() == node.at("at").text()) {
            return command;
        }
    } catch (const AssetError&) { // its own words would tell what is hidden
    }
    throw what.wrong("the hidden fault is none of the rig " + in_quotes(rig.id) +
                     " at this time; allowed: what the bench itself has saved there");
}

/// Work on a parameter: {"at":...,"do":"mend","part":"...","parameter":"...","restore":true}, or in
/// place of restore one of scale, add, set.
Mend read_mend(const JsonNode& node, const Rig& rig)
{
    node.allow_keys({"at", "do", "part", "parameter", "restore", "scale", "add", "set"});
    Mend mend{node.at("part").text(), node.at("parameter").text()};
    const ParameterInfo* info = rig.find_parameter(mend.part, mend.parameter);
    if (info == nullptr) {
        throw node.at("parameter")
            .wrong("the rig has no parameter " + in_quotes(mend.part + "." + mend.parameter));
    }
    int ways = 0;
    for (const auto& [key, how] : mending_words) {
        if (node.has(key)) {
            ++ways;
            mend.how = how;
        }
    }
    if (ways != 1) {
        throw node.wrong("wants exactly one of restore, scale, add, set");
    }
    if (mend.how == Mend::How::restore) {
        if (!node.at("restore").truth()) {
            throw node.at("restore").wrong("can only be true");
        }
    } else if (mend.how == Mend::How::set) {
        mend.amount = node.at("set").number_between(info->low, info->high);
    } else {
        mend.amount = node.at(mend.how == Mend::How::add ? "add" : "scale").number();
    }
    return mend;
}

TimedCommand read_command(const JsonNode& node, const Rig& rig)
{
    const Tick at = read_time(node.at("at"));
    const std::string name = node.at("do").text();
    if (name == "set") {
        return {at, read_set(node, rig)};
    }
    if (name == "fault") {
        node.allow_keys({"at", "do", "id", "to"});
        return {at, read_fault(node, "to", rig)};
    }
    if (name == "hidden") {
        return {at, read_hidden(node, rig)};
    }
    if (name == "mend") {
        return {at, read_mend(node, rig)};
    }
    if (name == "leaps") {
        node.allow_keys({"at", "do", "to"});
        return {at, SetLeaps{node.at("to").number_between(0.0, 1.0) > 0.5}};
    }
    return {at, read_doing(node, rig)};
}

/// Adds the faults listed at the top, which are there from the first tick.
void read_first_faults(const JsonNode& list, const Rig& rig, std::vector<TimedCommand>& commands)
{
    for (const JsonNode& node : list.items()) {
        node.allow_keys({"id", "severity"});
        const SetFault fault = read_fault(node, "severity", rig);
        const auto same = [&](const TimedCommand& earlier) {
            return std::get<SetFault>(earlier.command).fault == fault.fault;
        };
        if (std::ranges::any_of(commands, same)) {
            throw node.at("id").wrong("fault " + in_quotes(fault.fault) + " is listed twice");
        }
        commands.push_back({0, fault});
    }
}

/// Adds a command; an attitude is two, and a hidden fault stays hidden.
void add_command(const JsonNode& node, const Rig& rig, RunSheet& sheet)
{
    const std::string name = node.at("do").text();
    if (name == "set" && node.has("control") && node.at("control").text() == "attitude") {
        for (const Command& part : read_attitude(node, rig)) {
            sheet.commands.push_back({read_time(node.at("at")), part});
        }
        return;
    }
    sheet.commands.push_back(read_command(node, rig));
    if (name == "hidden") {
        sheet.hidden.push_back(std::get<SetFault>(sheet.commands.back().command).fault);
    }
}

RunSheet read_sheet(const JsonNode& node, const Rig& rig)
{
    node.allow_keys({"format", "rig", "faults", "commands"});
    if (const JsonNode format = node.at("format"); format.number() != 1.0) {
        throw format.wrong("unknown format " + format.dump() + "; allowed: 1");
    }
    if (const JsonNode name = node.at("rig"); name.text() != rig.id) {
        throw name.wrong("the run sheet is for the rig " + in_quotes(name.text()) + ", not for " +
                         in_quotes(rig.id));
    }
    RunSheet sheet{rig.id, {}};
    if (node.has("faults")) {
        read_first_faults(node.at("faults"), rig, sheet.commands);
    }
    if (node.has("commands")) {
        for (const JsonNode& command : node.at("commands").items()) {
            add_command(command, rig, sheet);
        }
    }
    std::ranges::stable_sort(sheet.commands, {}, &TimedCommand::at);
    return sheet;
}

} // namespace

RunSheet load_run_sheet(const std::string& path, const Rig& rig)
{
    return read_sheet(JsonNode::load(path), rig);
}

std::string rig_of_run_sheet(const std::string& path)
{
    const JsonNode name = JsonNode::load(path).at("rig");
    const std::vector<std::string> rigs = rig_ids();
    if (std::ranges::find(rigs, name.text()) == rigs.end()) {
        throw name.wrong("there is no rig " + in_quotes(name.text()) +
                         choices_hint(name.text(), rigs));
    }
    return name.text();
}

RunSheet parse_run_sheet(const std::string& text, const std::string& name, const Rig& rig)
{
    return read_sheet(JsonNode::parse(text, name), rig);
}

} // namespace sim
