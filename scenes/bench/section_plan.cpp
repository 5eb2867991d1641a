#include "scenes/bench/section_plan.hpp"

#include "scenes/bench/section_finder.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace scenes {
namespace {

CircuitPlan circuit(const SectionFinder& find, std::string_view jet, std::string_view column)
{
    return {.jet = find.point(jet, "jet"),
            .jet_bore = find.size(jet, "bore"),
            .jet_length = find.size(jet, "length"),
            .bore = find.size(column, "bore"),
            .lip = find.size(column, "lip"),
            .outlet_bore = find.size(column, "nozzle_bore")};
}

/// The hose: straight down from the filter, then round into the inlet.
Outline hose_centre(Spot top, Spot end)
{
    const double radius = 7.5;
    Outline line{top};
    const Spot turn{top.x + radius, end.y + radius};
    for (int i = 0; i <= 12; ++i) {
        const double angle = std::numbers::pi * (1.0 + 0.5 * i / 12.0);
        line.push_back(turn + Spot{std::cos(angle), std::sin(angle)} * radius);
    }
    line.push_back(end);
    return line;
}

} // namespace

double bore_of(double area)
{
    return std::sqrt(4.0 * area / std::numbers::pi) * 1e3;
}

SectionPlan::SectionPlan(const sim::Rig& rig)
{
    const SectionFinder find(rig);
    bowl = find.room("bowl");
    tank = find.room("tank");
    main = circuit(find, "main_jet", "nozzle");
    idle = circuit(find, "idle_jet", "idle_passage");

    main_bleed_bore = find.size("nozzle", "bleed_bore");
    idle_bleed_bore = find.size("idle_passage", "bleed_bore");

    seat = find.point("needle", "seat");
    seat_bore = find.size("needle", "seat_bore");
    lever_ratio = find.value("needle", "lever_ratio");
    float_point = find.point("needle", "float");
    float_half = std::max(3.0, bowl.high.x - 1.2 - float_point.x);
    // A hinge that gives the lever its ratio, as far as the bowl has room for it.
    const double ideal = (lever_ratio * seat.x - float_point.x) / (lever_ratio - 1.0);
    hinge = {std::max(ideal, bowl.low.x + 1.8), seat.y - 3.9};

    gasket = find.point("bowl_gasket", "a").y;
    bowl_vent = find.point("bowl_vent", "a");
    bowl_vent_bore = bore_of(find.value("bowl_vent", "area"));
    primer_hole = find.point("primer_line", "a");
    primer_bore = bore_of(find.value("primer_line", "area"));
    drain_bore = bore_of(find.value("bowl_drain", "loose_area"));
    cap_vent_bore = bore_of(find.value("cap_vent", "area"));
    tap_bore = find.size("supply", "tap_bore");
    hose_bore = find.size("hose", "bore");
    bulb_volume = find.value("bulb", "volume") * 1e9;
    bulb_radius = std::cbrt(1.5 * bulb_volume / std::numbers::pi); // half a ball
    bulb_hole_bore = bore_of(find.value("bulb_hole", "area"));
    cord_length = find.size("recoil", "cord_length");

    horn_bore = find.size("intake", "bore");
    venturi_bore = find.size("intake", "venturi");
    horn_axis = idle.outlet() - horn_bore / 2.0; // the idle port is in the roof of the bore
    choke_relief = find.value("intake", "choke_relief");
    idle_stop = find.value("intake", "idle_stop");

    left = bowl.low.x - 4.0;
    wall = bowl.high.x + 8.0;
    base = bowl.low.y - 8.0;
    lid_top = bowl.high.y + 6.0;
    inlet = bowl.high.y + 3.0;
    mouth = wall + 17.0;
    choke = mouth + 11.5;
    nozzle = wall + 45.5;
    throttle = nozzle + 22.0;
    flange = throttle + 10.5;
    end = flange + 14.0;
    feed = bowl.low.x - 26.0;
    floor = base - 4.0;
    filter_foot = inlet + 9.5;
    tap_foot = filter_foot + 7.5;
    neck_foot = tap_foot + 5.6;
    tank_view = {find.point("supply", "a"), {feed, neck_foot + 2.4}, 0.25};
    hose_line = hose_centre({feed, filter_foot}, {left - 1.0, inlet});
}

Outline SectionPlan::main_passage() const
{
    const double gallery = bowl.low.y - 5.2;
    return {main.jet, {main.jet.x, gallery}, {nozzle, gallery}, {nozzle, main.outlet()}};
}

Outline SectionPlan::idle_passage() const
{
    const double gallery = bowl.low.y - 1.95;
    const double crest = idle.outlet() + 2.75;
    const double port = throttle + 1.6;
    return {idle.jet,      {idle.jet.x, gallery}, {idle_riser(), gallery}, {idle_riser(), crest},
            {port, crest}, {port, idle.outlet()}};
}

Outline SectionPlan::main_bleed() const
{
    const double reach = main.bore / 2.0 + 1.6;
    return {{nozzle - reach - 9.0, horn_floor()},
            {nozzle - reach - 6.4, horn_floor() - 2.4},
            {nozzle, horn_floor() - 2.4}};
}

Outline SectionPlan::idle_bleed() const
{
    const double x = mouth + 4.0;
    return {{x, horn_roof()}, {x, idle_passage()[3].y}};
}

Spot SectionPlan::cord_eye() const
{
    return {end - 33.0, high().y - 5.5};
}

} // namespace scenes
