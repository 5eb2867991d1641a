#include "scenes/bench/section_mix.hpp"
#include "scenes/bench/section_trimmer_parts.hpp"

#include "scenes/view/shapes.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace scenes {
namespace {

constexpr double casting = 0.9;
constexpr double crown = 1.6;      ///< from the piston's pin to its crown
constexpr double reed_flow = 4e-3; ///< kg/s with the reed wide open

double bore_half(const TrimmerPlan& plan)
{
    return plan.piston_half + 0.12;
}

double pin_height(const TrimmerPlan& plan, double angle)
{
    const double arm = plan.stroke / 2.0;
    const double across = arm * std::sin(angle);
    return plan.crank.y + arm * std::cos(angle) + std::sqrt(plan.rod * plan.rod - across * across);
}

double head_height(const TrimmerPlan& plan)
{
    return pin_height(plan, 0.0) + crown + 0.5;
}

/// Lower edge of the exhaust port: the crown at bottom dead centre.
double port_height(const TrimmerPlan& plan)
{
    return pin_height(plan, std::numbers::pi) + crown;
}

/// The duct from the adapter to the reed at the crankcase.
Outline duct(const TrimmerPlan& plan, double thick)
{
    const double end = plan.crank.x + plan.crank_room * 0.9;
    return {{plan.adapter, plan.horn_floor() - thick},
            {end, plan.crank.y - 1.5 - thick},
            {end, plan.crank.y + 1.3 + thick},
            {plan.adapter, plan.horn_roof() + thick}};
}

/// The cylinder from outside, with its cooling fins on the far side of the muffler.
Outline cylinder_outline(const TrimmerPlan& plan)
{
    const double half = bore_half(plan) + casting;
    const double head = head_height(plan);
    const double foot = plan.crank.y + plan.crank_room * 0.7;
    Outline cylinder{{plan.crank.x - half, foot}};
    for (double y = foot + 2.2; y < head + 0.6; y += 1.5) { // cooling fins
        for (const Spot spot : {Spot{-half, y}, Spot{-half - 1.1, y}, Spot{-half - 1.1, y + 0.6},
                                Spot{-half, y + 0.6}}) {
            cylinder.push_back({plan.crank.x + spot.x, spot.y});
        }
    }
    cylinder.insert(cylinder.end(), {{plan.crank.x - half, head + 1.2},
                                     {plan.crank.x + half, head + 1.2},
                                     {plan.crank.x + half, foot}});
    return cylinder;
}

Outline muffler_outline(const TrimmerPlan& plan)
{
    const double left = plan.crank.x + bore_half(plan) + casting;
    return box_outline({left + 0.9, port_height(plan) + 0.4},
                       {plan.flange + 0.6, head_height(plan) - 0.2});
}

/// Crankcase and cylinder as one space, from the piston's crown down or from it up.
void draw_space(const Sheet& sheet, const TrimmerPlan& plan, double crown_height)
{
    const double half = bore_half(plan);
    sheet.fill(circle_outline(plan.crank, plan.crank_room), Content::air);
    const double neck = plan.crank.y + plan.crank_room * 0.6;
    sheet.fill(box_outline({plan.crank.x - half, neck}, {plan.crank.x + half, crown_height}),
               Content::air);
    sheet.fill(
        box_outline({plan.crank.x - half, crown_height}, {plan.crank.x + half, head_height(plan)}),
        Content::vapour);
    Outline walls{{plan.crank.x - half, neck},
                  {plan.crank.x - half, head_height(plan)},
                  {plan.crank.x + half, head_height(plan)},
                  {plan.crank.x + half, neck}};
    sheet.edge(walls, false);
    Outline ring;
    for (int i = 0; i <= 24; ++i) {
        const double angle = std::numbers::pi * (0.5 + 0.24 + 1.52 * i / 24.0);
        ring.push_back(plan.crank + Spot{std::cos(angle), std::sin(angle)} * plan.crank_room);
    }
    sheet.edge(ring, false);
}

void draw_crank(const Sheet& sheet, const TrimmerPlan& plan, double angle)
{
    const Spot pin = plan.crank + Spot{std::sin(angle), std::cos(angle)} * (plan.stroke / 2.0);
    const Spot wrist{plan.crank.x, pin_height(plan, angle)};
    const double half = plan.piston_half;
    sheet.mesh.disc(sheet.at(plan.crank), sheet.pixels(plan.stroke / 2.0 + 0.7),
                    sheet.theme().section);
    sheet.mesh.ring(sheet.at(plan.crank), sheet.pixels(plan.stroke / 2.0 + 0.7),
                    {.colour = sheet.theme().ink, .width = sheet.look.thin()});
    sheet.solid({wrist + Spot{-half, -1.4}, wrist + Spot{-half, crown}, wrist + Spot{half, crown},
                 wrist + Spot{half, -1.4}, wrist + Spot{half - 0.6, -1.4},
                 wrist + Spot{half - 0.6, crown - 0.7}, wrist + Spot{-half + 0.6, crown - 0.7},
                 wrist + Spot{-half + 0.6, -1.4}},
                Material::alloy, true);
    const Outline rod = strip({pin, wrist}, 0.42);
    sheet.mesh.fill(sheet.polygon(rod), sheet.theme().section);
    sheet.edge(rod);
    for (const auto& [spot, radius] :
         {std::pair{pin, 0.75}, std::pair{wrist, 0.55}, std::pair{plan.crank, 0.6}}) {
        sheet.mesh.disc(sheet.at(spot), sheet.pixels(radius), sheet.theme().solid);
    }
}

/// The reed over the intake's end bends into the crankcase.
void draw_reed(const Sheet& sheet, const TrimmerPlan& plan, double flow)
{
    const double end = plan.crank.x + plan.crank_room * 0.9;
    const Spot root{end, plan.crank.y - 1.7};
    const double open = 0.75 * flap_share(flow, reed_flow);
    const Spot tip = root + Spot{-std::sin(open), std::cos(open)} * 3.2;
    sheet.mesh.stroke({sheet.at(root), sheet.at(tip)},
                      {.colour = sheet.theme().solid, .width = sheet.look.px(2.6F)});
}

void draw_muffler(const Sheet& sheet, const TrimmerPlan& plan)
{
    const double low = port_height(plan);
    const double left = plan.crank.x + bore_half(plan) + casting;
    const double right = plan.flange + 0.6;
    sheet.solid(muffler_outline(plan), Material::metal);
    const Outline room =
        box_outline({left + 1.4, low + 0.9}, {right - 0.5, head_height(plan) - 0.7});
    sheet.hollow(room);
    const Outline pipe = strip({{left - casting - 0.1, low + 1.6}, {left + 1.6, low + 1.6}}, 0.7);
    sheet.fill(pipe, Content::air);
    sheet.walls(pipe);
    const Outline outlet =
        strip({{right - 0.6, exhaust_height(plan)}, {right + 0.1, exhaust_height(plan)}}, 0.9);
    sheet.fill(outlet, Content::air);
    const std::array<Point, 2> mesh{sheet.at({right - 0.2, low + 1.8}),
                                    sheet.at({right - 0.2, low + 3.6})};
    dash(sheet.mesh, mesh, {.colour = sheet.theme().ink, .width = sheet.look.px(2.6F)},
         {.on = sheet.look.px(2.5F), .off = sheet.look.px(2.0F)});
}

void draw_plug(const Sheet& sheet, const TrimmerPlan& plan)
{
    const Spot foot{plan.crank.x, head_height(plan)};
    sheet.solid(box_outline(foot + Spot{-0.55, 0.0}, foot + Spot{0.55, 1.6}), Material::metal);
    sheet.solid(box_outline(foot + Spot{-0.35, 1.6}, foot + Spot{0.35, 2.6}), Material::glass);
}

} // namespace

