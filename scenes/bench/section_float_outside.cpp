#include "scenes/bench/section_parts.hpp"
#include "scenes/bench/section_shared.hpp"

#include <numbers>

namespace scenes {
namespace {

/// A lever on the shaft of a plate: along the bore when the plate is open.
void draw_plate_lever(const Sheet& sheet, Spot shaft, double shut)
{
    const double turn = (1.0 - shut) * std::numbers::pi / 2.0;
    draw_body(sheet,
              turned_about({shaft + Spot{-1.1, -1.1}, shaft + Spot{1.1, -1.1},
                            shaft + Spot{0.8, 9.0}, shaft + Spot{-0.8, 9.0}},
                           shaft, -turn),
              Material::metal);
    sheet.mesh.disc(sheet.at(shaft), sheet.pixels(1.0), sheet.theme().solid);
}

} // namespace

void draw_outside_parts(const Sheet& sheet, const SectionPlan& plan, const Moment& moment)
{
    const MachineView& machine = moment.machine;
    draw_cap(sheet, plan, machine.control("cap"));
    draw_tap_handle(sheet, plan, machine.control("tap"));
    const Spot foot{plan.primer_hole.x, plan.lid_top + 7.5};
    const double share = machine.reading("bulb.volume") * 1e9 / plan.bulb_volume;
    const Outline rest = bulb_dome(foot, plan.bulb_radius, 1.0, 0.0);
    sheet.mesh.fill(sheet.polygon(rest), sheet.theme().ground);
    draw_body(sheet, bulb_dome(foot, plan.bulb_radius, share, 0.0), Material::elastomer);
    draw_plate_lever(sheet, {plan.choke, plan.horn_axis}, choke_shut(machine));
    const double travel =
        plan.idle_stop + (1.0 - plan.idle_stop) * machine.reading("governor.opening");
    draw_plate_lever(sheet, {plan.throttle, plan.horn_axis}, 1.0 - travel * travel);
    draw_cord_still(sheet, plan);
    draw_cord_moving(sheet, plan, moment);
    draw_plumb_line(sheet, {plan.mouth + 2.0, plan.high().y - 2.5}, plan.end - 40.0, moment);
}

} // namespace scenes
