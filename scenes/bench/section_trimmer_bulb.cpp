#include "scenes/bench/section_mix.hpp"
#include "scenes/bench/section_trimmer_parts.hpp"

#include <algorithm>

namespace scenes {
namespace {

constexpr double valve_place = 3.0; ///< of both valves, from the bulb's middle
constexpr double base = 1.6;
constexpr double hole_half = 0.7;
constexpr double full_flow = 8e-6; ///< m3/s with a valve wide open

} // namespace

void draw_bulb_still(const Sheet& sheet, const TrimmerPlan& plan)
{
    const Spot foot = plan.bulb;
    const double half = plan.bulb_radius + 0.9;
    sheet.solid(box_outline(foot + Spot{-half, -base}, foot + Spot{half, 0.0}), Material::plastic);
}

void draw_bulb_moving(const Sheet& sheet, const TrimmerPlan& plan, const Moment& moment)
{
    const MachineView& machine = moment.machine;
    const Spot foot = plan.bulb;
    const double share = machine.reading("bulb.volume") * 1e9 / plan.bulb_volume;
    const Outline outside = bulb_dome(foot, plan.bulb_radius, share, 0.0);
    const Outline inside = bulb_dome(foot, plan.bulb_radius, share, 0.6);
    double crown = inside.front().y;
    for (const Spot spot : inside) {
        crown = std::max(crown, spot.y);
    }
    draw_mix(sheet, inside,
             {foot + Spot{-plan.bulb_radius * 0.62, 0.2},
              {foot.x + plan.bulb_radius * 0.62, foot.y + 0.2 + 0.72 * (crown - foot.y)},
              machine.reading("bulb.liquid"),
              0.0});
    Outline wall = outside;
    wall.insert(wall.end(), inside.rbegin(), inside.rend());
    sheet.solid(wall, Material::elastomer);

    const bool is_wet = machine.reading("bulb.liquid") > 0.4;
    for (const double side : {-1.0, 1.0}) {
        const double x = foot.x + side * valve_place;
        const Outline hole = strip({{x, foot.y - base}, {x, foot.y}}, hole_half);
        sheet.fill(hole, is_wet ? Content::fuel : Content::air);
        sheet.walls(hole);
    }
    // Suction opens into the bulb, discharge out of it.
    draw_flap(sheet, {.hinge = foot + Spot{valve_place - hole_half - 0.3, 0.2},
                      .length = 2.0 * hole_half + 0.6,
                      .open = flap_share(machine.reading("bulb_suction.flow"), full_flow),
                      .most = 0.7});
    draw_flap(sheet, {.hinge = foot + Spot{-valve_place - hole_half - 0.3, -base + 0.1},
                      .length = 2.0 * hole_half + 0.6,
                      .open = flap_share(machine.reading("bulb_discharge.flow"), full_flow),
                      .most = -0.7});
}

} // namespace scenes
