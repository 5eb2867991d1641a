#include "scenes/bench/section_parts.hpp"

#include "scenes/view/shapes.hpp"

#include <algorithm>
#include <array>

namespace scenes {
namespace {

constexpr double dry = 0.4; ///< a column lower than this is drawn running in from the jet

double length_of(const Outline& line)
{
    double total = 0.0;
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        total += distance(line[i], line[i + 1]);
    }
    return total;
}

/// How far along its passage a column of a height reaches.
///
/// The gallery under the floor belongs to no column: it counts as full once there is any. Past the
/// riser's crest the passage fills in the last millimetre under the outlet.
double reach(const CircuitPlan& circuit, const Outline& line, double height)
{
    const double total = length_of(line);
    const double before = distance(line[0], line[1]) + distance(line[1], line[2]);
    const double riser = circuit.jet.y - line[2].y;
    const double start = std::clamp(height / dry, 0.0, 1.0) * (before + riser + dry);
    if (height <= dry) {
        return start / total;
    }
    const double risen = before + riser + height;
    const double close = circuit.lip - 1.0;
    const double full = before + riser + close;
    if (height <= close) {
        return risen / total;
    }
    return std::min(1.0, (full + (height - close) * (total - full)) / total);
}

/// The screwed-in jet: its bore for its length, the passage's bore below.
void draw_jet(const Sheet& sheet, const SectionPlan& plan, const CircuitPlan& circuit, bool is_wet)
{
    const double half = circuit.jet_bore / 2.0;
    const double wide = circuit.bore / 2.0;
    const double outer = wide + 0.55;
    const double shoulder = circuit.jet.y - circuit.jet_length;
    for (const double side : {-1.0, 1.0}) {
        sheet.solid({circuit.jet + Spot{side * half, 0.0},
                     circuit.jet + Spot{side * outer, 0.0},
                     {circuit.jet.x + side * outer, plan.bowl.low.y - 0.6},
                     {circuit.jet.x + side * wide, plan.bowl.low.y - 0.6},
                     {circuit.jet.x + side * wide, shoulder},
                     {circuit.jet.x + side * half, shoulder}},
                    Material::metal, side > 0.0);
    }
    const Outline hole = strip({circuit.jet, {circuit.jet.x, shoulder}}, half);
    sheet.fill(hole, is_wet ? Content::fuel : Content::air);
    sheet.walls(hole);
}

/// The healthy shut-off level, carried across to the nozzle: what its lip is compared with.
void draw_zero_level(const Sheet& sheet, const SectionPlan& plan)
{
    const double level = plan.bowl.low.y + plan.bowl.zero;
    const std::array<Point, 2> line{sheet.at({plan.bowl.high.x, level}),
                                    sheet.at({plan.nozzle + 6.0, level})};
    dash(sheet.mesh, line, {.colour = sheet.theme().ink_soft, .width = sheet.look.thin()},
         {.on = sheet.look.px(12.0F), .off = sheet.look.px(8.0F), .dot = sheet.look.px(2.5F)});
}

/// The passage's line with its bore, from below the jet to the outlet.
void draw_column(const Sheet& sheet, const CircuitPlan& circuit, Outline line, double height)
{
    const double share = reach(circuit, line, height);
    const Outline both = strip(line, circuit.bore / 2.0);
    sheet.fill(both, Content::air);
    if (share > 0.0) {
        draw_passage(sheet, line, circuit.bore, share);
    }
    sheet.walls(both);
    if (height > dry && height < circuit.lip - 1.0) {
        const Spot foot{line[2].x, circuit.jet.y + height};
        const Spot half{circuit.bore / 2.0, 0.0};
        draw_surface(sheet.mesh, sheet.at(foot - half), sheet.at(foot + half), Content::fuel,
                     sheet.look);
    }
}

/// A passage that lets air into a column.
void draw_bleed(const Sheet& sheet, const Outline& line, double bore)
{
    const Outline hole = strip(line, bore / 2.0);
    sheet.fill(hole, Content::air);
    sheet.walls(hole);
}

/// The circuit with its jet as it is now: one of another size may have been fitted.
CircuitPlan fitted(CircuitPlan circuit, const MachineView& machine, std::string_view jet)
{
    circuit.jet_bore = machine.parameter(jet, "bore") * 1e3;
    return circuit;
}

} // namespace

void draw_circuits_still(const Sheet& sheet, const SectionPlan& plan)
{
    // The nozzle stands up into the venturi; the idle passage crosses the open air in a tube.
    const double outer = plan.main.bore / 2.0 + 0.75;
    const double foot = plan.horn_floor() - 1.0;
    sheet.solid(box_outline({plan.nozzle - outer, foot}, {plan.nozzle + outer, plan.main.outlet()}),
                Material::metal);
    const Outline line = plan.idle_passage();
    const double crest = line[3].y;
    sheet.solid(strip({{plan.wall, crest}, {plan.mouth, crest}}, plan.idle.bore / 2.0 + 0.8),
                Material::metal);
}

void draw_circuits_moving(const Sheet& sheet, const SectionPlan& plan, const Moment& moment)
{
    const double level = moment.machine.reading("bowl.level") * 1e3 + plan.bowl.zero;
    const double main_height = moment.machine.reading("nozzle.height") * 1e3;
    const double idle_height = moment.machine.reading("idle_passage.height") * 1e3;
    const auto moving_part = [&](const CircuitPlan& circuit, const Outline& line, double height) {
        draw_column(sheet, circuit, line, height);
        draw_jet(sheet, plan, circuit, height > 0.1 || level > circuit.jet.y);
    };
    draw_zero_level(sheet, plan);
    draw_bleed(sheet, plan.main_bleed(), plan.main_bleed_bore);
    draw_bleed(sheet, plan.idle_bleed(), plan.idle_bleed_bore);
    moving_part(fitted(plan.main, moment.machine, "main_jet"), plan.main_passage(), main_height);
    moving_part(fitted(plan.idle, moment.machine, "idle_jet"), plan.idle_passage(), idle_height);

    const auto marks = [&](const Outline& line, std::string_view jet, double full, double bore) {
        const double flow = moment.machine.reading(jet) * 6e7; // mL/min
        if (flow > 0.1) {
            draw_flow_marks(sheet, line, 0.9 * flow / full,
                            moment.travelled(jet, speed_in(flow / 6e7, bore)), sheet.theme().ink);
        }
    };
    const Outline main_line = plan.main_passage();
    marks({main_line[1], main_line[2]}, "main_jet.flow", 20.0, plan.main.bore);
    const Outline idle_line = plan.idle_passage();
    marks({idle_line[1], idle_line[2]}, "idle_jet.flow", 6.0, plan.idle.bore);
}

} // namespace scenes
