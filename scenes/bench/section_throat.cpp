#include "scenes/bench/section_parts.hpp"
#include "scenes/bench/section_shared.hpp"
#include "scenes/bench/section_wear.hpp"

#include "scenes/view/shapes.hpp"
#include "scenes/view/vector_maths.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace scenes {
namespace {

constexpr double right_angle = std::numbers::pi / 2.0;
constexpr double wall_thickness = 4.0;

void draw_filter_panel(const Sheet& sheet, const SectionPlan& plan)
{
    const Outline panel = box_outline({plan.mouth - 5.0, plan.horn_floor() - 2.0},
                                      {plan.mouth - 1.0, plan.horn_roof() + 0.6});
    draw_section(sheet.mesh, sheet.polygon(panel), Material::pleated_paper, sheet.look,
                 {.origin = sheet.at(panel[0])});
    sheet.edge(panel);
}

/// Depth of a puddle in the round bore for a volume spread over the runner's true length.
///
/// source: area of a shallow circular segment, 4/3 sqrt(2 r) d^1.5 (textbook)
double puddle_depth(const SectionPlan& plan, double volume)
{
    const double length = 170.0;
    const double area = std::max(0.0, volume) / length;
    return std::pow(0.75 * area / std::sqrt(plan.horn_bore), 2.0 / 3.0);
}

/// The space of the throat from a place to where the runner is cut off.
Outline throat_space(const SectionPlan& plan, double from)
{
    Outline space;
    for (const double side : {-1.0, 1.0}) {
        Outline wall;
        for (const Spot spot : throat_wall(plan, side)) {
            if (spot.x >= from) {
                wall.push_back(spot);
            }
        }
        wall.push_back({plan.end - 0.3, plan.horn_axis + side * plan.horn_bore / 2.0});
        if (side < 0.0) {
            space = wall;
        } else {
            space.insert(space.end(), wall.rbegin(), wall.rend());
        }
    }
    return space;
}

float area_of(const std::vector<Polygon>& pieces)
{
    float twice = 0.0F;
    for (const Polygon& piece : pieces) {
        float sum = 0.0F;
        for (std::size_t i = 0; i < piece.size(); ++i) {
            sum += cross_product(piece[i], piece[(i + 1) % piece.size()]);
        }
        twice += std::abs(sum);
    }
    return twice / 2.0F;
}

/// The film as a puddle: its surface is where it covers as much of the section tipped as upright.
void draw_puddle(const Sheet& sheet, const SectionPlan& plan, const Moment& moment)
{
    const double film = moment.machine.reading("runner.film") * 1e9;
    if (film < 2.0) {
        return;
    }
    const Lie lie = lie_of_throat(moment.up);
    const bool runs_to_horn = lie.up.x > 0.15; // then the venturi's waist holds it no longer
    const Polygon space =
        sheet.polygon(throat_space(plan, runs_to_horn ? plan.mouth : plan.nozzle + 4.0));
    const Point down =
        unit_vector({static_cast<float>(-lie.up.x), static_cast<float>(std::max(lie.up.y, 0.02))});
    const float wanted =
        sheet.pixels(puddle_depth(plan, film)) * sheet.pixels(plan.end - plan.nozzle - 13.0);
    float low = 1e9F;
    float high = -1e9F;
    for (const Point point : space) {
        low = std::min(low, dot_product(point, down));
        high = std::max(high, dot_product(point, down));
    }
    HalfPlane plane{{}, down};
    for (int i = 0; i < 14; ++i) {
        const float middle = (low + high) / 2.0F;
        plane.edge = down * middle;
        (area_of(clip(space, plane)) > wanted ? low : high) = middle;
    }
    for (const Polygon& piece : clip(space, plane)) {
        draw_content(sheet.mesh, piece, Content::fuel, sheet.look, sheet.texture());
    }
    for (const auto& [from, to] : stretches_inside(space, plane)) {
        draw_surface(sheet.mesh, from, to, Content::fuel, sheet.look);
    }
}

/// Air comes down past the lid, through the filter and along the throat.
void draw_air(const Sheet& sheet, const SectionPlan& plan, const Moment& moment)
{
    const double entry = (plan.wall + plan.mouth - 5.0) / 2.0;
    sheet.reserve(
        box_outline({entry - 4.0, plan.horn_roof() + 3.0}, {entry + 4.0, plan.horn_roof() + 14.5}));
    const double flow = moment.machine.reading("intake.air_flow") * 1e3; // g/s
    if (flow < 0.02) {
        return;
    }
    const double strength = std::sqrt(flow / 4.0);
    const double way = moment.travelled("air", 26.0 * strength);
    for (const double offset : {-1.0, 1.0}) {
        const double height = plan.horn_axis + offset * plan.horn_bore * 0.27;
        const double throat = plan.horn_axis + offset * plan.venturi_bore * 0.27;
        const double column = entry + offset * 2.0;
        const double radius = 5.0;
        Outline line{{column, plan.horn_roof() + 14.0}};
        for (int i = 0; i <= 8; ++i) {
            const double angle = right_angle * (2.0 + i / 8.0);
            line.push_back({column + radius + radius * std::cos(angle),
                            height + radius + radius * std::sin(angle)});
        }
        line.push_back({plan.choke + 6.0, height});
        add_bend(line, {plan.choke + 7.0, height}, {plan.nozzle - 2.0, throat});
        add_bend(line, {plan.nozzle + 2.0, throat}, {plan.nozzle + 13.0, height});
        line.push_back({plan.end - 2.0, height});
        draw_flow_marks(sheet, line, strength, way, sheet.theme().ink_soft);
    }
}

/// Fuel leaves the lip as a spray in fast air.
void draw_spray(const Sheet& sheet, const SectionPlan& plan, const Moment& moment)
{
    const double flow = moment.machine.reading("main_jet.flow") * 6e7; // mL/min
    const double air = moment.machine.reading("intake.air_flow") * 1e3;
    const double height = moment.machine.reading("nozzle.height") * 1e3;
    if (flow < 0.5 || air < 0.1 || height < plan.main.lip - 4.0) {
        return;
    }
    const int drops = 4 + static_cast<int>(std::min(flow, 24.0));
    for (int i = 0; i < drops; ++i) {
        const double lane = std::fmod(i * 0.618, 1.0);
        const double share = std::fmod(moment.seconds * 1.1 + i * 0.377, 1.0);
        const Spot spot{plan.nozzle + 0.5 + 24.0 * share,
                        plan.main.outlet() + 0.4 + 1.2 * share + (lane - 0.35) * 9.0 * share};
        sheet.mesh.dot(sheet.at(spot), sheet.pixels(0.62) * static_cast<float>(1.15 - 0.6 * share),
                       sheet.theme().fuel_mark);
    }
}

} // namespace

