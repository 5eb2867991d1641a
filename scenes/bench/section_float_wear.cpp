#include "scenes/bench/section_parts.hpp"
#include "scenes/bench/section_wear.hpp"

#include <algorithm>
#include <tuple>

namespace scenes {
namespace {

void draw_blockages(const Sheet& sheet, const SectionPlan& p, const MachineView& machine)
{
    const double lid = p.bowl.high.y;
    const double cap = p.tank_view(p.tank.high).y + 2.3;
    const double crown = p.lid_top + 7.5 + p.bulb_radius;
    const auto down = [](Spot from, double by) { return Outline{from, from - Spot{0.0, by}}; };
    const Hole holes[] = {
        {"bowl_vent", "area", {{p.bowl_vent.x, lid}, {p.bowl_vent.x, p.lid_top}}, p.bowl_vent_bore},
        {"primer_line",
         "area",
         {{p.primer_hole.x, lid}, {p.primer_hole.x, p.lid_top + 6.0}},
         p.primer_bore},
        {"cap_vent",
         "area",
         {{p.feed, cap - 0.6}, {p.feed, cap + 0.9}},
         p.cap_vent_bore * p.tank_view.scale + 0.5},
        {"bulb_hole",
         "area",
         {{p.primer_hole.x, crown - 1.2}, {p.primer_hole.x, crown + 0.1}},
         p.bulb_hole_bore},
        {"main_jet", "open", down(p.main.jet, p.main.jet_length), p.main.jet_bore},
        {"idle_jet", "open", down(p.idle.jet, p.idle.jet_length), p.idle.jet_bore},
        {"nozzle", "bleed_open", p.main_bleed(), p.main_bleed_bore},
        {"idle_passage", "bleed_open", p.idle_bleed(), p.idle_bleed_bore},
    };
    draw_blockages(sheet, machine, holes);
}

void draw_cracks(const Sheet& sheet, const SectionPlan& p, const MachineView& machine)
{
    const auto area = [&](std::string_view part) { return machine.parameter(part, "area"); };
    const std::size_t bend = p.hose_line.size() / 2;
    const Spot hose = p.hose_line[bend];
    const Spot outwards = Spot{-0.7, -0.7};
    const double bore = p.hose_bore / 2.0;
    draw_crack(sheet, hose + outwards * bore, hose + outwards * (bore + 1.7), area("hose_wall"));
    draw_crack(sheet, {p.left - 1.0, p.gasket}, {p.bowl.low.x, p.gasket}, area("bowl_gasket"));
    const double drain = p.bowl.low.x + 9.0 + p.drain_bore / 2.0 + 0.6;
    draw_crack(sheet, {drain, p.bowl.low.y}, {drain, p.base}, area("bowl_drain"));
    const double foot = p.lid_top + 7.5;
    draw_crack(sheet, {p.primer_hole.x - p.bulb_radius - 0.1, foot + 2.0},
               {p.primer_hole.x - p.bulb_radius + 1.3, foot + 2.2}, area("bulb_wall"));
    draw_crack(sheet, {p.flange, p.horn_floor() - 6.4}, {p.flange, p.horn_floor()},
               machine.parameter("joint", "gap"));
}

/// A seat that no longer shuts: a groove across its edge; a speck that holds the needle off.
void draw_seat_wear(const Sheet& sheet, const SectionPlan& p, const MachineView& machine)
{
    const double half = p.seat_bore / 2.0;
    // A seat with another bore: its ring stands in the healthy one's.
    const double bore = machine.parameter("needle", "seat_bore") * 1e3;
    if (bore < 0.98 * p.seat_bore) {
        for (const double side : {-1.0, 1.0}) {
            sheet.solid(
                box_outline(p.seat + Spot{side * bore / 2.0, 0.0}, p.seat + Spot{side * half, 1.2}),
                Material::metal);
        }
    }
    draw_crack(sheet, p.seat + Spot{half, -0.1}, p.seat + Spot{half + 0.5, 0.7},
               machine.parameter("needle", "seat_leak"));
    const double dirt = machine.parameter("needle", "dirt") * 1e3;
    if (dirt > 0.0) {
        sheet.mesh.disc(sheet.at(p.seat + Spot{-half * 0.8, -0.15}),
                        std::max(sheet.look.px(1.5F), sheet.pixels(0.25)), sheet.theme().solid);
    }
}

} // namespace

void draw_wear(const Sheet& sheet, const SectionPlan& p, const Moment& moment)
{
    const MachineView& machine = moment.machine;
    draw_blockages(sheet, p, machine);
    draw_cracks(sheet, p, machine);
    draw_seat_wear(sheet, p, machine);
    const double gum = machine.fuel().gum.si * 1e3;
    for (const auto& [jet, length, bore] :
         {std::tuple{p.main.jet, p.main.jet_length, p.main.jet_bore},
          std::tuple{p.idle.jet, p.idle.jet_length, p.idle.jet_bore}}) {
        draw_film(sheet, {jet, jet - Spot{0.0, length}}, bore, gum);
    }
    // And on the bowl's walls, as high as it stands.
    const double full = p.bowl.low.y + 0.6 * (p.bowl.high.y - p.bowl.low.y);
    for (const double x : {p.bowl.low.x + 0.5, p.bowl.high.x - 0.5}) {
        draw_film(sheet, {{x, p.bowl.low.y}, {x, full}}, 0.8, gum);
    }
    const Spot low = p.tank_view(p.tank.low);
    const Spot high = p.tank_view(p.tank.high);
    draw_tide_mark(sheet, low, {high.x, (low.y + high.y) / 2.0}, machine);
    const double half = p.tap_bore / 2.0;
    const double screen = p.tank_view(p.tank.low).y;
    draw_dirt(sheet, {p.feed - half - 0.4, screen + 0.2}, {p.feed + half + 0.4, screen + 3.6},
              shut_share(machine, "supply", "screen_area"));
    draw_dirt(sheet, {p.feed - 4.2, p.filter_foot + 1.2}, {p.feed + 4.2, p.filter_foot + 5.0},
              shut_share(machine, "supply", "filter_area"));
    draw_dirt(sheet, {p.mouth - 4.8, p.horn_floor() - 1.6}, {p.mouth - 1.2, p.horn_roof()},
              shut_share(machine, "intake", "filter_open"));
}

} // namespace scenes
