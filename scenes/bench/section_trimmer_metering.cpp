#include "scenes/bench/section_mix.hpp"
#include "scenes/bench/section_trimmer_parts.hpp"

#include <algorithm>
#include <cmath>

namespace scenes {
namespace {

constexpr double sheet_half_thick = 0.2;
constexpr double button = 0.5; ///< height of the rivet's head on the diaphragm
constexpr double lever_half = 0.22;
constexpr double needle_half = 1.1;
constexpr double bore_half = 1.5;
constexpr double spring_recess = 1.6;

double lever_height(const TrimmerPlan& plan)
{
    return sheet_half_thick + button +
           TrimmerPlan::shown_travel(plan.lever_gap, plan.metering_room()) + lever_half;
}

double spring_place(const TrimmerPlan& plan)
{
    return plan.hinge() * 0.55;
}

/// Chamber, needle's bore and spring's recess as one space, its floor the diaphragm.
Outline wet_space(const TrimmerPlan& plan, const Outline& line)
{
    const double spring = spring_place(plan);
    Outline space{{plan.metering.half, plan.roof},
                  {plan.seat.x + bore_half, plan.roof},
                  {plan.seat.x + bore_half, plan.seat.y},
                  {plan.seat.x - bore_half, plan.seat.y},
                  {plan.seat.x - bore_half, plan.roof},
                  {spring + 1.1, plan.roof},
                  {spring + 1.1, plan.roof + spring_recess},
                  {spring - 1.1, plan.roof + spring_recess},
                  {spring - 1.1, plan.roof},
                  {-plan.metering.half, plan.roof}};
    space.insert(space.end(), line.begin(), line.end());
    return space;
}

void draw_dry_side(const Sheet& sheet, const TrimmerPlan& plan, const Outline& line)
{
    const double floor = -plan.dry.depth;
    Outline space{{plan.dry.half, floor}, {-plan.dry.half, floor}};
    space.insert(space.end(), line.begin(), line.end());
    sheet.fill(space, Content::air);
    sheet.edge(space);
    const double x = plan.dry.half * 0.3;
    const Outline hole = strip({{x, plan.base - 0.2}, {x, floor + 0.15}}, plan.dry_hole / 2.0);
    sheet.fill(hole, Content::air);
    sheet.walls(hole);
}

/// The seat pressed into the body, with its hole.
void draw_seat(const Sheet& sheet, const TrimmerPlan& plan, bool is_wet)
{
    const double half = plan.seat_bore / 2.0;
    const double top = plan.seat.y + 1.6;
    for (const double side : {-1.0, 1.0}) {
        sheet.solid(
            box_outline(plan.seat + Spot{side * half, 0.0}, {plan.seat.x + side * 1.8, top}),
            Material::metal, side > 0.0);
    }
    const Outline hole = strip({{plan.seat.x, plan.seat.y - 0.1}, {plan.seat.x, top}}, half);
    sheet.fill(hole, is_wet ? Content::fuel : Content::air);
    sheet.walls(hole);
}

void draw_needle(const Sheet& sheet, const TrimmerPlan& plan, double lift)
{
    const Spot tip = plan.seat - Spot{0.0, lift};
    const double half = plan.seat_bore / 2.0;
    const double point = 1.1;
    const double shoulder = -(needle_half - half) * point / half; // the cone goes on as it began
    const double foot = lever_height(plan) + lever_half - plan.seat.y;
    sheet.solid({tip + Spot{0.0, point}, tip + Spot{needle_half, shoulder},
                 tip + Spot{-needle_half, shoulder}},
                Material::elastomer);
    sheet.solid(box_outline(tip + Spot{-needle_half, foot}, tip + Spot{needle_half, shoulder}),
                Material::metal);
}

/// Turns about its hinge as far as the needle's lift asks; the long arm lies over the diaphragm.
void draw_lever(const Sheet& sheet, const TrimmerPlan& plan, double lift, double bend)
{
    const double y = lever_height(plan);
    const Spot hinge{plan.hinge(), y};
    const double turn = lift / (plan.seat.x - hinge.x);
    // The needle's end is on the right: as it goes down, the long arm at the left goes up.
    const Outline arm = turned_about({{-0.6, y + bend - lever_half},
                                      {hinge.x, y - lever_half},
                                      {plan.seat.x + 0.7, y - lever_half},
                                      {plan.seat.x + 0.7, y + lever_half},
                                      {hinge.x, y + lever_half},
                                      {-0.6, y + bend + lever_half}},
                                     hinge, -turn);
    const double spring = spring_place(plan);
    const double foot = y + lever_half + (hinge.x - spring) * turn;
    const double head = plan.roof + spring_recess;
    Outline coil;
    constexpr int turns = 7;
    for (int i = 0; i <= turns; ++i) {
        coil.push_back({spring + (i % 2 == 0 ? -0.75 : 0.75), foot + (head - foot) * i / turns});
    }
    sheet.mesh.stroke(sheet.polygon(coil),
                      {.colour = sheet.theme().ink, .width = sheet.look.px(1.4F)});
    sheet.solid(box_outline({hinge.x - 0.55, y}, {hinge.x + 0.55, plan.roof}), Material::alloy,
                true);
    sheet.mesh.fill(sheet.polygon(arm), sheet.theme().section);
    sheet.edge(arm);
    sheet.mesh.disc(sheet.at(hinge), sheet.pixels(0.42), sheet.theme().solid);
}

double metering_rise(const TrimmerPlan& plan, const MachineView& machine)
{
    const double travel = machine.reading("needle.diaphragm") * 1e3;
    return TrimmerPlan::shown_travel(travel,
                                     travel > 0.0 ? plan.metering_room() : plan.dry.depth - 0.8);
}

/// How much higher than it should the lever's long end stands: bent, or set so.
double lever_bend(const TrimmerPlan& plan, const MachineView& machine)
{
    const double gap = machine.parameter("needle", "lever_gap") * 1e3;
    const double room = plan.metering_room();
    return TrimmerPlan::shown_travel(gap, room) - TrimmerPlan::shown_travel(plan.lever_gap, room);
}

} // namespace

Outline metering_line(const TrimmerPlan& plan, const MachineView& machine)
{
    return sheet_line(plan.metering.half, 0.0, metering_rise(plan, machine));
}

void draw_metering_moving(const Sheet& sheet, const TrimmerPlan& plan, const Moment& moment)
{
    const MachineView& machine = moment.machine;
    const double lift = plan.shown_lift(std::max(0.0, machine.reading("needle.lift") * 1e3));
    const double rise = metering_rise(plan, machine);
    const double liquid = machine.reading("metering.liquid");
    const Outline line = metering_line(plan, machine);
    draw_dry_side(sheet, plan, line);
    const Outline wet = wet_space(plan, line);
    draw_mix(sheet, wet,
             {{-plan.metering.half + 0.8, std::max(rise, 0.0) * 0.7 + 0.3},
              {plan.metering.half - 0.8, plan.roof - 0.1},
              liquid,
              0.0});
    sheet.edge(wet);
    draw_sheet(sheet, line, plan.wall);
    const double top = rise + sheet_half_thick + button;
    sheet.solid({{-0.5, rise - 0.6},
                 {0.5, rise - 0.6},
                 {0.5, rise + 0.2},
                 {1.5, top - 0.15},
                 {1.2, top},
                 {-1.2, top},
                 {-1.5, top - 0.15},
                 {-0.5, rise + 0.2}},
                Material::metal);
    draw_needle(sheet, plan, lift);
    draw_seat(sheet, plan, machine.reading("gallery.liquid") > 0.4);
    draw_lever(sheet, plan, lift, lever_bend(plan, machine));
}

} // namespace scenes
