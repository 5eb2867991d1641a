#include "scenes/bench/section_trimmer_parts.hpp"

#include "scenes/present/phrase.hpp"
#include "scenes/view/number.hpp"

#include <cmath>

namespace scenes {
namespace {

std::string ratio_text(double scale)
{
    return "1:" + fixed_text(1.0 / scale, 0);
}

/// Around pump, needle and metering chamber.
std::vector<Name> carburetor_names(const TrimmerPlan& p)
{
    const double row = p.top + 1.9;
    const double second = row + 3.6;
    const double right = p.wall + 4.2;
    const double left = -p.wall - 1.0;
    return {
        {"pump diaphragm", "", {-1.5, p.pump.plane}, {{-0.5, second}, {-0.5, row}}},
        {"outlet flap", "", {p.outlet_flap, p.entry - 0.2}, {{p.outlet_flap + 0.7, row}}},
        {"inlet flap",
         "",
         {p.inlet_flap + 0.6, p.pump_floor() + 0.2},
         {{right - 2.5, row}, {right - 4.0, row}, {right, row - 3.0}}},
        {"gallery", "", {p.seat.x - 3.0, p.gallery}, {{right, p.gallery + 3.4}}},
        {"screen", "", {p.seat.x + 1.2, p.gallery - 0.9}, {{right, p.gallery - 0.2}}},
        {"needle", "", {p.seat.x + 0.8, p.seat.y - 2.6}, {{right, p.seat.y - 0.4}}},
        {"lever", "", {1.2, 1.4}, {{right, 1.9}}},
        {"metering diaphragm", "", {-p.metering.half + 2.0, 0.1}, {{left, -0.8}}},
        {"pulse chamber",
         "",
         {-p.pulse.half + 1.4, p.pulse.plane + p.pulse.depth - 0.5},
         {{-9.5, second}, {-9.5, row}}},
        {"dry-side hole", "", {p.dry.half * 0.3, p.base + 0.6}, {{right - 3.0, p.base - 1.0}}},
    };
}

/// Around throat and engine.
std::vector<Name> engine_names(const TrimmerPlan& p)
{
    const double row = p.top + 1.9;
    const double second = row + 3.6;
    const double below = p.low_line - 4.2;
    const double high_screw = p.high_line + 1.4;
    return {
        {"choke", "", {p.choke, p.axis + 0.8}, {{p.choke + 1.0, row}}},
        {"throttle", "", {p.throttle, p.axis + 0.8}, {{p.throttle + 1.0, second}}},
        {"low screw", "", {p.flange - 1.4, p.low_line}, {{p.adapter - 1.4, below}}},
        {"high screw",
         "",
         {p.mouth + 0.9, high_screw},
         {{p.mouth - 0.4, below}, {p.mouth - 0.4, below - 2.8}}},
        {"venturi", "", {p.nozzle, p.axis + p.venturi_bore / 2.0 + 0.4}, {{p.nozzle + 1.0, row}}},
        {"adapter", "", {p.adapter + 1.4, p.horn_floor() - 1.4}, {{p.adapter + 0.8, below}}},
        {"crankcase", "", p.crank + Spot{-1.6, -2.8}, {{p.low().x + 2.0, below}}},
        {"exhaust screen", "", {p.flange + 0.4, p.top + 1.4}, {{p.flange + 3.0, second}}},
        {"pulse passage", "", {p.throttle + 1.0, p.pump.plane + 0.8}, {{p.throttle + 2.4, second}}},
        {"air filter", "", {p.mouth + 1.2, p.horn_roof()}, {{p.mouth + 2.2, row}}},
    };
}

/// Around tank, hoses and bulb.
std::vector<Name> supply_names(const TrimmerPlan& p)
{
    const Spot low = p.tank_view(p.tank.low);
    const Spot high = p.tank_view(p.tank.high);
    const double right = high.x + 1.6;
    return {
        {"fuel tank",
         ratio_text(p.tank_scale),
         {high.x - 1.0, low.y + 1.6},
         {{right, low.y + 3.6}}},
        {"purge bulb",
         "",
         p.bulb + Spot{-p.bulb_radius * 0.8, p.bulb_radius * 0.6},
         {{p.bulb.x - p.bulb_radius - 1.0, p.bulb.y + 3.8}}},
        {"suction hose", "", {p.wall + 3.3, -3.0}, {{p.wall + 4.4, -3.6}}},
        {"return hose", "", {low.x - 9.0, p.bulb.y - 6.9}, {{low.x - 8.0, p.bulb.y - 4.6}}},
        {"tank vent", "", p.vent + Spot{0.8, 1.4}, {{right, high.y + 1.6}}},
    };
}

/// Where it is said that travels are drawn enlarged.
Spot travels_note(const TrimmerPlan& p)
{
    return {p.high().x - 0.4, p.base - 2.6};
}

void draw_scales(const Sheet& sheet, const TrimmerPlan& plan)
{
    const Spot right{plan.high().x - 0.4, plan.floor + 1.2};
    const Spot left = right - Spot{5.0, 0.0};
    sheet.mesh.stroke({sheet.at(left + Spot{0.0, 0.4}), sheet.at(left), sheet.at(right),
                       sheet.at(right + Spot{0.0, 0.4})},
                      {.colour = sheet.theme().ink_soft, .width = sheet.look.px(1.4F)});
    sheet.note("5 mm", left - Spot{0.6, 0.0}, 12.0, Align::right);
    sheet.note(filled(phrase("travels {0}:1"), {fixed_text(plan.travel_scale, 0)}),
               travels_note(plan), 16.0, Align::right);
}

/// Where castings are, or words of others.
void keep_parts_clear(NamePlacer& placer, const TrimmerPlan& p)
{
    placer.keep_clear({-p.wall, p.base}, {p.wall, p.top});
    placer.keep_clear({p.adapter - 11.0, p.low_line - 1.6}, {p.mouth + 2.4, p.pump.plane + 2.6});
    placer.keep_clear({p.mouth, p.low_line - 0.8}, {-p.wall, p.high_line + 0.8});
    placer.keep_clear({p.crank.x - 5.0, p.crank.y}, {p.flange + 0.6, p.top + 6.6});
    placer.keep_clear(p.low(), detail_corner(p) + Spot{1.6, 4.6});
    const Spot low = p.tank_view(p.tank.low);
    const Spot high = p.tank_view(p.tank.high);
    placer.keep_clear(low - Spot{0.9, 0.9}, high + Spot{0.9, 1.2});
    placer.keep_clear({p.wall + 1.2, high.y - 4.0}, {p.wall + 4.0, p.entry + 1.4});
    const double half = p.bulb_radius + 0.9;
    placer.keep_clear({p.bulb.x - half, p.bulb.y - 1.7},
                      {p.bulb.x + half, p.bulb.y + p.bulb_radius + 0.3});
    placer.keep_clear({p.bulb.x - 4.0, p.bulb.y - 8.2}, {low.x, p.bulb.y - 5.6});
    placer.keep_clear({p.high().x - 10.0, p.floor}, {p.high().x, p.floor + 2.2});
    placer.keep_clear(travels_note(p) - Spot{11.0, 0.9}, travels_note(p) + Spot{0.0, 0.9});
    placer.keep_clear(pickup_words(p) - Spot{0.0, 1.4}, pickup_words(p) + Spot{12.0, 1.4});
}

} // namespace

void draw_names(const Sheet& sheet, const TrimmerPlan& plan, NamePass pass)
{
    if (pass == NamePass::words) {
        draw_scales(sheet, plan);
    }
    NamePlacer placer(sheet, plan.low(), plan.high(), pass);
    keep_parts_clear(placer, plan);
    for (const auto& names : {carburetor_names(plan), engine_names(plan), supply_names(plan)}) {
        for (const Name& name : names) {
            placer.place(name);
        }
    }
}

} // namespace scenes
