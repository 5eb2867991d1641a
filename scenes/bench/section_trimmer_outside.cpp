#include "scenes/bench/section_trimmer_parts.hpp"

namespace scenes {

void draw_outside_parts(const Sheet& sheet, const TrimmerPlan& plan, const Moment& moment)
{
    const MachineView& machine = moment.machine;
    if (has_crossed_hoses(machine)) {
        draw_crossed_hoses(sheet, plan, false);
    }
    const Outline rest = bulb_dome(plan.bulb, plan.bulb_radius, 1.0, 0.0);
    sheet.mesh.fill(sheet.polygon(rest), sheet.theme().ground);
    const double share = machine.reading("bulb.volume") * 1e9 / plan.bulb_volume;
    draw_body(sheet, bulb_dome(plan.bulb, plan.bulb_radius, share, 0.0), Material::elastomer);
    draw_cap(sheet, plan, machine.control("cap"));
    draw_screws(sheet, plan, moment);
    draw_cord(sheet, plan, machine);
    draw_plumb_line(sheet, {plan.wall + 6.5, plan.high().y - 1.4}, -10.0, moment);
}

} // namespace scenes
