#include "scenes/bench/section_parts.hpp"
#include "scenes/bench/section_shared.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace scenes {
namespace {

constexpr double hose_thickness = 1.6;
constexpr double filter_half = 5.2;
constexpr double filter_height = 6.2;
constexpr double plug_radius = 2.5;

Spot plug_centre(const SectionPlan& plan)
{
    return {plan.feed, (plan.tap_foot + plan.neck_foot) / 2.0};
}

/// The straight passage between two heights on the feed line.
Outline feed_passage(const SectionPlan& plan, double low, double high)
{
    const double half = plan.tap_bore / 2.0;
    return box_outline({plan.feed - half, low}, {plan.feed + half, high});
}

void draw_feed(const Sheet& sheet, const SectionPlan& plan, double low, double high, bool is_wet)
{
    const Outline passage = feed_passage(plan, low, high);
    sheet.fill(passage, is_wet ? Content::fuel : Content::air);
    sheet.edge({passage[0], passage[3]}, false);
    sheet.edge({passage[1], passage[2]}, false);
}

/// The plug with its bore in line with the feed when open, and the handle beside it likewise.
void draw_tap(const Sheet& sheet, const SectionPlan& plan, double open, bool is_wet)
{
    const Spot centre = plug_centre(plan);
    const double turn = (1.0 - open) * std::numbers::pi / 2.0;
    sheet.solid(circle_outline(centre, plug_radius), Material::metal, true);
    const double half = plan.tap_bore / 2.0 * 0.85;
    const double reach = std::sqrt(plug_radius * plug_radius - half * half);
    const Outline bore = turned_about(
        box_outline(centre - Spot{half, reach}, centre + Spot{half, reach}), centre, turn);
    sheet.fill(bore, is_wet ? Content::fuel : Content::air);
    sheet.edge(bore);

    draw_tap_handle(sheet, plan, open);
}

void draw_filter(const Sheet& sheet, const SectionPlan& plan, double liquid)
{
    const double low = plan.filter_foot + 0.8;
    const double high = plan.filter_foot + filter_height - 0.8;
    const double half = filter_half - 0.8;
    const Outline room = box_outline({plan.feed - half, low}, {plan.feed + half, high});
    sheet.fill(room, Content::air);
    if (liquid > 0.01) {
        sheet.fill(box_outline({plan.feed - half, low},
                               {plan.feed + half, low + (high - low) * std::min(liquid, 1.0)}),
                   Content::fuel);
    }
    const Outline paper =
        box_outline({plan.feed - half, low + 1.2}, {plan.feed + half, high - 1.2});
    draw_section(sheet.mesh, sheet.polygon(paper), Material::pleated_paper, sheet.look,
                 {.origin = sheet.at({paper[0].x, (paper[0].y + paper[2].y) / 2.0})});
    sheet.line(paper, true);
    sheet.edge(room);
}

} // namespace

Spot tap_hub(const SectionPlan& plan)
{
    return plug_centre(plan) + Spot{8.4, 0.0};
}

void draw_tap_handle(const Sheet& sheet, const SectionPlan& plan, double open)
{
    const double turn = (1.0 - open) * std::numbers::pi / 2.0;
    const Spot hub = tap_hub(plan);
    const Outline handle = turned_about({hub + Spot{-0.9, 1.4}, hub + Spot{0.9, 1.4},
                                         hub + Spot{1.3, -7.2}, hub + Spot{-1.3, -7.2}},
                                        hub, turn);
    for (const double way : {-turn, std::numbers::pi / 2.0 - turn}) { // wherever it is turned
        sheet.reserve(turned_about(handle, hub, way));
    }
    sheet.mesh.fill(sheet.polygon(handle), sheet.theme().solid);
    sheet.mesh.disc(sheet.at(hub), sheet.pixels(1.7), sheet.theme().ground);
    sheet.mesh.ring(sheet.at(hub), sheet.pixels(1.7),
                    {.colour = sheet.theme().ink, .width = sheet.look.medium()});
}

void draw_hose_still(const Sheet& sheet, const SectionPlan& plan)
{
    const double half = plan.tap_bore / 2.0;
    for (const double side : {-1.0, 1.0}) {
        const bool is_right = side > 0.0;
        const double inner = plan.feed + side * half;
        // Neck of the tank, body of the tap, nipple between tap and filter.
        const double tank_floor = plan.tank_view(plan.tank.low).y;
        sheet.solid(box_outline({inner, plan.neck_foot}, {inner + side * 1.1, tank_floor - 1.0}),
                    Material::plastic, is_right);
        sheet.solid(box_outline({inner, plan.tap_foot}, {inner + side * 2.9, plan.neck_foot}),
                    Material::metal, is_right);
        sheet.solid(box_outline({inner, plan.filter_foot + filter_height},
                                {inner + side * 1.0, plan.tap_foot}),
                    Material::metal, is_right);
    }
    sheet.solid(box_outline({plan.feed - filter_half, plan.filter_foot},
                            {plan.feed + filter_half, plan.filter_foot + filter_height}),
                Material::plastic);
    sheet.solid(strip(plan.hose_line, plan.hose_bore / 2.0 + hose_thickness), Material::elastomer);
}

void draw_hose_moving(const Sheet& sheet, const SectionPlan& plan, const Moment& moment)
{
    const double liquid = moment.machine.reading("hose.liquid");
    const bool tank_wet = moment.machine.reading("tank.fuel") > 2e-6;
    const bool hose_wet = liquid > 0.05;
    // As far as the tap turns, not as far as it is told to.
    const double open =
        moment.machine.control("tap") * moment.machine.parameter("supply", "tap_travel");
    const Spot centre = plug_centre(plan);
    draw_feed(sheet, plan, centre.y, plan.tank_view(plan.tank.low).y, tank_wet);
    draw_feed(sheet, plan, plan.filter_foot + filter_height - 0.8, centre.y, hose_wet);
    draw_filter(sheet, plan, liquid);
    draw_feed(sheet, plan, plan.filter_foot - 0.2, plan.filter_foot + 0.8, hose_wet);
    draw_tap(sheet, plan, open, tank_wet && (open > 0.0 || hose_wet));
    const double bore = moment.machine.parameter("hose", "bore") * 1e3;
    const double way =
        moment.travelled("hose", speed_in(moment.machine.reading("supply.flow"), bore));
    draw_plugs(sheet, plan.hose_line, bore, liquid, way);
    sheet.walls(strip(plan.hose_line, bore / 2.0));

    const double flow = moment.machine.reading("supply.flow") * 6e7; // mL/min
    if (std::abs(flow) > 0.3) {
        Outline line = plan.hose_line;
        if (flow < 0.0) {
            std::reverse(line.begin(), line.end());
        }
        draw_flow_marks(sheet, line, std::sqrt(std::abs(flow) / 200.0), std::abs(way),
                        sheet.theme().ink);
    }
}

} // namespace scenes
