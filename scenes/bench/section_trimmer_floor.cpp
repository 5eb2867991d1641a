#include "scenes/bench/section_trimmer_parts.hpp"

namespace scenes {

void draw_floor_still(const Sheet& sheet, const TrimmerPlan& plan)
{
    sheet.line({{detail_corner(plan).x + 1.0, plan.floor}, {plan.high().x, plan.floor}});
}

} // namespace scenes