Outline throat_wall(const SectionPlan& plan, double side)
{
    const double bore = plan.horn_axis + side * plan.horn_bore / 2.0;
    const double waist = plan.horn_axis + side * plan.venturi_bore / 2.0;
    Outline wall{{plan.mouth, bore}};
    add_bend(wall, {plan.nozzle - 10.0, bore}, {plan.nozzle - 2.0, waist});
    add_bend(wall, {plan.nozzle + 2.0, waist}, {plan.nozzle + 13.0, bore});
    wall.push_back({plan.flange - 0.5, bore});
    return wall;
}

void draw_throat_still(const Sheet& sheet, const SectionPlan& plan)
{
    Outline roof = throat_wall(plan, 1.0);
    Outline air = throat_wall(plan, -1.0);
    air.insert(air.end(), roof.rbegin(), roof.rend());
    const double top = plan.idle.outlet() + 6.0;
    roof.insert(roof.end(), {{plan.flange - 0.5, top + 2.5},
                             {plan.flange - 3.5, top + 2.5},
                             {plan.flange - 3.5, top},
                             {plan.mouth, top}});
    sheet.fill(air, Content::air);
    sheet.solid(roof, Material::alloy);
    // Runner: cut off where the engine would come, with a gasket at the joint.
    const double floor = plan.horn_floor();
    const double ceiling = plan.horn_roof();
    const double start = plan.flange + 0.5;
    sheet.fill(box_outline({plan.flange - 0.5, floor}, {plan.end, ceiling}), Content::air);
    sheet.solid({{start, floor},
                 {plan.end, floor},
                 {plan.end, floor - wall_thickness + 0.6},
                 {start + 3.0, floor - wall_thickness + 0.6},
                 {start + 3.0, floor - wall_thickness - 2.5},
                 {start, floor - wall_thickness - 2.5}},
                Material::metal, true);
    sheet.solid({{start, ceiling},
                 {plan.end, ceiling},
                 {plan.end, ceiling + wall_thickness - 0.6},
                 {start + 3.0, ceiling + wall_thickness - 0.6},
                 {start + 3.0, top + 2.5},
                 {start, top + 2.5}},
                Material::metal, true);
    sheet.solid(box_outline({plan.flange - 0.5, floor - 6.5}, {start, floor}), Material::gasket);
    sheet.solid(box_outline({plan.flange - 0.5, ceiling}, {start, top + 2.5}), Material::gasket);
}

void draw_throat_moving(const Sheet& sheet, const SectionPlan& plan, const Moment& moment)
{
    draw_puddle(sheet, plan, moment);
    if (!is_filter_out(moment.machine, "intake", "filter_area")) {
        draw_filter_panel(sheet, plan);
    }
    draw_air(sheet, plan, moment);
    draw_spray(sheet, plan, moment);
    const double half = plan.horn_bore / 2.0 - 0.15;
    draw_plate(sheet, {.shaft = {plan.choke, plan.horn_axis},
                       .half = half,
                       .shut = choke_shut(moment.machine),
                       .opening = plan.choke_relief});
    // The linkage of the model: the plate's angle goes with the square of its travel.
    const double travel =
        plan.idle_stop + (1.0 - plan.idle_stop) * moment.machine.reading("governor.opening");
    draw_plate(
        sheet,
        {.shaft = {plan.throttle, plan.horn_axis}, .half = half, .shut = 1.0 - travel * travel});
    const double floor = plan.horn_floor();
    Outline edge = throat_wall(plan, -1.0);
    edge.push_back({plan.end, floor});
    sheet.edge(edge, false);
}

} // namespace scenes
