#include "scenes/bench/section_mix.hpp"
#include "scenes/bench/section_trimmer_parts.hpp"

#include "scenes/view/shapes.hpp"

#include <algorithm>
#include <cmath>

namespace scenes {
namespace {

constexpr double full_flow = 2.5e-6; ///< m3/s with a flap wide open, of one stroke's burst
constexpr double passage = 1.6;

/// From the outlet flap to the screen over the seat.
Outline gallery_outline(const TrimmerPlan& plan)
{
    const double low = plan.gallery - passage / 2.0;
    const double high = plan.gallery + passage / 2.0;
    const double left = plan.outlet_flap - 1.6;
    const double right = plan.outlet_flap + 1.6;
    const double well = plan.seat.x - 1.8;
    const double foot = plan.seat.y + 1.6;
    return {{left, low},
            {well, low},
            {well, foot},
            {plan.seat.x + 1.8, foot},
            {plan.seat.x + 1.8, high},
            {right, high},
            {right, plan.entry},
            {left, plan.entry}};
}

void draw_hole(const Sheet& sheet, const TrimmerPlan& plan, double x, double foot, bool is_wet)
{
    const Outline hole = strip({{x, foot}, {x, plan.pump_floor()}}, plan.flap_bore / 2.0);
    sheet.fill(hole, is_wet ? Content::fuel : Content::air);
    sheet.walls(hole);
}

void draw_gallery(const Sheet& sheet, const TrimmerPlan& plan, double liquid)
{
    const Outline space = gallery_outline(plan);
    const double low = plan.gallery - passage / 2.0;
    draw_mix(sheet, space, {space[0], {plan.seat.x + 1.8, low + passage}, liquid, 0.0});
    sheet.edge(space);
    // The inlet screen, fine mesh drawn broken.
    const std::array<Point, 2> mesh{sheet.at({plan.seat.x - 1.8, low - 0.1}),
                                    sheet.at({plan.seat.x + 1.8, low - 0.1})};
    dash(sheet.mesh, mesh, {.colour = sheet.theme().ink, .width = sheet.look.px(2.6F)},
         {.on = sheet.look.px(2.5F), .off = sheet.look.px(2.0F)});
}

void draw_inlet(const Sheet& sheet, const TrimmerPlan& plan, const Moment& moment)
{
    const double liquid = moment.machine.reading("suction_hose.liquid");
    const Outline line{{plan.wall, plan.entry}, {plan.inlet_flap - passage / 2.0, plan.entry}};
    draw_plugs(sheet, line, passage, liquid, 0.0);
    sheet.edge(strip(line, passage / 2.0), false);
    draw_hole(sheet, plan, plan.inlet_flap, plan.entry + passage / 2.0 - 0.2, liquid > 0.4);
}

double pump_rise(const TrimmerPlan& plan, const MachineView& machine)
{
    const double travel = machine.reading("pump.travel") * 1e3;
    const double room = (travel > 0.0 ? plan.pump.depth : plan.pulse.depth) - 0.3;
    return -TrimmerPlan::shown_travel(travel, room);
}

/// A flap that leaks stands off its hole: it has curled.
double curled(const MachineView& machine, std::string_view flap)
{
    const double hole = machine.healthy(flap, "area");
    return hole > 0.0 ? std::clamp(machine.parameter(flap, "leak") / hole, 0.0, 1.0) : 0.0;
}

} // namespace

Outline pump_line(const TrimmerPlan& plan, const MachineView& machine)
{
    return sheet_line(plan.pump.half, plan.pump.plane, pump_rise(plan, machine));
}

void draw_pump_moving(const Sheet& sheet, const TrimmerPlan& plan, const Moment& moment)
{
    const MachineView& machine = moment.machine;
    const double liquid = machine.reading("pump_chamber.liquid");
    const double rise = pump_rise(plan, machine);
    const Outline line = pump_line(plan, machine);

    const double ceiling = plan.pulse.plane + plan.pulse.depth;
    Outline pulse{{plan.pulse.half, ceiling}, {-plan.pulse.half, ceiling}};
    pulse.insert(pulse.end(), line.begin(), line.end());
    sheet.fill(pulse, Content::air);
    Outline chamber{{plan.pump.half, plan.pump_floor()}, {-plan.pump.half, plan.pump_floor()}};
    chamber.insert(chamber.end(), line.begin(), line.end());
    draw_mix(sheet, chamber,
             {{-plan.pump.half + 0.6, plan.pump_floor() + 0.15},
              {plan.pump.half - 0.6, plan.pump.plane + std::min(rise, 0.0) * 0.6 - 0.15},
              liquid,
              0.0});
    draw_inlet(sheet, plan, moment);
    draw_gallery(sheet, plan, machine.reading("gallery.liquid"));
    draw_hole(sheet, plan, plan.outlet_flap, plan.entry, liquid > 0.4);
    sheet.edge(pulse);
    sheet.edge(chamber);
    draw_sheet(sheet, line, plan.wall);

    const double half = plan.flap_bore / 2.0 + 0.5;
    const double lift = plan.pump.depth + rise - 0.5; // what is left over the inlet flap
    draw_flap(sheet, {.hinge = {plan.inlet_flap - half, plan.pump_floor() + 0.2},
                      .length = 2.0 * half,
                      .open = std::max(flap_share(machine.reading("inlet_flap.flow"), full_flow),
                                       curled(machine, "inlet_flap")),
                      .most = std::clamp(lift / (2.0 * half), 0.15, 0.5)});
    draw_flap(sheet, {.hinge = {plan.outlet_flap - half, plan.entry - 0.2},
                      .length = 2.0 * half,
                      .open = std::max(flap_share(machine.reading("outlet_flap.flow"), full_flow),
                                       curled(machine, "outlet_flap")),
                      .most = -0.6});
}

} // namespace scenes
