#include "scenes/bench/section_parts.hpp"

namespace scenes {

Spot cord_guide(const SectionPlan& plan)
{
    return plan.cord_eye();
}

void draw_cord_still(const Sheet& sheet, const SectionPlan& plan)
{
    const Spot eye = cord_guide(plan);
    sheet.solid(box_outline(eye + Spot{0.0, -3.2}, eye + Spot{2.2, -0.7}), Material::metal);
    sheet.solid(box_outline(eye + Spot{0.0, 0.7}, eye + Spot{2.2, 3.2}), Material::metal);
    sheet.mesh.stroke({sheet.at(eye + Spot{0.0, 0.0}), sheet.at(eye + Spot{6.5, 0.0})},
                      {.colour = sheet.theme().ink, .width = sheet.look.medium()});
}

void draw_cord_moving(const Sheet& sheet, const SectionPlan& plan, const Moment& moment)
{
    const double out = moment.machine.cord_out(plan.cord_length * 1e-3) * 1e3 * cord_reduction;
    const Spot hand = cord_guide(plan) - Spot{out + 1.2, 0.0};
    sheet.mesh.stroke({sheet.at(cord_guide(plan)), sheet.at(hand)},
                      {.colour = sheet.theme().ink, .width = sheet.look.medium()});
    const Outline grip{hand + Spot{0.0, 1.0},   hand + Spot{-0.6, 3.6},  hand + Spot{-2.6, 3.6},
                       hand + Spot{-2.6, -3.6}, hand + Spot{-0.6, -3.6}, hand + Spot{0.0, -1.0}};
    sheet.solid(grip, Material::elastomer);
}

} // namespace scenes
