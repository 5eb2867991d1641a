#include "scenes/bench/section_trimmer_plan.hpp"

#include "scenes/bench/section_finder.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace scenes {
namespace {

/// Half the width of a clamped sheet whose middle, moving by 1 mm, displaces an area times 1 mm.
///
/// source: a paraboloid holds half its height times its base (textbook)
double sheet_half(double area)
{
    return std::sqrt(2.0 * area / std::numbers::pi);
}

/// Depth of a flat round room.
///
/// unit: cubic metres and millimetres in, millimetres out
double room_depth(double volume, double half)
{
    return volume * 1e9 / (std::numbers::pi * half * half);
}

/// How far a circuit's screw can be backed out.
double most_turns(const sim::Rig& rig, std::string_view circuit)
{
    const auto found = std::ranges::find_if(rig.controls, [&](const sim::Control& control) {
        return control.part == circuit && control.parameter == "turns";
    });
    return found == rig.controls.end() ? 4.0 : std::max(found->high, 1.0);
}

/// Corners of a line made round, so that hoses look like hoses.
Outline rounded(const Outline& corners, double radius)
{
    Outline line{corners.front()};
    for (std::size_t i = 1; i + 1 < corners.size(); ++i) {
        const Spot in = corners[i - 1] - corners[i];
        const Spot out = corners[i + 1] - corners[i];
        const Spot from = corners[i] + in * (radius / std::hypot(in.x, in.y));
        const Spot to = corners[i] + out * (radius / std::hypot(out.x, out.y));
        constexpr int steps = 7;
        for (int k = 0; k <= steps; ++k) {
            const double t = static_cast<double>(k) / steps;
            line.push_back(from * ((1.0 - t) * (1.0 - t)) + corners[i] * (2.0 * t * (1.0 - t)) +
                           to * (t * t));
        }
    }
    line.push_back(corners.back());
    return line;
}

} // namespace

double TrimmerPlan::shown_travel(double travel, double room)
{
    return room * std::tanh(travel_scale * travel / room);
}

double TrimmerPlan::shown_lever(double lift) const
{
    return shown_travel(lever_gap + lever_ratio * lift, metering_room()) -
           shown_travel(lever_gap, metering_room());
}

TrimmerPlan::TrimmerPlan(const sim::Rig& rig)
{
    const SectionFinder find(rig);
    const double meter_half = sheet_half(find.value("needle", "diaphragm_area") * 1e6);
    metering = {meter_half, 0.0, room_depth(find.value("metering", "volume"), meter_half)};
    dry = {meter_half, 0.0, room_depth(find.value("dry_side", "volume"), meter_half)};
    roof = metering.depth;
    base = -dry.depth - 1.5;
    wall = meter_half + 1.9;
    const double rise =
        find.point("needle", "seat").y - find.point("metering_pinhole", "a").y; // true height
    seat = {meter_half * 0.67, rise};
    seat_bore = find.size("needle", "seat_bore");
    most_lift = find.size("needle", "most_lift");
    lever_ratio = find.value("needle", "lever_ratio");
    lever_gap = std::max(0.0, find.size("needle", "lever_gap"));
    screen_bore = bore_of(find.value("needle", "screen_area"));
    dry_hole = bore_of(find.value("dry_side", "passage"));

    gallery = seat.y + 3.5;
    entry = seat.y + 6.0;
    const double reach = std::abs(find.value("pump_chamber", "reach"));
    const double pump_half = sheet_half(reach * 1e6 / find.value("pump", "full_travel"));
    const double pump_depth = room_depth(find.value("pump_chamber", "volume"), pump_half);
    pump = {pump_half, entry + 1.4 + pump_depth, pump_depth};
    pulse = {pump_half, pump.plane, room_depth(find.value("pulse", "volume"), pump_half)};
    top = pulse.plane + pulse.depth + 1.9;
    pulse_bore = bore_of(find.value("pulse", "passage")) * throat_scale;
    flap_bore = bore_of(find.value("inlet_flap", "area"));
    inlet_flap = pump_half - 1.1;
    outlet_flap = inlet_flap - 4.4;

    horn_bore = find.size("intake", "bore") * throat_scale;
    venturi_bore = find.size("intake", "venturi") * throat_scale;
    idle_stop = find.value("intake", "idle_stop");
    choke_relief = find.value("intake", "choke_relief");
    axis = pump.plane + 0.8 - 0.9 - horn_bore / 2.0; // the pulse passage runs in its roof
    high_turns = most_turns(rig, "high_circuit");
    low_turns = most_turns(rig, "low_circuit");

    tank = find.room("tank");
    tank_view = {tank.middle(), {5.0, floor + 0.9 + tank.height() * tank_scale / 2.0}, tank_scale};
    const Spot tank_low = tank_view(tank.low);
    const Spot tank_high = tank_view(tank.high);
    cap = {tank_view(find.point("cap", "a")).x, tank_high.y};
    vent = {tank_view(find.point("tank_vent", "a")).x, tank_high.y};
    felt = {1.5, 1.1};
    hose_bore = find.size("suction_hose", "bore") * hose_scale;
    const double grommet = tank_high.y - 2.6;
    suction = rounded(
        {{tank_high.x, grommet}, {wall + 2.7, grommet}, {wall + 2.7, entry}, {wall - 0.2, entry}},
        2.2);

    bulb_volume = find.value("bulb", "volume") * 1e9;
    bulb_radius = std::cbrt(1.5 * bulb_volume / std::numbers::pi) * bulb_scale;
    bulb = {-22.6, base - 4.6};
    bulb_line = rounded({{-wall + 0.2, 1.1},
                         {-wall - 1.8, 1.1},
                         {-wall - 1.8, bulb.y - 4.2},
                         {bulb.x + 3.0, bulb.y - 4.2},
                         {bulb.x + 3.0, bulb.y - 1.6}},
                        1.2);
    return_line = rounded({{bulb.x - 3.0, bulb.y - 1.6},
                           {bulb.x - 3.0, bulb.y - 6.9},
                           {tank_low.x - 3.5, bulb.y - 6.9},
                           {tank_low.x - 3.5, grommet - 0.6},
                           {tank_low.x + 1.5, grommet - 0.6}},
                          1.2);
    crossed_bulb_line = rounded({{-wall + 0.2, 1.1},
                                 {-wall - 1.8, 1.1},
                                 {-wall - 1.8, bulb.y - 4.2},
                                 {bulb.x - 3.0, bulb.y - 4.2},
                                 {bulb.x - 3.0, bulb.y - 1.6}},
                                1.2);
    crossed_return_line = rounded({{bulb.x + 3.0, bulb.y - 1.6},
                                   {bulb.x + 3.0, bulb.y - 6.9},
                                   {tank_low.x - 3.5, bulb.y - 6.9},
                                   {tank_low.x - 3.5, grommet - 0.6},
                                   {tank_low.x + 1.5, grommet - 0.6}},
                                  1.2);

    const double swept = find.value("engine", "displacement") * 1e9;
    const double square = std::cbrt(4.0 * swept / std::numbers::pi); // bore equal to stroke
    stroke = square * engine_scale;
    piston_half = square * engine_scale / 2.0;
    rod = 1.5 * stroke;
    crank = {adapter - 6.4, axis - 2.2};
    crank_room = stroke / 2.0 + 1.3;
    cord_length = find.size("recoil", "cord_length");
}

} // namespace scenes
