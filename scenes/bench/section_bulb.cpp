#include "scenes/bench/section_parts.hpp"
#include "scenes/bench/section_shared.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace scenes {
namespace {

double foot_of(const SectionPlan& plan)
{
    return plan.lid_top + 7.5;
}

} // namespace

// A dish of depth d and radius a takes pi d a^2 / 2 out of the half ball; a grows with d.
Outline bulb_dome(Spot foot, double radius, double share, double shrink)
{
    const double inner = radius - shrink;
    const double depth = 1.15 * radius * std::clamp(1.0 - share, 0.0, 0.9);
    Outline outline;
    constexpr int steps = 26;
    for (int i = 0; i <= steps; ++i) {
        const double angle = std::numbers::pi * (1.0 - static_cast<double>(i) / steps);
        const double x = inner * std::cos(angle);
        const double dish = std::exp(-std::pow(x / (0.6 * inner), 2.0));
        const double swollen = share > 1.0 ? share : 1.0;
        const double y = std::max(0.0, inner * std::sin(angle) * swollen - depth * dish);
        outline.push_back(foot + Spot{x, y});
    }
    return outline;
}

void draw_bulb_still(const Sheet& sheet, const SectionPlan& plan)
{
    const double foot = foot_of(plan);
    const double half = plan.primer_bore / 2.0;
    const double x = plan.primer_hole.x;
    for (const double side : {-1.0, 1.0}) {
        sheet.solid({{x + side * half, plan.lid_top},
                     {x + side * (half + 0.9), plan.lid_top},
                     {x + side * (half + 0.9), foot - 1.6},
                     {x + side * (plan.bulb_radius + 1.6), foot - 1.6},
                     {x + side * (plan.bulb_radius + 1.6), foot},
                     {x + side * half, foot}},
                    Material::plastic, side > 0.0);
    }
    const Outline line = strip({{x, plan.bowl.high.y}, {x, foot}}, half);
    sheet.fill(line, Content::air);
    sheet.walls(line);
}

void draw_bulb_moving(const Sheet& sheet, const SectionPlan& plan, const Moment& moment)
{
    const double share = moment.machine.reading("bulb.volume") * 1e9 / plan.bulb_volume;
    const Spot foot{plan.primer_hole.x, foot_of(plan)};
    const Outline outside = bulb_dome(foot, plan.bulb_radius, share, 0.0);
    const Outline inside = bulb_dome(foot, plan.bulb_radius, share, 1.1);
    Outline wall = outside;
    wall.insert(wall.end(), inside.rbegin(), inside.rend());
    sheet.fill(inside, Content::air);
    sheet.solid(wall, Material::elastomer);
    // The hole in the crown that the thumb covers.
    const std::size_t crown = outside.size() / 2;
    const double half = plan.bulb_hole_bore / 2.0;
    const Outline hole = box_outline({inside[crown].x - half, inside[crown].y - 0.1},
                                     {inside[crown].x + half, outside[crown].y + 0.1});
    sheet.mesh.fill(sheet.polygon(hole), sheet.theme().ground);
    sheet.walls({hole[0], hole[3], hole[2], hole[1]});
}

} // namespace scenes
