#include "scenes/bench/section_parts.hpp"
#include "scenes/bench/section_shared.hpp"

namespace scenes {
namespace {

/// Fuel that stands at the lip with no air to carry it runs down the nozzle.
void draw_spill(const Sheet& sheet, const SectionPlan& plan, const Moment& moment)
{
    const double over = moment.machine.reading("nozzle.height") * 1e3 - plan.main.lip;
    const double air = moment.machine.reading("intake.air_flow") * 1e3;
    if (over < -0.25 || air > 0.35) {
        return;
    }
    const double waist = plan.horn_axis - plan.venturi_bore / 2.0;
    const double outer = plan.main.bore / 2.0 + 1.5;
    draw_drops(sheet, {plan.nozzle + outer, plan.main.outlet() + 0.4}, waist + 0.3, moment.seconds);
    // Bead on the lip, then a film along the throat's floor to the runner.
    const Point lip = sheet.at({plan.nozzle, plan.main.outlet()});
    sheet.mesh.disc(lip, sheet.pixels(plan.main.bore * 0.55), sheet.theme().fuel);
    sheet.mesh.ring(lip, sheet.pixels(plan.main.bore * 0.55),
                    {.colour = sheet.theme().fuel_mark, .width = sheet.look.px(1.4F)});
    const Outline floor = throat_wall(plan, -1.0);
    Polygon film;
    for (const Spot spot : floor) {
        if (spot.x > plan.nozzle + outer) {
            film.push_back(sheet.at(spot + Spot{0.0, 0.35}));
        }
    }
    sheet.mesh.stroke(film, {.colour = sheet.theme().fuel_mark, .width = sheet.look.px(2.4F)});
}

} // namespace

void draw_floor_still(const Sheet& sheet, const SectionPlan& plan)
{
    const Spot left{plan.low().x, plan.floor};
    const Spot right{plan.end, plan.floor};
    sheet.reserve(box_outline(left - Spot{0.0, 0.8}, right + Spot{0.0, 0.8}));
    sheet.line({left, right});
}

void draw_floor_moving(const Sheet& sheet, const SectionPlan& plan, const Moment& moment)
{
    draw_spill(sheet, plan, moment);
}

} // namespace scenes
