#include "scenes/bench/section_trimmer_parts.hpp"

namespace scenes {

void draw_block_still(const Sheet& sheet, const TrimmerPlan& plan)
{
    const double wall = plan.wall;
    sheet.solid({{-wall, plan.base + 1.0},
                 {-wall + 1.0, plan.base},
                 {wall - 1.0, plan.base},
                 {wall, plan.base + 1.0},
                 {wall, 0.0},
                 {-wall, 0.0}},
                Material::alloy, true);
    sheet.solid(box_outline({-wall, 0.0}, {wall, plan.pump.plane}), Material::alloy);
    sheet.solid({{-wall, plan.pump.plane},
                 {wall, plan.pump.plane},
                 {wall, plan.top - 1.0},
                 {wall - 1.0, plan.top},
                 {-wall + 1.0, plan.top},
                 {-wall, plan.top - 1.0}},
                Material::alloy, true);
}

} // namespace scenes