Spot cord_guide(const TrimmerPlan& plan)
{
    return {plan.crank.x - plan.crank_room - casting, plan.crank.y - 4.6};
}

void draw_cord(const Sheet& sheet, const TrimmerPlan& plan, const MachineView& machine)
{
    const double out =
        machine.cord_out(plan.cord_length * 1e-3) * 1e3 * TrimmerPlan::cord_scale * 0.25;
    const Spot guide = cord_guide(plan);
    const Spot hand = guide + Spot{out + 1.0, -1.2};
    sheet.reserve(box_outline(guide + Spot{-0.6, -2.6}, hand + Spot{1.4, 2.8}));
    sheet.mesh.stroke(
        {sheet.at(guide + Spot{1.8, 1.5}), sheet.at(guide + Spot{0.0, -1.2}), sheet.at(hand)},
        {.colour = sheet.theme().ink, .width = sheet.look.medium()});
    sheet.solid(box_outline(hand + Spot{0.0, -1.3}, hand + Spot{0.9, 1.3}), Material::elastomer);
}

double exhaust_height(const TrimmerPlan& plan)
{
    return port_height(plan) + 2.7;
}

std::vector<Body> engine_bodies(const TrimmerPlan& plan)
{
    const Spot plug{plan.crank.x, head_height(plan)};
    return {
        {places_of(duct(plan, 1.1)), Material::alloy},
        {places_of(box_outline(plug + Spot{-0.55, 0.0}, plug + Spot{0.55, 2.6})), Material::metal},
        {places_of(cylinder_outline(plan)), Material::alloy},
        {places_of(circle_outline(plan.crank, plan.crank_room + casting)), Material::alloy},
        {places_of(muffler_outline(plan)), Material::metal}};
}

