#include "scenes/bench/section_parts.hpp"

#include "scenes/bench/section_shared.hpp"

namespace scenes {

void draw_scales(const Sheet& sheet, const SectionPlan& plan)
{
    const Spot right{plan.end, plan.floor + 3.2};
    const Spot left = right - Spot{10.0, 0.0};
    sheet.mesh.stroke({sheet.at(left + Spot{0.0, 0.8}), sheet.at(left), sheet.at(right),
                       sheet.at(right + Spot{0.0, 0.8})},
                      {.colour = sheet.theme().ink_soft, .width = sheet.look.px(1.4F)});
    sheet.note(bar_words(0.01), left - Spot{1.5, 0.0}, 30.0, Align::right);
}

} // namespace scenes
