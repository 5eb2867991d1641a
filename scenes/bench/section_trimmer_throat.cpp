#include "scenes/bench/section_trimmer_parts.hpp"
#include "scenes/bench/section_wear.hpp"

#include <algorithm>
#include <cmath>

namespace scenes {
namespace {

constexpr double joint = 0.4;        ///< thickness of a gasket as drawn
constexpr double gap_per_area = 0.9; ///< millimetres of shown gap at a wide open joint

/// Half the venturi's wall, from mouth to flange: `side` -1 for the floor, 1 for the roof.
Outline throat_wall(const TrimmerPlan& plan, double side)
{
    const double bore = plan.axis + side * plan.horn_bore / 2.0;
    const double waist = plan.axis + side * plan.venturi_bore / 2.0;
    Outline wall{{plan.mouth, bore}};
    add_bend(wall, {plan.nozzle + 2.6, bore}, {plan.nozzle + 0.7, waist});
    add_bend(wall, {plan.nozzle - 0.7, waist}, {plan.nozzle - 2.4, bore});
    wall.push_back({plan.flange, bore});
    return wall;
}

Outline throat_space(const TrimmerPlan& plan)
{
    Outline space = throat_wall(plan, -1.0);
    const Outline roof = throat_wall(plan, 1.0);
    space.insert(space.end(), roof.rbegin(), roof.rend());
    return space;
}

double casting_top(const TrimmerPlan& plan)
{
    return pulse_line(plan).back().y + 1.6;
}

/// Gasket, adapter, gasket: the same section above and below the bore.
void draw_adapter(const Sheet& sheet, const TrimmerPlan& plan)
{
    const double left = plan.adapter;
    const double right = plan.flange - joint;
    for (const double side : {-1.0, 1.0}) {
        const double inner = plan.axis + side * plan.horn_bore / 2.0;
        const double outer = side < 0.0 ? plan.horn_floor() - 2.6 : casting_top(plan);
        sheet.solid(box_outline({left + joint, inner}, {right, outer}), Material::plastic,
                    side > 0.0);
        for (const double x : {right, left}) {
            sheet.solid(box_outline({x, inner}, {x + joint, outer}), Material::gasket);
        }
    }
    sheet.fill(box_outline({left, plan.horn_floor()}, {plan.flange, plan.horn_roof()}),
               Content::air);
}

void draw_filter(const Sheet& sheet, const TrimmerPlan& plan)
{
    const Outline panel = box_outline({plan.mouth + 0.3, plan.horn_floor() - 0.7},
                                      {plan.mouth + 1.9, plan.horn_roof() + 0.6});
    draw_section(sheet.mesh, sheet.polygon(panel), Material::pleated_paper, sheet.look,
                 {.origin = sheet.at(panel[0])});
    sheet.edge(panel);
}

/// Air comes down past the pump, through the filter and along the throat.
void draw_air(const Sheet& sheet, const TrimmerPlan& plan, const Moment& moment)
{
    sheet.reserve(box_outline({plan.mouth + 2.4, plan.horn_roof() + 0.8},
                              {plan.mouth + 4.2, plan.horn_roof() + 3.8}));
    const double flow = moment.machine.reading("intake.air_flow") * 1e3; // g/s
    if (flow < 0.02) {
        return;
    }
    const double way = moment.travelled("air", 16.0 * std::sqrt(flow / 6.0));
    for (const double offset : {-1.0, 1.0}) {
        const double height = plan.axis + offset * plan.horn_bore * 0.22;
        const double throat = plan.axis + offset * plan.venturi_bore * 0.22;
        Outline line{{plan.mouth + 3.3, plan.horn_roof() + 3.4},
                     {plan.mouth + 3.3, height + 1.0},
                     {plan.mouth + 2.3, height}};
        add_bend(line, {plan.nozzle + 2.6, height}, {plan.nozzle + 0.7, throat});
        add_bend(line, {plan.nozzle - 0.7, throat}, {plan.nozzle - 2.4, height});
        line.push_back({plan.adapter - 1.0, height});
        draw_flow_marks(sheet, line, std::sqrt(flow / 6.0) * 0.5, way, sheet.theme().ink_soft);
    }
}

/// Air that a leaking joint lets in.
void draw_leak(const Sheet& sheet, const TrimmerPlan& plan, double x, double flow, double way)
{
    if (std::abs(flow) < 1e-6) { // kg/s
        return;
    }
    Outline line{{x, plan.horn_floor() - 4.6}, {x, plan.horn_floor() + 0.6}};
    if (flow < 0.0) {
        std::reverse(line.begin(), line.end());
    }
    const Outline gap = strip(line, gap_per_area / 2.0);
    sheet.fill(gap, Content::air);
    sheet.walls(gap);
    draw_flow_marks(sheet, line, 0.3, way, sheet.theme().warning);
}

} // namespace

void draw_throat_still(const Sheet& sheet, const TrimmerPlan& plan)
{
    Outline roof = throat_wall(plan, 1.0);
    const double top = casting_top(plan);
    roof.insert(roof.end(), {{plan.flange, top}, {plan.mouth, top}});
    Outline floor = throat_wall(plan, -1.0);
    const double under = plan.low_line - 1.7;
    floor.insert(floor.end(), {{plan.flange, plan.horn_floor() - 2.6},
                               {plan.flange + 1.6, plan.horn_floor() - 2.6},
                               {plan.flange + 1.6, under},
                               {plan.mouth, under}});
    sheet.solid(roof, Material::alloy);
    sheet.solid(floor, Material::alloy);
    draw_adapter(sheet, plan);
}

void draw_throat_moving(const Sheet& sheet, const TrimmerPlan& plan, const Moment& moment)
{
    const MachineView& machine = moment.machine;
    sheet.fill(throat_space(plan), Content::air);
    if (!is_filter_out(machine, "intake", "filter_area")) {
        draw_filter(sheet, plan);
    }
    draw_air(sheet, plan, moment);
    const double half = plan.horn_bore / 2.0 - 0.1;
    draw_plate(sheet, {.shaft = {plan.choke, plan.axis},
                       .half = half,
                       .thick = 0.3,
                       .shut = choke_shut(machine),
                       .opening = plan.choke_relief});
    // The linkage of the model: the plate's angle goes with the square of its travel.
    const double travel =
        plan.idle_stop + (1.0 - plan.idle_stop) * machine.reading("throttle.opening");
    draw_plate(sheet, {.shaft = {plan.throttle, plan.axis},
                       .half = half,
                       .thick = 0.3,
                       .shut = 1.0 - travel * travel});
    sheet.edge(throat_wall(plan, -1.0), false);
    sheet.edge(throat_wall(plan, 1.0), false);
    draw_leak(sheet, plan, plan.flange - joint / 2.0, machine.reading("carburetor_joint.air_flow"),
              moment.travelled("carburetor_joint", 8.0));
    draw_leak(sheet, plan, plan.adapter + joint / 2.0, machine.reading("adapter_joint.air_flow"),
              moment.travelled("adapter_joint", 8.0));
}

} // namespace scenes
