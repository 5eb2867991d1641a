#include "scenes/bench/section_mix.hpp"
#include "scenes/bench/section_trimmer_parts.hpp"

#include <algorithm>
#include <cmath>

namespace scenes {
namespace {

constexpr double bore = 0.9;
constexpr double screw_half = 0.8;
constexpr double screw_travel = 1.6; ///< from shut to the end of the control's range, as drawn
constexpr double check_flow = 4e-7;  ///< m3/s with the nozzle's check valve wide open
constexpr double pocket_left = 1.6;  ///< of the low-speed pocket, from the throttle's shaft
constexpr double pocket_right = 1.7;

double step_place(const TrimmerPlan& plan)
{
    return plan.mouth - 2.6;
}

double high_upper(const TrimmerPlan& plan)
{
    return plan.high_line + 1.4;
}

Outline pocket(const TrimmerPlan& plan)
{
    return box_outline({plan.throttle - pocket_left, plan.horn_floor() - 1.7},
                       {plan.throttle + pocket_right, plan.horn_floor() - 0.8});
}

/// A needle screw that lies along a passage: `way` -1 points left, 1 right; its tip closes at
/// `tip`.
void draw_screw(const Sheet& sheet, Spot tip, double way, double open, double length)
{
    const Spot end = tip - Spot{way * screw_travel * open, 0.0};
    const auto along = [&](double x, double y) { return end + Spot{-way * x, y}; };
    sheet.solid({along(0.0, 0.0), along(1.5, 0.42), along(1.5, screw_half),
                 along(length, screw_half), along(length, 1.2), along(length + 1.1, 1.2),
                 along(length + 1.1, -1.2), along(length, -1.2), along(length, -screw_half),
                 along(1.5, -screw_half), along(1.5, -0.42)},
                Material::metal);
    sheet.mesh.stroke({sheet.at(along(length + 0.5, 0.0)), sheet.at(along(length + 1.2, 0.0))},
                      {.colour = sheet.theme().ink, .width = sheet.look.px(2.4F)});
}

void draw_passage_walls(const Sheet& sheet, const Outline& line, double liquid)
{
    draw_plugs(sheet, line, bore, liquid, 0.0);
    sheet.walls(strip(line, bore / 2.0));
}

/// The small disc in the nozzle that falls shut when the engine would suck air back.
void draw_nozzle_check(const Sheet& sheet, const TrimmerPlan& plan, double flow)
{
    const double top = plan.horn_floor() - 0.2;
    const double lift = 0.45 * flap_share(flow, check_flow);
    const Outline room = box_outline({plan.nozzle - 0.9, top - 1.2}, {plan.nozzle + 0.9, top});
    sheet.fill(room, flow > 0.0 ? Content::fuel : Content::air);
    sheet.edge(room);
    const double y = top - 1.2 + 0.2 + lift;
    sheet.mesh.fill(
        sheet.polygon(box_outline({plan.nozzle - 0.75, y - 0.15}, {plan.nozzle + 0.75, y + 0.15})),
        sheet.theme().solid);
}

/// Fuel leaves the nozzle and the low-speed holes as a spray.
void draw_spray(const Sheet& sheet, const TrimmerPlan& plan, Spot from, double flow, double seconds)
{
    if (flow < 0.3 || distance(from, {plan.adapter, from.y}) < 1.0) {
        return;
    }
    const int drops = 3 + static_cast<int>(std::min(flow, 16.0));
    const double reach = from.x - plan.adapter;
    for (int i = 0; i < drops; ++i) {
        const double lane = std::fmod(i * 0.618, 1.0);
        const double share = std::fmod(seconds * 1.3 + i * 0.377, 1.0);
        const Spot spot{from.x - 0.3 - reach * share,
                        from.y + 0.3 + (0.4 + lane * plan.venturi_bore * 0.7) * share};
        sheet.mesh.dot(sheet.at(spot), sheet.pixels(0.34) * static_cast<float>(1.15 - 0.6 * share),
                       sheet.theme().fuel_mark);
    }
}

} // namespace

Outline high_passage(const TrimmerPlan& plan)
{
    const double begin = -plan.metering.half * 0.45;
    const double step = step_place(plan);
    return {
        {begin, plan.roof - 0.1},        {begin, plan.high_line},
        {step, plan.high_line},          {step, high_upper(plan)},
        {plan.nozzle, high_upper(plan)}, {plan.nozzle, plan.axis - plan.venturi_bore / 2.0 + 0.9}};
}

Outline nozzle_check_hole(const TrimmerPlan& plan)
{
    const double foot = plan.horn_floor() - 1.4;
    return {{plan.nozzle, foot}, {plan.nozzle, foot + 1.2}};
}

Outline low_passage(const TrimmerPlan& plan)
{
    const double begin = -plan.metering.half * 0.75;
    return {{begin, plan.roof - 0.1},
            {begin, plan.low_line},
            {plan.throttle, plan.low_line},
            {plan.throttle, plan.horn_floor() - 1.6}};
}

void draw_screws(const Sheet& sheet, const TrimmerPlan& plan, const Moment& moment)
{
    const MachineView& machine = moment.machine;
    draw_screw(sheet, {step_place(plan) - 1.2, high_upper(plan)}, -1.0,
               machine.parameter("high_circuit", "turns") / plan.high_turns, 4.0);
    draw_screw(sheet, {plan.throttle + 0.9, plan.low_line}, 1.0,
               machine.parameter("low_circuit", "turns") / plan.low_turns, 5.2);
}

void draw_circuits_still(const Sheet& sheet, const TrimmerPlan& plan)
{
    // The passages cross the open air under the filter in tubes.
    for (const double y : {plan.high_line, plan.low_line}) {
        sheet.solid(strip({{-plan.wall, y}, {plan.mouth, y}}, bore / 2.0 + 0.35), Material::metal);
    }
}

void draw_circuits_moving(const Sheet& sheet, const TrimmerPlan& plan, const Moment& moment)
{
    const MachineView& machine = moment.machine;
    const double liquid = machine.reading("metering.liquid");
    draw_passage_walls(sheet, low_passage(plan), liquid);
    draw_passage_walls(sheet, high_passage(plan), liquid);
    const Outline room = pocket(plan);
    sheet.fill(room, liquid > 0.4 ? Content::fuel : Content::air);
    sheet.edge(room);
    const double top = plan.horn_floor();
    for (const double x : {-1.2, 0.5, 1.2}) { // behind the shut plate, and before it
        const Outline hole =
            strip({{plan.throttle + x, top - 0.9}, {plan.throttle + x, top + 0.15}}, 0.16);
        sheet.mesh.fill(sheet.polygon(hole), liquid > 0.4 ? sheet.theme().fuel : sheet.theme().air);
        sheet.walls(hole);
    }
    const double high_flow = machine.reading("high_circuit.flow");
    draw_nozzle_check(sheet, plan, high_flow);
    draw_screws(sheet, plan, moment);
    draw_spray(sheet, plan, high_passage(plan).back(), high_flow * 6e7, moment.seconds);
    draw_spray(sheet, plan, {plan.throttle - 1.2, top}, machine.reading("low_circuit.flow") * 6e7,
               moment.seconds);
}

} // namespace scenes
