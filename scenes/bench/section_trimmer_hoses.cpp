#include "scenes/bench/section_trimmer_parts.hpp"

#include <algorithm>
#include <cmath>

namespace scenes {
namespace {

constexpr double hose_wall = 0.7;
constexpr double pipe_bore = 0.8;

void draw_hose_still(const Sheet& sheet, const Outline& line, double bore)
{
    sheet.solid(strip(line, bore / 2.0 + hose_wall), Material::elastomer);
}

void draw_hose_moving(const Sheet& sheet, const Outline& line, double bore, double liquid,
                      double drift)
{
    draw_plugs(sheet, line, bore, liquid, drift);
    sheet.walls(strip(line, bore / 2.0));
}

/// Arrows along a line for a flow through it.
void draw_marks(const Sheet& sheet, Outline line, double flow, double seconds)
{
    const double amount = std::abs(flow) * 6e7; // mL/min
    if (amount < 0.3) {
        return;
    }
    if (flow < 0.0) {
        std::reverse(line.begin(), line.end());
    }
    draw_flow_marks(sheet, line, 0.35 * std::sqrt(amount / 60.0), seconds * 9.0, sheet.theme().ink);
}

} // namespace

void draw_hoses_still(const Sheet& sheet, const TrimmerPlan& plan)
{
    draw_hose_still(sheet, plan.suction, plan.hose_bore);
    draw_hose_still(sheet, plan.bulb_line, pipe_bore);
    draw_hose_still(sheet, plan.return_line, plan.hose_bore);
    // The grommets that hold the hoses in the tank's wall.
    const Spot low = plan.tank_view(plan.tank.low);
    const Spot high = plan.tank_view(plan.tank.high);
    const double half = plan.hose_bore / 2.0 + hose_wall;
    for (const Spot place :
         {Spot{high.x, plan.suction.front().y}, Spot{low.x - 0.8, plan.return_line.back().y}}) {
        for (const double side : {-1.0, 1.0}) {
            sheet.solid(box_outline(place + Spot{-0.5, side * half},
                                    place + Spot{1.3, side * (half + 0.7)}),
                        Material::elastomer, side > 0.0);
        }
    }
}

void draw_hoses_moving(const Sheet& sheet, const TrimmerPlan& plan, const Moment& moment)
{
    const MachineView& machine = moment.machine;
    const double suction = machine.reading("pickup.flow");
    const double drift = std::abs(suction) > 1e-9 ? moment.seconds * 0.25 : 0.0;
    draw_hose_moving(sheet, plan.suction, plan.hose_bore, machine.reading("suction_hose.liquid"),
                     drift);
    draw_marks(sheet, plan.suction, suction, moment.seconds);
    // The pipe to the bulb has no room of its own: what is in it came from the metering chamber.
    const double drawn = machine.reading("bulb_suction.flow");
    draw_hose_moving(sheet, plan.bulb_line, pipe_bore, machine.reading("metering.liquid"), 0.0);
    draw_marks(sheet, plan.bulb_line, drawn, moment.seconds);
    draw_hose_moving(sheet, plan.return_line, plan.hose_bore, machine.reading("return_hose.liquid"),
                     0.0);
    draw_marks(sheet, plan.return_line, machine.reading("return_end.flow"), moment.seconds);
}

} // namespace scenes
