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

/// A line with its contents and arrows for the flow through it, at the flow's own pace.
struct Line {
    std::string_view id;
    const Outline& middle;
    double bore;      ///< as drawn
    double true_bore; ///< in the machine
    double liquid;
    double flow;
};
void draw_line(const Sheet& sheet, const Line& line, const Moment& moment)
{
    // As much slower on paper as the hose is smaller.
    const double pace = speed_in(line.flow, line.true_bore) * line.bore / line.true_bore;
    const double way = moment.travelled(line.id, pace);
    draw_hose_moving(sheet, line.middle, line.bore, line.liquid, way);
    const double amount = std::abs(line.flow) * 6e7; // mL/min
    if (amount < 0.3) {
        return;
    }
    Outline middle = line.middle;
    if (line.flow < 0.0) {
        std::reverse(middle.begin(), middle.end());
    }
    draw_flow_marks(sheet, middle, 0.35 * std::sqrt(amount / 60.0), std::abs(way),
                    sheet.theme().ink);
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

bool has_crossed_hoses(const MachineView& machine)
{
    return machine.parameter("swapped_suction", "area") > 0.0;
}

void draw_crossed_hoses(const Sheet& sheet, const TrimmerPlan& plan, bool is_open)
{
    const Spot foot = plan.bulb;
    sheet.mesh.fill(sheet.polygon(box_outline(foot + Spot{-5.0, -8.6}, foot + Spot{4.5, -1.7})),
                    sheet.theme().ground);
    const auto draw = [&](const Outline& piece, double bore) {
        const Outline both = strip(piece, bore / 2.0 + hose_wall);
        if (is_open) {
            for (const Polygon& part : sheet.on_page(sheet.polygon(both))) {
                draw_section(sheet.mesh, part, Material::elastomer, sheet.look, sheet.texture());
            }
            sheet.walls(both);
        } else {
            draw_body(sheet, both, Material::elastomer);
        }
    };
    // From outside the whole hose, between carburetor and tank: a cut end would look like a joint.
    draw(stretch(plan.crossed_bulb_line, is_open ? 0.55 : 0.03, 1.0), pipe_bore);
    draw(stretch(plan.crossed_return_line, 0.0, is_open ? 0.35 : 0.93), plan.hose_bore);
}

void draw_hoses_moving(const Sheet& sheet, const TrimmerPlan& plan, const Moment& moment)
{
    const MachineView& machine = moment.machine;
    const bool is_crossed = has_crossed_hoses(machine);
    if (is_crossed) {
        draw_crossed_hoses(sheet, plan, true);
    }
    const double suction_bore = machine.parameter("suction_hose", "bore") * 1e3;
    const double return_bore = machine.parameter("return_hose", "bore") * 1e3;
    draw_line(sheet,
              {"suction", plan.suction, suction_bore * TrimmerPlan::hose_scale, suction_bore,
               machine.reading("suction_hose.liquid"), machine.reading("pickup.flow")},
              moment);
    // The pipe to the bulb has no room of its own: what is in it came from the metering chamber.
    draw_line(sheet,
              {"purge", is_crossed ? plan.crossed_bulb_line : plan.bulb_line, pipe_bore,
               pipe_bore / TrimmerPlan::hose_scale, machine.reading("metering.liquid"),
               is_crossed ? -machine.reading("swapped_discharge.flow")
                          : machine.reading("bulb_suction.flow")},
              moment);
    draw_line(sheet,
              {"return", is_crossed ? plan.crossed_return_line : plan.return_line,
               return_bore * TrimmerPlan::hose_scale, return_bore,
               machine.reading("return_hose.liquid"), machine.reading("return_end.flow")},
              moment);
}

} // namespace scenes
