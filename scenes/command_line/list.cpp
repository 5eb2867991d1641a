#include "scenes/command_line/list.hpp"

#include "scenes/command_line/csv.hpp"
#include "scenes/command_line/table.hpp"
#include "sim/simulator.hpp"

#include <nlohmann/json.hpp>

namespace scenes {

namespace {

using Json = nlohmann::ordered_json;
using Rows = std::vector<std::vector<std::string>>;

/// A list in both its forms, filled side by side so that they say the same.
struct Listing {
    Rows rows;
    Json json = Json::array();
};

Listing list_rigs()
{
    Listing listing;
    for (const std::string& id : sim::rig_ids()) {
        const sim::Rig rig = sim::load_rig(id);
        listing.rows.push_back({rig.id, rig.title});
        listing.json.push_back({{"id", rig.id}, {"title", rig.title}});
    }
    return listing;
}

Listing list_faults(const sim::Rig& rig)
{
    Listing listing;
    for (const sim::Fault& fault : rig.faults) {
        listing.rows.push_back({fault.id, fault.title, fault.where});
        listing.json.push_back({{"id", fault.id}, {"title", fault.title}, {"where", fault.where}});
    }
    return listing;
}

Listing list_readings(const sim::Rig& rig)
{
    const sim::Simulator simulator(std::make_shared<const sim::Rig>(rig));
    Listing listing;
    for (const sim::Network::Reading& reading : simulator.readings()) {
        listing.rows.push_back({reading.name, reading.unit});
        listing.json.push_back({{"id", reading.name}, {"unit", reading.unit}});
    }
    return listing;
}

std::string range_text(const sim::Control& control)
{
    return csv_number(control.low) + " to " + csv_number(control.high) +
           (control.unit.empty() ? "" : " " + control.unit);
}

/// The two tilts at once, for a machine that goes all the way over.
void list_attitude(const sim::Rig& rig, Listing& listing)
{
    constexpr double upside_down = 180.0;
    const sim::Control* side = rig.find_control("tilt_side");
    if (side == nullptr || side->high < upside_down) {
        return;
    }
    const std::string title = "Direction in the machine's axes that is to point up";
    listing.rows.push_back({"set attitude", "[x, y, z]", title});
    listing.json.push_back(
        {{"id", "attitude"}, {"title", title}, {"unit", ""}, {"start", Json::array({0, 0, 1})}});
}

Listing list_controls(const sim::Rig& rig)
{
    Listing listing;
    for (const sim::Control& control : rig.controls) {
        listing.rows.push_back({"set " + control.id, range_text(control), control.title});
        listing.json.push_back({{"id", control.id},
                                {"title", control.title},
                                {"unit", control.unit},
                                {"low", control.low},
                                {"high", control.high},
                                {"start", control.start}});
    }
    list_attitude(rig, listing);
    return listing;
}

/// The rig's own doings, then the two that every rig has; `keys` are what a run sheet must add.
Listing list_doings(const sim::Rig& rig)
{
    Listing listing;
    for (const sim::Doing& doing : rig.doings) {
        const bool has_amount = doing.has_amount();
        const std::string amount = has_amount ? "0 to " + csv_number(doing.most) : "";
        listing.rows.push_back({doing.id, amount, doing.title});
        listing.json.push_back({{"id", doing.id},
                                {"title", doing.title},
                                {"keys", has_amount ? Json::array({"to"}) : Json::array()}});
    }
    listing.rows.push_back({"fault ID", "0 to 1", "Give a fault a severity"});
    listing.json.push_back(
        {{"id", "set"}, {"title", "Move a control"}, {"keys", Json::array({"control", "to"})}});
    listing.json.push_back({{"id", "fault"},
                            {"title", "Give a fault a severity"},
                            {"keys", Json::array({"id", "to"})}});
    return listing;
}

Listing list_commands(const sim::Rig& rig)
{
    Listing controls = list_controls(rig);
    Listing doings = list_doings(rig);
    Listing both;
    both.rows = std::move(controls.rows);
    both.rows.insert(both.rows.end(), doings.rows.begin(), doings.rows.end());
    both.json = {{"controls", std::move(controls.json)}, {"doings", std::move(doings.json)}};
    return both;
}

Listing list(const ListRequest& request)
{
    switch (request.what) {
    case ListRequest::What::rigs:
        return list_rigs();
    case ListRequest::What::faults:
        return list_faults(sim::load_rig(request.rig));
    case ListRequest::What::readings:
        return list_readings(sim::load_rig(request.rig));
    case ListRequest::What::commands:
        return list_commands(sim::load_rig(request.rig));
    }
    return {};
}

} // namespace

std::string list_text(const ListRequest& request)
{
    const Listing listing = list(request);
    return request.as_json ? listing.json.dump(2) + '\n' : aligned(listing.rows);
}

} // namespace scenes
