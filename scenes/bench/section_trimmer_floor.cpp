#include "scenes/bench/section_trimmer_parts.hpp"

#include <algorithm>
#include <cmath>

namespace scenes {
namespace {

constexpr double least_leak = 2e-10; ///< m3/s that shows as drops

/// A leak to the outside: where it shows and which reading tells it.
struct Leak {
    std::string_view flow;
    Spot from;
};

} // namespace

void draw_floor_still(const Sheet& sheet, const TrimmerPlan& plan)
{
    sheet.line({{detail_corner(plan).x + 1.0, plan.floor}, {plan.high().x, plan.floor}});
}

void draw_floor_moving(const Sheet& sheet, const TrimmerPlan& plan, const Moment& moment)
{
    const double spilt = moment.machine.reading("floor.fuel") * 1e6; // mL
    if (spilt > 0.05) {
        const double half = std::min(20.0, 2.5 + 2.5 * std::sqrt(spilt));
        const double deep = std::min(0.7, 0.35 + 0.005 * spilt);
        const double middle = plan.tank_view.to.x;
        const Outline pool{{middle - half, plan.floor},
                           {middle - half + 0.8, plan.floor + deep},
                           {middle + half - 0.8, plan.floor + deep},
                           {middle + half, plan.floor}};
        sheet.mesh.fill(sheet.polygon(pool), sheet.theme().fuel);
        sheet.mesh.stroke(sheet.polygon(pool),
                          {.colour = sheet.theme().fuel_mark, .width = sheet.look.px(1.4F)});
    }
    const Spot hose = plan.suction[plan.suction.size() / 2];
    const double hole = plan.dry.half * 0.3;
    const Leak leaks[] = {{"cap.flow", plan.cap + Spot{-3.2, 0.8}},
                          {"grommet.flow", plan.suction.front() + Spot{1.6, -1.4}},
                          {"hose_wall.flow", hose + Spot{1.6, 0.0}},
                          {"bulb_wall.flow", plan.bulb + Spot{-plan.bulb_radius - 0.4, 0.6}},
                          {"metering_pinhole.flow", {hole, plan.base}},
                          {"cup_plug.flow", {plan.wall - 2.0, plan.base}},
                          {"pump_cover.flow", {plan.wall + 0.6, plan.pump.plane}},
                          {"crank_seal.flow", plan.crank - Spot{0.0, plan.crank_room + 1.0}}};
    for (const Leak& leak : leaks) {
        if (moment.machine.reading(leak.flow) > least_leak) {
            draw_drops(sheet, leak.from, plan.floor, moment.seconds);
        }
    }
    // The vent lets air in; what comes the other way is fuel.
    if (moment.machine.reading("tank_vent.flow") < -least_leak) {
        draw_drops(sheet, plan.vent + Spot{1.6, 1.6}, plan.floor, moment.seconds);
    }
}

} // namespace scenes
