#include "scenes/bench/section_parts.hpp"

#include "scenes/view/shapes.hpp"

#include <array>

namespace scenes {
namespace {

constexpr double sheet_thickness = 1.0;
constexpr double neck_half = 3.2;

/// One half of the tank's wall: `side` -1 left, 1 right.
Outline half_wall(const SectionPlan& plan, double side)
{
    const Spot low = plan.tank_view(plan.tank.low);
    const Spot high = plan.tank_view(plan.tank.high);
    const double middle = plan.feed;
    const double outlet = middle + side * plan.tap_bore / 2.0;
    const double inner = side < 0.0 ? low.x : high.x;
    const double outer = inner + side * sheet_thickness;
    const double neck = middle + side * neck_half;
    const double under = low.y - sheet_thickness;
    const double over = high.y + sheet_thickness;
    return {{outlet, under},
            {outer - side * 1.5, under},
            {outer, under + 1.5},
            {outer, over - 1.5},
            {outer - side * 1.5, over},
            {neck + side * sheet_thickness, over},
            {neck + side * sheet_thickness, over + 1.2},
            {neck, over + 1.2},
            {neck, high.y},
            {inner, high.y},
            {inner, low.y},
            {outlet, low.y}};
}

/// The strainer over the outlet: fine mesh, drawn broken.
void draw_screen(const Sheet& sheet, const SectionPlan& plan)
{
    const double foot = plan.tank_view(plan.tank.low).y;
    const double half = plan.tap_bore / 2.0;
    const double top = foot + 3.2;
    const Pen pen{.colour = sheet.theme().ink, .width = sheet.look.medium()};
    for (const double x : {plan.feed - half, plan.feed + half}) {
        const std::array<Point, 2> side{sheet.at({x, foot}), sheet.at({x, top})};
        dash(sheet.mesh, side, pen, {.on = sheet.look.px(2.5F), .off = sheet.look.px(2.5F)});
    }
    sheet.edge({{plan.feed - half, top}, {plan.feed + half, top}}, false);
}

} // namespace

void draw_cap(const Sheet& sheet, const SectionPlan& plan, double loose)
{
    const double foot = plan.tank_view(plan.tank.high).y + sheet_thickness + 0.4;
    const double vent = plan.cap_vent_bore / 2.0 * plan.tank_view.scale + 0.25;
    for (const double side : {-1.0, 1.0}) {
        Outline half;
        for (const Spot spot :
             {Spot{vent, 0.9}, Spot{neck_half + 1.6, 0.9}, Spot{neck_half + 1.6, -0.6},
              Spot{neck_half + 2.9, -0.6}, Spot{neck_half + 2.9, 2.1}, Spot{vent, 2.1}}) {
            half.push_back({plan.feed + side * spot.x, foot + spot.y + 1.6 * loose});
        }
        half = turned_about(std::move(half), {plan.feed, foot}, 0.09 * loose);
        sheet.solid(half, Material::plastic, side > 0.0);
    }
}

void draw_tank_still(const Sheet& sheet, const SectionPlan& plan)
{
    sheet.solid(half_wall(plan, -1.0), Material::plastic);
    sheet.solid(half_wall(plan, 1.0), Material::plastic, true);
}

void draw_tank_moving(const Sheet& sheet, const SectionPlan& plan, const Moment& moment)
{
    const double fill =
        (moment.machine.reading("tank.level") * 1e3 + plan.tank.zero) / plan.tank.height();
    const double volume = plan.tank.width() * plan.tank.height() * plan.tank.depth * 1e-9;
    const double water = moment.machine.reading("tank.water") / volume;
    draw_contained(sheet, plan.tank, plan.tank_view, {fill, water, true}, lie_of_bowl(moment.up));
    const Spot low = plan.tank_view(plan.tank.low);
    const Spot high = plan.tank_view(plan.tank.high);
    const double half = plan.tap_bore / 2.0;
    sheet.edge({{plan.feed - half, low.y},
                {low.x, low.y},
                {low.x, high.y},
                {plan.feed - neck_half, high.y}},
               false);
    sheet.edge({{plan.feed + half, low.y},
                {high.x, low.y},
                {high.x, high.y},
                {plan.feed + neck_half, high.y}},
               false);
    draw_screen(sheet, plan);
    draw_cap(sheet, plan, moment.machine.control("cap"));
}

} // namespace scenes
