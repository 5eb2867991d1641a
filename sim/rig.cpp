#include "rig.hpp"

#include "ids.hpp"
#include "json_reader.hpp"
#include "run_sheet.hpp"
#include "words.hpp"

#include <algorithm>
#include <cstdlib>
#include <filesystem>

namespace sim {

namespace {

std::vector<std::string> parameter_ids(std::span<const ParameterInfo> infos)
{
    std::vector<std::string> ids;
    std::ranges::transform(infos, std::back_inserter(ids),
                           [](const ParameterInfo& info) { return std::string(info.id); });
    return ids;
}

double read_parameter(const JsonNode& node, const ParameterInfo& info)
{
    const double value = node.quantity(info.dimension);
    if (!(value >= info.low && value <= info.high)) {
        throw node.wrong(std::string(info.id) + " is out of range; allowed in SI units: " +
                         std::to_string(info.low) + " to " + std::to_string(info.high));
    }
    return value;
}

Box read_box(const JsonNode& node)
{
    Box box;
    if (node.has("end_a")) {
        node.allow_keys({"end_a", "end_b"});
        box.mixed = true;
        box.end_a = node.at("end_a").vector();
        box.end_b = node.at("end_b").vector();
        return box;
    }
    node.allow_keys({"centre", "size"});
    box.centre = node.at("centre").vector();
    box.size = node.at("size").vector();
    if (!(box.size.x > 0.0 && box.size.y > 0.0 && box.size.z > 0.0)) {
        throw node.at("size").wrong("every side must be longer than nothing");
    }
    return box;
}

PartSpec read_part(const JsonNode& node)
{
    PartSpec spec;
    spec.id = node.at("id").text();
    spec.kind = node.at("kind").text();
    const PartKind* kind = find_part_kind(spec.kind);
    if (kind == nullptr) {
        std::vector<std::string> kinds;
        for (const PartKind& known : part_kinds()) {
            kinds.emplace_back(known.id);
        }
        throw node.at("kind").wrong("unknown kind \"" + spec.kind + "\"" +
                                    choices_hint(spec.kind, kinds));
    }
    std::vector<std::string> allowed = parameter_ids(kind->parameters);
    allowed.insert(allowed.end(), {"id", "kind", "title", "links", "points", "box"});
    node.allow_keys(allowed);
    spec.title = node.has("title") ? node.at("title").text() : spec.id;
    for (const ParameterInfo& info : kind->parameters) {
        spec.parameters[std::string(info.id)] = read_parameter(node.at(info.id), info);
    }
    if (node.has("links")) {
        for (const std::string& role : node.at("links").keys()) {
            spec.links[role] = node.at("links").at(role).text();
        }
    }
    if (node.has("points")) {
        for (const std::string& name : node.at("points").keys()) {
            spec.points[name] = node.at("points").at(name).vector();
        }
    }
    if (node.has("box")) {
        spec.box = read_box(node.at("box"));
    }
    return spec;
}

std::vector<PartSpec> read_parts(const JsonNode& node)
{
    std::vector<PartSpec> parts;
    for (const JsonNode& item : node.items()) {
        PartSpec spec = read_part(item);
        if (find_by_id(parts, spec.id) != nullptr) {
            throw item.at("id").wrong("part \"" + spec.id + "\" is there already");
        }
        parts.push_back(std::move(spec));
    }
    std::vector<std::string> ids;
    std::ranges::transform(parts, std::back_inserter(ids), &PartSpec::id);
    const auto items = node.items();
    for (std::size_t i = 0; i < parts.size(); ++i) {
        for (const auto& [role, id] : parts[i].links) {
            // A link names a part, or one of a part's signals.
            const std::string part = id.substr(0, id.find('.'));
            if (std::ranges::find(ids, part) == ids.end()) {
                throw items[i].at("links").at(role).wrong("there is no part \"" + part + "\"" +
                                                          choices_hint(part, ids));
            }
        }
    }
    return parts;
}

/// The table of a part's parameters, or of the fuel's; nothing when there is no such part.
std::optional<std::span<const ParameterInfo>> parameters_of(const std::vector<PartSpec>& parts,
                                                            std::string_view part)
{
    if (part == "fuel") {
        return fuel_parameters();
    }
    const PartSpec* spec = find_by_id(parts, part);
    if (spec == nullptr) {
        return std::nullopt;
    }
    return find_part_kind(spec->kind)->parameters;
}

/// The table row that a file's part and parameter name.
const ParameterInfo& named_parameter(const JsonNode& node, const std::vector<PartSpec>& parts)
{
    const std::string part = node.at("part").text();
    const std::string name = node.at("parameter").text();
    const auto infos = parameters_of(parts, part);
    if (!infos) {
        std::vector<std::string> ids{"fuel"};
        std::ranges::transform(parts, std::back_inserter(ids), &PartSpec::id);
        throw node.at("part").wrong("there is no part \"" + part + "\"" + choices_hint(part, ids));
    }
    const auto found = std::ranges::find(*infos, name, &ParameterInfo::id);
    if (found == infos->end()) {
        throw node.at("parameter")
            .wrong("part " + part + " has no parameter \"" + name + "\"" +
                   choices_hint(name, parameter_ids(*infos)));
    }
    return *found;
}

/// Whether a control or doing belongs to the workshop.
bool is_of_workshop(const JsonNode& item)
{
    return item.has("workshop") && item.at("workshop").truth();
}

std::vector<Control> read_controls(const JsonNode& node, const std::vector<PartSpec>& parts)
{
    std::vector<Control> controls;
    for (const JsonNode& item : node.items()) {
        item.allow_keys(
            {"id", "title", "unit", "low", "high", "start", "part", "parameter", "workshop"});
        Control control{item.at("id").text(),
                        item.at("title").text(),
                        item.has("unit") ? item.at("unit").text() : "",
                        item.at("low").number(),
                        item.at("high").number(),
                        item.at("start").number(),
                        "",
                        item.at("parameter").text()};
        if (item.has("part")) {
            named_parameter(item, parts);
            control.part = item.at("part").text();
        } else if (control.parameter != "tilt_forward" && control.parameter != "tilt_side") {
            throw item.at("parameter")
                .wrong("a control without a part sets tilt_forward or tilt_side");
        }
        control.is_workshop = is_of_workshop(item);
        controls.push_back(std::move(control));
    }
    return controls;
}

std::vector<Doing> read_doings(const JsonNode& node, const std::vector<PartSpec>& parts)
{
    std::vector<Doing> doings;
    for (const JsonNode& item : node.items()) {
        item.allow_keys({"id", "title", "set", "jump", "fill", "add", "workshop"});
        Doing doing;
        doing.id = item.at("id").text();
        doing.title = item.at("title").text();
        if (item.has("set")) {
            for (const JsonNode& setting : item.at("set").items()) {
                setting.allow_keys({"part", "parameter", "to"});
                const ParameterInfo& info = named_parameter(setting, parts);
                doing.settings.push_back({setting.at("part").text(), std::string(info.id),
                                          read_parameter(setting.at("to"), info)});
            }
        }
        if (item.has("jump")) {
            for (const JsonNode& jump : item.at("jump").items()) {
                jump.allow_keys({"state", "to"});
                doing.jumps.push_back({jump.at("state").text(), jump.at("to").number()});
            }
        }
        if (item.has("fill")) {
            doing.fills = item.at("fill").text();
        }
        if (item.has("add")) {
            const JsonNode add = item.at("add");
            add.allow_keys({"state", "most"});
            doing.adds_to = add.at("state").text();
            doing.most = add.at("most").number_between(0.0, 1e6);
        }
        doing.is_workshop = is_of_workshop(item);
        doings.push_back(std::move(doing));
    }
    return doings;
}

FaultChange read_change(const JsonNode& node, const std::vector<PartSpec>& parts)
{
    node.allow_keys({"part", "parameter", "scale", "add", "set"});
    const ParameterInfo& info = named_parameter(node, parts);
    FaultChange change{node.at("part").text(), std::string(info.id), FaultChange::How::scale, 1.0};
    const int ways =
        (node.has("scale") ? 1 : 0) + (node.has("add") ? 1 : 0) + (node.has("set") ? 1 : 0);
    if (ways != 1) {
        throw node.wrong("wants exactly one of scale, add, set");
    }
    if (node.has("scale")) {
        change.amount = node.at("scale").number_between(0.0, 1e6);
    } else if (node.has("add")) {
        change.how = FaultChange::How::add;
        change.amount = node.at("add").quantity(info.dimension);
    } else {
        change.how = FaultChange::How::set;
        change.amount = read_parameter(node.at("set"), info);
    }
    return change;
}

/// The fault of a file as far as it concerns a rig; nothing when it does not.
std::optional<Fault> read_fault(const std::string& path, const Rig& rig)
{
    const JsonNode node = JsonNode::load(path);
    node.allow_keys({"format", "id", "title", "where", "about", "machines"});
    node.require_format(1);
    Fault fault;
    fault.id = node.at("id").text();
    if (fault.id != std::filesystem::path(path).stem().string()) {
        throw node.at("id").wrong("must be the file's own name, \"" +
                                  std::filesystem::path(path).stem().string() + "\"");
    }
    fault.title = node.at("title").text();
    fault.where = node.at("where").text();
    fault.about = node.at("about").text();
    for (const JsonNode& machine : node.at("machines").items()) {
        machine.allow_keys({"rigs", "changes", "found", "cures"});
        const auto rigs = machine.at("rigs").items();
        if (std::ranges::none_of(rigs, [&](const JsonNode& id) { return id.text() == rig.id; })) {
            continue;
        }
        fault.found = machine.at("found").text();
        for (const JsonNode& cure : machine.at("cures").items()) {
            fault.cures.push_back(cure.text());
        }
        for (const JsonNode& change : machine.at("changes").items()) {
            fault.changes.push_back(read_change(change, rig.parts));
        }
        return fault;
    }
    return std::nullopt;
}

std::vector<std::string> files_of(const std::string& folder)
{
    std::error_code trouble;
    auto files = json_files(folder, trouble);
    if (trouble) {
        throw RequestError("cannot read the folder " + folder + ": " + trouble.message());
    }
    return files;
}

FuelBlend read_fuel(const JsonNode& node)
{
    FuelBlend fuel;
    node.allow_keys(parameter_ids(fuel_parameters()));
    for (const ParameterInfo& info : fuel_parameters()) {
        info.member(&fuel) = read_parameter(node.at(info.id), info);
    }
    return fuel;
}

} // namespace

const Control* Rig::find_control(std::string_view name) const
{
    return find_by_id(controls, name);
}
const Doing* Rig::find_doing(std::string_view name) const
{
    return find_by_id(doings, name);
}
const Fault* Rig::find_fault(std::string_view name) const
{
    return find_by_id(faults, name);
}

const ParameterInfo* Rig::find_parameter(std::string_view part, std::string_view name) const
{
    const auto infos = parameters_of(parts, part);
    if (!infos) {
        return nullptr;
    }
    const auto found = std::ranges::find(*infos, name, &ParameterInfo::id);
    return found == infos->end() ? nullptr : &*found;
}

std::span<const ParameterInfo> fuel_parameters()
{
    const auto row = [](std::string_view id, std::string_view title, auto member, double low,
                        double high) {
        using Value = std::remove_cvref_t<decltype(std::declval<FuelBlend>().*member)>;
        return ParameterInfo{
            id, title, dimension_of<Value>, low, high, [member](void* fuel) -> double& {
                return (static_cast<FuelBlend*>(fuel)->*member).si;
            }};
    };
    static const std::vector<ParameterInfo> rows{
        row("reid_pressure", "Reid vapour pressure", &FuelBlend::reid_pressure, 1e3, 110e3),
        row("density", "density at 15 degC", &FuelBlend::density, 650.0, 850.0),
        row("viscosity", "viscosity at 20 degC", &FuelBlend::viscosity, 0.2e-3, 5e-3),
        row("ethanol", "volume share of ethanol", &FuelBlend::ethanol, 0.0, 0.85),
        row("light_share", "share that can leave as vapour", &FuelBlend::light_share, 0.05, 0.9),
        row("gum", "film of gum in every bore", &FuelBlend::gum, 0.0, 0.3e-3),
    };
    return rows;
}

std::string assets_folder()
{
    const char* set = std::getenv("STANDPIPE_ASSETS"); // NOLINT(concurrency-mt-unsafe): read once
    return set != nullptr && *set != '\0' ? set : STANDPIPE_ASSETS;
}

std::vector<std::string> rig_ids()
{
    std::vector<std::string> ids;
    for (const std::string& file : files_of(assets_folder() + "/rigs")) {
        ids.push_back(std::filesystem::path(file).stem().string());
    }
    return ids;
}

Rig load_rig(std::string_view id)
{
    const auto ids = rig_ids();
    if (std::ranges::find(ids, id) == ids.end()) {
        throw RequestError("there is no rig \"" + std::string(id) + "\"" + choices_hint(id, ids));
    }
    return load_rig_file(assets_folder() + "/rigs/" + std::string(id) + ".json",
                         assets_folder() + "/faults");
}

Rig load_rig_file(const std::string& path, const std::string& faults_folder)
{
    const JsonNode node = JsonNode::load(path);
    node.allow_keys({"format", "id", "title", "fuel", "parts", "controls", "doings",
                     "default_sheet", "default_length", "drawing", "tolerance"});
    node.require_format(1);
    Rig rig;
    rig.id = node.at("id").text();
    rig.title = node.at("title").text();
    rig.file = path;
    rig.fuel = read_fuel(node.at("fuel"));
    rig.parts = read_parts(node.at("parts"));
    rig.controls = read_controls(node.at("controls"), rig.parts);
    rig.doings = read_doings(node.at("doings"), rig.parts);
    for (const std::string& file : files_of(faults_folder)) {
        if (auto fault = read_fault(file, rig)) {
            rig.faults.push_back(std::move(*fault));
        }
    }
    if (node.has("tolerance")) {
        const double tolerance = node.at("tolerance").number_between(1e-12, 1e-2);
        rig.tolerance = {tolerance, tolerance};
    }
    rig.default_length = node.at("default_length").quantity(Dimension::duration);
    rig.drawing = node.at("drawing").dump();
    rig.default_sheet =
        parse_run_sheet(node.at("default_sheet").dump(), path + " (default_sheet)", rig);
    return rig;
}

} // namespace sim
