#include "scenes/bench/section_parts.hpp"

#include <algorithm>
#include <cmath>

namespace scenes {
namespace {

/// The inlet: from the hose's end through the lid down to the seat.
void draw_inlet(const Sheet& sheet, const SectionPlan& plan, bool is_wet)
{
    const Spot seat = plan.seat;
    const double half = plan.seat_bore / 2.0;
    const double top = plan.inlet + 1.5;
    const double shelf = plan.bowl.high.y + 1.5;
    for (const double side : {-1.0, 1.0}) {
        sheet.solid({seat + Spot{side * half, 0.0},
                     seat + Spot{side * 3.0, 0.0},
                     {seat.x + side * 3.0, shelf},
                     {seat.x + side * half, shelf}},
                    Material::metal, side > 0.0);
    }
    const Outline space{{plan.left - 1.0, top}, {seat.x + 1.6, top},     {seat.x + 1.6, shelf},
                        {seat.x + half, shelf}, {seat.x + half, seat.y}, {seat.x - half, seat.y},
                        {seat.x - half, shelf}, {plan.left - 1.0, shelf}};
    sheet.fill(space, is_wet ? Content::fuel : Content::air);
    sheet.edge({space.begin(), space.begin() + 5}, false);
    sheet.edge({space.begin() + 5, space.end()}, false);
}

void draw_needle(const Sheet& sheet, const SectionPlan& plan, double lift)
{
    const Spot tip = plan.seat - Spot{0.0, lift};
    const double half = plan.seat_bore / 2.0;
    const double wide = half * 1.9;
    sheet.solid({tip + Spot{0.0, 1.6}, tip + Spot{wide, -1.45}, tip + Spot{-wide, -1.45}},
                Material::elastomer);
    sheet.solid(box_outline(tip + Spot{-wide, -3.7}, tip + Spot{wide, -1.45}), Material::metal);
}

/// Hinge lug, arm and float.
///
/// The float stands as far below its shut place as the lever makes of the needle's lift; where the
/// rig's lever has no room for its hinge the arm is bent, never the two travels.
void draw_float(const Sheet& sheet, const SectionPlan& plan, double lift, double taken)
{
    const Spot hinge = plan.hinge;
    const double drop = lift * plan.lever_ratio;
    const double turn = -drop / (plan.float_point.x - hinge.x);
    const Spot top_left = plan.float_point + Spot{-plan.float_half, 3.4};
    const auto turn_all = [&](Outline outline) {
        return turned_about(std::move(outline), hinge, turn);
    };
    const Outline shell = turn_all(box_outline(plan.float_point - Spot{plan.float_half, 6.2},
                                               plan.float_point + Spot{plan.float_half, 3.4}));
    const Outline inside =
        turn_all(box_outline(plan.float_point - Spot{plan.float_half - 1.1, 5.1},
                             plan.float_point + Spot{plan.float_half - 1.1, 2.3}));
    sheet.solid(shell, Material::plastic);
    sheet.fill(inside, Content::air);
    if (taken > 0.0) { // fuel that has got into it
        const Outline wet = turn_all(box_outline(
            plan.float_point - Spot{plan.float_half - 1.1, 5.1},
            plan.float_point + Spot{plan.float_half - 1.1, -5.1 + 7.4 * std::min(1.0, taken)}));
        sheet.fill(wet, Content::fuel);
    }
    sheet.edge(inside);

    const Spot foot{plan.seat.x, plan.seat.y - 3.7 - lift};
    const Outline ends = turn_all({top_left + Spot{2.0, 0.7}, top_left + Spot{0.0, 0.7}});
    const Outline arm = strip({hinge, foot - Spot{0.0, 0.75}, ends[1], ends[0]}, 0.75);
    sheet.mesh.fill(sheet.polygon(arm), sheet.theme().section);
    sheet.edge(arm);

    const double ceiling = plan.bowl.high.y;
    sheet.solid({{hinge.x - 1.3, ceiling},
                 {hinge.x - 1.3, hinge.y - 1.2},
                 {hinge.x + 1.3, hinge.y - 1.2},
                 {hinge.x + 1.3, ceiling}},
                Material::alloy, true);
    sheet.mesh.disc(sheet.at(hinge), sheet.pixels(0.8), sheet.theme().solid);
}

} // namespace

void draw_float_moving(const Sheet& sheet, const SectionPlan& plan, const Moment& moment)
{
    const double lift = std::max(0.0, moment.machine.reading("needle.lift") * 1e3);
    constexpr double full = 6e-3; // kg that fill the float, as drawn
    draw_float(sheet, plan, lift, moment.machine.parameter("needle", "extra_mass") / full);
    draw_needle(sheet, plan, lift);
    draw_inlet(sheet, plan, moment.machine.reading("hose.liquid") > 0.3);
    const double flow = moment.machine.reading("needle.flow") * 6e7; // mL/min
    if (flow > 0.5 && lift > 0.0) {
        // Fuel that comes in runs down beside the needle.
        const double wide = plan.seat_bore * 0.95 + 0.5;
        for (const double side : {-1.0, 1.0}) {
            const Spot from = plan.seat + Spot{side * wide, -lift * 0.5};
            draw_flow_marks(sheet, {from, from - Spot{0.0, 9.5}}, std::sqrt(flow / 100.0) * 0.4,
                            moment.travelled("needle", std::sqrt(flow) * 3.0),
                            sheet.theme().fuel_mark);
        }
    }
}

} // namespace scenes
