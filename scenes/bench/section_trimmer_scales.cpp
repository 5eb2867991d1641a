#include "scenes/bench/section_trimmer_parts.hpp"

#include "scenes/view/number.hpp"

namespace scenes {

void draw_scales(const Sheet& sheet, const TrimmerPlan& plan)
{
    const Spot right{plan.wall + 4.0, plan.top + 5.4};
    const Spot left = right - Spot{5.0, 0.0};
    sheet.mesh.stroke({sheet.at(left + Spot{0.0, 0.4}), sheet.at(left), sheet.at(right),
                       sheet.at(right + Spot{0.0, 0.4})},
                      {.colour = sheet.theme().ink_soft, .width = sheet.look.px(1.4F)});
    sheet.note("5 mm", left - Spot{0.6, 0.0}, 12.0, Align::right);
}

void draw_travels_note(const Sheet& sheet, const TrimmerPlan& plan)
{
    const std::string words = "travels " + fixed_text(TrimmerPlan::travel_scale, 0) + ":1";
    sheet.note(words, {plan.wall - 0.2, plan.base - 1.4}, 16.0, Align::right);
}

} // namespace scenes
