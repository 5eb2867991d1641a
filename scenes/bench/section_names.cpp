#include "scenes/bench/section_parts.hpp"

#include "scenes/present/phrase.hpp"
#include "scenes/view/number.hpp"

#include <string>

namespace scenes {
namespace {

std::string bore_text(double millimetres)
{
    return fixed_text(millimetres, 2) + " mm";
}

/// Around tank and feed.
std::vector<Name> supply_names(const SectionPlan& p)
{
    const Spot tank = p.tank_view(p.tank.low);
    const Spot top = p.tank_view(p.tank.high);
    const double right = top.x + 4.0;
    const double left = p.feed - 12.0;
    const double tap = (p.tap_foot + p.neck_foot) / 2.0;
    return {
        {"fuel tank", "1:4", {top.x - 4.0, tank.y + 8.5}, {{right, tank.y + 10.5}}},
        {"tap", "", {p.feed - 3.4, tap}, {{left, tap}}},
        {"cap vent", "", {p.feed, top.y + 2.6}, {{right, top.y + 0.8}}},
        {"filter", "", {p.feed - 3.0, p.filter_foot + 3.1}, {{left, p.filter_foot + 2.6}}},
        {"outlet screen", "", {p.feed + p.tap_bore / 2.0, tank.y + 1.6}, {{right, tank.y + 3.4}}},
        {"hose",
         "",
         {p.feed - p.hose_bore / 2.0 - 0.8, p.filter_foot - 2.8},
         {{left, p.filter_foot - 3.2}}},
    };
}

/// Around the bowl.
std::vector<Name> bowl_names(const SectionPlan& p)
{
    const double left = p.left - 5.0;
    const double open = p.wall + 2.0; // the open space under the air filter
    return {
        {"float", "", p.float_point - Spot{p.float_half - 0.6, 3.0}, {{left, 15.0}, {left, 10.0}}},
        {"needle and seat", "", {p.seat.x - 1.2, p.seat.y - 2.6}, {{left, 21.0}, {left, 19.0}}},
        {"main jet",
         bore_text(p.main.jet_bore),
         p.main.jet + Spot{1.2, -0.9},
         {{open, 8.6}, {open, 7.0}}},
        {"bowl vent",
         "",
         {p.bowl_vent.x, p.lid_top - 2.5},
         {{p.bowl_vent.x - 18.5, p.lid_top + 5.0}}},
        {"primer bulb",
         "",
         {p.primer_hole.x + 0.94 * p.bulb_radius, p.lid_top + 11.2},
         {{p.primer_hole.x + p.bulb_radius + 0.6, p.lid_top + 29.5},
          {p.primer_hole.x + p.bulb_radius + 0.6, p.lid_top + 26.0}}},
        {"idle jet", bore_text(p.idle.jet_bore), p.idle.jet + Spot{1.0, -0.9}, {{open, 3.0}}},
        {"gasket", "", {p.left + 1.0, p.gasket}, {{left, 26.4}}},
        {"drain", "", {p.bowl.low.x + 7.0, p.base - 1.2}, {{left, p.base - 0.3}}},
    };
}

/// Around the throat.
std::vector<Name> throat_names(const SectionPlan& p)
{
    const double above = p.idle.outlet() + 12.0;
    const double higher = above + 5.6;
    const double below = p.horn_floor() - 9.0;
    const double roof = p.horn_axis + p.venturi_bore / 2.0;
    return {
        {"nozzle lip",
         "",
         {p.nozzle + 1.7, p.main.outlet() - 0.4},
         {{p.nozzle + 9.0, 2.8}, {p.nozzle + 9.0, below}}},
        {"level zero", "", {p.nozzle + 4.5, p.bowl.low.y + p.bowl.zero}, {{p.nozzle + 9.0, below}}},
        {"choke", "", {p.choke, p.horn_axis}, {{p.choke + 3.0, above}}},
        {"throttle", "", {p.throttle, p.horn_axis}, {{p.throttle + 5.0, above}}},
        {"air filter",
         "",
         {p.mouth - 3.0, p.horn_roof() - 3.0},
         {{p.mouth - 1.5, higher + 5.6}, {p.mouth - 1.5, higher}}},
        {"venturi", "", {p.nozzle + 1.0, roof + 1.5}, {{p.nozzle + 4.5, above}}},
        {"idle passage", "", {p.mouth + 5.0, p.idle_passage()[3].y}, {{p.mouth + 6.5, higher}}},
        {"main well", "", {p.nozzle + 0.6, 5.0}, {{p.nozzle + 9.0, -2.5}}},
        {"runner", "", {p.flange + 1.4, p.horn_floor() - 2.4}, {{p.flange + 2.2, below}}},
        {"idle port", "", {p.throttle + 1.6, p.idle.outlet() + 1.2}, {{p.throttle + 2.4, higher}}},
    };
}

/// A bar of ten millimetres, and what is drawn at another scale.
void draw_scales(const Sheet& sheet, const SectionPlan& plan)
{
    const Spot right{plan.end, plan.floor + 3.2};
    const Spot left = right - Spot{10.0, 0.0};
    sheet.mesh.stroke({sheet.at(left + Spot{0.0, 0.8}), sheet.at(left), sheet.at(right),
                       sheet.at(right + Spot{0.0, 0.8})},
                      {.colour = sheet.theme().ink_soft, .width = sheet.look.px(1.4F)});
    sheet.note("10 mm", left - Spot{1.5, 0.0}, 30.0, Align::right);
    sheet.note(phrase("pull cord 1:20"), {plan.end, plan.high().y - 2.5}, 60.0, Align::right);
    sheet.note(phrase("to engine"), {plan.end - 1.5, plan.horn_axis}, plan.end - plan.flange - 2.5,
               Align::right);
}

/// Where castings are, or words of others.
void keep_parts_clear(NamePlacer& placer, const SectionPlan& p)
{
    const Spot tank = p.tank_view(p.tank.low);
    const Spot top = p.tank_view(p.tank.high);
    placer.keep_clear(tank - Spot{1.5, 1.5}, top + Spot{1.5, 1.5});
    placer.keep_clear({p.feed - 6.5, p.inlet - 6.0}, {p.feed + 13.0, tank.y});
    placer.keep_clear({p.left - 2.0, p.base}, {p.wall + 0.8, p.lid_top + 0.5});
    placer.keep_clear({p.mouth - 6.0, p.horn_floor() - 5.0}, {p.end, p.horn_roof() + 8.0});
    placer.keep_clear({p.nozzle - 3.7, p.base}, {p.nozzle + 3.7, p.horn_floor()});
    placer.keep_clear({p.left, p.base}, {p.nozzle, p.bowl.low.y + 0.3});
    const Spot detail = detail_corner(p);
    placer.keep_clear(p.low(), detail + Spot{0.0, 0.6});
    placer.keep_clear({p.low().x, detail.y}, {p.low().x + 16.0, detail.y + 4.5}); // its title
    placer.keep_clear({detail.x, p.floor + 9.5}, {p.left - 4.0, p.floor + 20.0});
    placer.keep_clear({p.end - 30.0, p.high().y - 16.0}, p.high());
    placer.keep_clear({p.end - 25.0, p.low().y}, {p.end, p.floor + 6.0});
}

} // namespace

void draw_names(const Sheet& sheet, const SectionPlan& plan, NamePass pass)
{
    if (pass == NamePass::words) {
        draw_scales(sheet, plan);
    }
    NamePlacer placer(sheet, plan.low(), plan.high(), pass);
    keep_parts_clear(placer, plan);
    for (const auto& names : {bowl_names(plan), throat_names(plan), supply_names(plan)}) {
        for (const Name& name : names) {
            placer.place(name);
        }
    }
}

} // namespace scenes
