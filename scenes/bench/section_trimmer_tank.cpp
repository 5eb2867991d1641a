#include "scenes/bench/section_mix.hpp"
#include "scenes/bench/section_trimmer_parts.hpp"
#include "scenes/bench/section_wear.hpp"

#include <algorithm>
#include <cmath>

namespace scenes {
namespace {

constexpr double sheet_thickness = 0.8;
constexpr double vent_flow = 2e-6; ///< m3/s of air or fuel with the valve wide open

/// The slack hose from the grommet to the weight hangs below the straight line between them.
Outline slack_hose(const TrimmerPlan& plan, Spot weight, const sim::Vector& up)
{
    const Spot from = plan.suction.front() - Spot{0.4, 0.0};
    const double reach = distance(from, weight);
    const double sag = std::max(0.0, 15.0 - reach) * 0.3;
    const Spot low = plan.tank_view(plan.tank.low) + Spot{1.0, 1.0};
    const Spot high = plan.tank_view(plan.tank.high) - Spot{1.0, 1.0};
    const Spot hang = (from + weight) * 0.5 - Spot{up.x, up.z} * (2.0 * sag);
    const Spot middle{std::clamp(hang.x, low.x, high.x), std::clamp(hang.y, low.y, high.y)};
    Outline line;
    constexpr int steps = 12;
    for (int i = 0; i <= steps; ++i) {
        const double t = static_cast<double>(i) / steps;
        line.push_back(from * ((1.0 - t) * (1.0 - t)) + middle * (2.0 * t * (1.0 - t)) +
                       weight * (t * t));
    }
    return line;
}

/// Weight with the felt around it; air that it draws shows as bubbles beside.
void draw_pickup(const Sheet& sheet, const TrimmerPlan& plan, const Moment& moment)
{
    const Spot weight = pickup_place(plan, moment.machine);
    const Outline line = slack_hose(plan, weight, moment.up);
    sheet.mesh.stroke(sheet.polygon(line),
                      {.colour = sheet.theme().solid, .width = sheet.pixels(plan.hose_bore + 0.7)});
    draw_plugs(sheet, line, plan.hose_bore, moment.machine.reading("suction_hose.liquid"), 0.0);
    if (is_filter_out(moment.machine, "pickup", "pore")) {
        // The felt lies on the bottom, the weight hangs bare.
        const Spot low = plan.tank_view(plan.tank.low);
        const Spot lost{low.x + 2.6, low.y + 0.8};
        const Outline loose =
            turned_about(box_outline(lost - plan.felt, lost + plan.felt), lost, 0.35);
        draw_section(sheet.mesh, sheet.polygon(loose), Material::pleated_paper, sheet.look,
                     {.origin = sheet.at(lost)});
        sheet.edge(loose);
        sheet.mesh.disc(sheet.at(weight), sheet.pixels(0.75), sheet.theme().solid);
        return;
    }
    const Outline felt = box_outline(weight - plan.felt, weight + plan.felt);
    draw_section(sheet.mesh, sheet.polygon(felt), Material::pleated_paper, sheet.look,
                 {.origin = sheet.at(weight)});
    sheet.edge(felt);
    sheet.mesh.disc(sheet.at(weight), sheet.pixels(0.75), sheet.theme().solid);
}

/// One half of the wall, seen from the bottom's middle: `side` -1 left, 1 right.
void draw_wall(const Sheet& sheet, const TrimmerPlan& plan)
{
    const Spot low = plan.tank_view(plan.tank.low);
    const Spot high = plan.tank_view(plan.tank.high);
    const double t = sheet_thickness;
    sheet.solid({{low.x - t, low.y - t + 1.2},
                 {low.x - t + 1.2, low.y - t},
                 {high.x + t - 1.2, low.y - t},
                 {high.x + t, low.y - t + 1.2},
                 {high.x + t, high.y + t - 1.2},
                 {high.x + t - 1.2, high.y + t},
                 {low.x - t + 1.2, high.y + t},
                 {low.x - t, high.y + t - 1.2}},
                Material::plastic);
}

/// A duckbill in the tank's top: it opens inwards, to let air in.
void draw_vent(const Sheet& sheet, const TrimmerPlan& plan, const Moment& moment)
{
    const Spot foot = plan.vent;
    sheet.solid(box_outline(foot + Spot{-1.1, 0.0}, foot + Spot{1.1, sheet_thickness + 0.9}),
                Material::elastomer);
    const Outline hole = strip({foot, foot + Spot{0.0, sheet_thickness + 0.9}}, 0.35);
    sheet.fill(hole, Content::air);
    sheet.walls(hole);
    const double open = flap_share(std::abs(moment.machine.reading("tank_vent.flow")), vent_flow);
    for (const double side : {-1.0, 1.0}) {
        const Outline lip = strip(
            {foot + Spot{side * 0.7, 0.0}, foot + Spot{side * (0.12 + 0.5 * open), -1.4}}, 0.16);
        sheet.mesh.fill(sheet.polygon(lip), sheet.theme().solid);
    }
}

} // namespace

void draw_cap(const Sheet& sheet, const TrimmerPlan& plan, double loose)
{
    const Spot foot = plan.cap + Spot{0.0, sheet_thickness + 0.1 + 0.9 * loose};
    const Outline cap{foot + Spot{-2.0, 0.0},  foot + Spot{2.0, 0.0},  foot + Spot{2.0, -0.5},
                      foot + Spot{2.8, -0.5},  foot + Spot{2.8, 1.0},  foot + Spot{-2.8, 1.0},
                      foot + Spot{-2.8, -0.5}, foot + Spot{-2.0, -0.5}};
    sheet.solid(turned_about(cap, foot, 0.14 * loose), Material::plastic, true);
}

Spot pickup_place(const TrimmerPlan& plan, const MachineView& machine)
{
    const Spot low = plan.tank_view(plan.tank.low) + plan.felt;
    const Spot high = plan.tank_view(plan.tank.high) - plan.felt;
    const Spot raw = plan.tank_view(
        {machine.reading("pickup.forward") * 1e3, machine.reading("pickup.height") * 1e3});
    return {std::clamp(raw.x, low.x, high.x), std::clamp(raw.y, low.y, high.y)};
}

void draw_tank_still(const Sheet& sheet, const TrimmerPlan& plan)
{
    draw_wall(sheet, plan);
}

void draw_tank_moving(const Sheet& sheet, const TrimmerPlan& plan, const Moment& moment)
{
    const double fill =
        (moment.machine.reading("tank.level") * 1e3 + plan.tank.zero) / plan.tank.height();
    const double volume = plan.tank.width() * plan.tank.height() * plan.tank.depth * 1e-9;
    const double water = moment.machine.reading("tank.water") / volume;
    draw_contained(sheet, plan.tank, plan.tank_view, {fill, water, true}, lie_of_bowl(moment.up));
    sheet.edge(box_outline(plan.tank_view(plan.tank.low), plan.tank_view(plan.tank.high)));
    draw_vent(sheet, plan, moment);
    draw_pickup(sheet, plan, moment);
    draw_cap(sheet, plan, moment.machine.control("cap"));
}

} // namespace scenes
