#include "scenes/bench/section_trimmer_parts.hpp"

namespace scenes {

void draw_floor_still(const Sheet& sheet, const TrimmerPlan& plan)
{
    const Spot left{detail_corner(plan).x + 1.0, plan.floor};
    const Spot right{plan.high().x, plan.floor};
    sheet.reserve(box_outline(left - Spot{0.0, 0.4}, right + Spot{0.0, 0.4}));
    sheet.line({left, right});
}

} // namespace scenes