Outline pulse_line(const TrimmerPlan& plan)
{
    const double y = plan.pump.plane + 0.8;
    const double x = plan.crank.x + bore_half(plan) + casting + 0.3;
    return {{x, plan.crank.y + plan.crank_room * 0.55}, {x, y}, {-plan.pulse.half + 0.3, y}};
}

void draw_engine_still(const Sheet& sheet, const TrimmerPlan& plan)
{
    sheet.solid(circle_outline(plan.crank, plan.crank_room + casting), Material::alloy);
    sheet.solid(cylinder_outline(plan), Material::alloy, true);
    sheet.solid(duct(plan, 1.1), Material::alloy, true);
    draw_plug(sheet, plan);
    draw_muffler(sheet, plan);
}

void draw_pulse_passage(const Sheet& sheet, const TrimmerPlan& plan)
{
    const Outline line = pulse_line(plan);
    // In the open air it is a tube.
    sheet.solid(strip({{-plan.wall, line.back().y}, {plan.mouth, line.back().y}},
                      plan.pulse_bore / 2.0 + 0.35),
                Material::metal);
    const Outline both = strip(line, plan.pulse_bore / 2.0);
    sheet.fill(both, Content::air);
    sheet.walls(both);
}

void draw_engine_moving(const Sheet& sheet, const TrimmerPlan& plan, const Moment& moment)
{
    const MachineView& machine = moment.machine;
    const double angle = machine.reading("engine.crank_angle");
    draw_space(sheet, plan, pin_height(plan, angle) + crown);
    sheet.fill(duct(plan, 0.0), Content::air);
    const Outline sides = duct(plan, 0.0);
    sheet.edge({sides[0], sides[1]}, false);
    sheet.edge({sides[2], sides[3]}, false);
    draw_crank(sheet, plan, angle);
    draw_reed(sheet, plan, machine.reading("reed.air_flow"));
    draw_pulse_passage(sheet, plan);
    // Back and forth, as the crankcase pushes or draws.
    const double push = machine.reading("crankcase.pressure") - machine.reading("pulse.pressure");
    if (std::abs(push) > 200.0) {
        Outline line = pulse_line(plan);
        line.erase(line.begin());
        if (push < 0.0) {
            std::reverse(line.begin(), line.end());
        }
        const double pace = std::sqrt(std::abs(push) / 1e3) * 4.0;
        draw_flow_marks(sheet, line, 0.35, 5.0 + moment.travelled("pulse", pace),
                        sheet.theme().accent);
    }
    draw_cord(sheet, plan, machine);
}

} // namespace scenes
