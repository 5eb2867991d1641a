#include "scenes/bench/section_parts.hpp"
#include "scenes/bench/section_shared.hpp"

#include "scenes/view/number.hpp"

#include <algorithm>
#include <cmath>

namespace scenes {
namespace {

/// A leak to the outside: where it shows and which reading tells it.
struct Leak {
    std::string_view flow;
    Spot from;
};

void draw_leaks(const Sheet& sheet, const SectionPlan& plan, const Moment& moment)
{
    const double drain = plan.bowl.low.x + 9.0;
    const Spot hose = plan.hose_line[plan.hose_line.size() / 2] - Spot{3.5, 3.5};
    const Leak leaks[] = {{"bowl_vent.flow", {plan.bowl_vent.x, plan.lid_top + 1.0}},
                          {"bowl_gasket.flow", {plan.left - 1.8, plan.gasket}},
                          {"bowl_drain.flow", {drain, plan.base - 2.0}},
                          {"hose_wall.flow", hose}};
    for (const Leak& leak : leaks) {
        if (moment.machine.reading(leak.flow) > 2e-10) {
            const bool is_on_lid = leak.flow == "bowl_vent.flow";
            draw_drops(sheet, leak.from + Spot{0.0, is_on_lid ? 4.0 : 0.0},
                       is_on_lid ? plan.lid_top : plan.floor, moment.seconds);
        }
    }
}

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
    sheet.line({{plan.low().x + 22.0, plan.floor}, {plan.end, plan.floor}});
}

void draw_floor_moving(const Sheet& sheet, const SectionPlan& plan, const Moment& moment)
{
    const double spilt = moment.machine.reading("floor.fuel") * 1e6; // mL
    if (spilt > 0.05) {
        const double half = std::min(52.0, 5.0 + 5.0 * std::sqrt(spilt));
        const double deep = std::min(1.5, 0.7 + 0.01 * spilt);
        const double middle = plan.wall + 6.0;
        const Outline pool{{middle - half, plan.floor},
                           {middle - half + 2.0, plan.floor + deep},
                           {middle + half - 2.0, plan.floor + deep},
                           {middle + half, plan.floor}};
        sheet.mesh.fill(sheet.polygon(pool), sheet.theme().fuel);
        sheet.mesh.stroke(sheet.polygon(pool),
                          {.colour = sheet.theme().fuel_mark, .width = sheet.look.px(1.4F)});
    }
    draw_leaks(sheet, plan, moment);
    draw_spill(sheet, plan, moment);
    if (moment.machine.reading("runner.film") * 1e9 > 1.0 && spilt > 0.05 &&
        moment.machine.reading("intake.air_flow") * 1e3 < 0.35 &&
        moment.machine.reading("nozzle.height") * 1e3 > plan.main.lip - 0.25) {
        draw_drops(sheet, {plan.mouth - 0.5, plan.horn_floor() - 4.0}, plan.bowl.low.y,
                   moment.seconds);
    }
}

} // namespace scenes
