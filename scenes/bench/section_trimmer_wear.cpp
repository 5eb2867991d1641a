#include "scenes/bench/section_mix.hpp"
#include "scenes/bench/section_trimmer_parts.hpp"
#include "scenes/bench/section_wear.hpp"

#include <algorithm>

namespace scenes {
namespace {

void draw_blockages(const Sheet& sheet, const TrimmerPlan& p, const MachineView& machine)
{
    const double dry = p.dry.half * 0.3;
    const Outline pulse = pulse_line(p);
    constexpr double pipe = 0.9;
    constexpr double valve = 3.0;
    const Hole holes[] = {
        {"dry_side", "passage", {{dry, p.base}, {dry, -p.dry.depth}}, p.dry_hole},
        {"pulse", "passage", stretch(pulse, 0.55, 0.8), p.pulse_bore},
        {"inlet_flap",
         "area",
         {{p.inlet_flap, p.entry + 0.8}, {p.inlet_flap, p.pump_floor()}},
         p.flap_bore},
        {"outlet_flap",
         "area",
         {{p.outlet_flap, p.entry}, {p.outlet_flap, p.pump_floor()}},
         p.flap_bore},
        {"high_circuit", "open", stretch(high_passage(p), 0.35, 0.5), pipe},
        {"low_circuit", "open", stretch(low_passage(p), 0.45, 0.6), pipe},
        {"return_end", "area", stretch(p.return_line, 0.55, 0.7), p.hose_bore},
        {"tank_vent", "area", {p.vent, p.vent + Spot{0.0, 1.7}}, 0.7},
    };
    draw_blockages(sheet, machine, holes);
    draw_blockage(sheet, nozzle_check_hole(p), 1.2,
                  shut_share(machine, "high_circuit", "check_area"));
    if (!has_crossed_hoses(machine)) { // else these two valves are only out of use
        const Hole valves[] = {
            {"bulb_suction", "area", stretch(p.bulb_line, 0.15, 0.3), 0.8},
            {"bulb_discharge",
             "area",
             {p.bulb + Spot{-valve, -1.6}, p.bulb + Spot{-valve, 0.0}},
             1.4},
        };
        draw_blockages(sheet, machine, valves);
    }
}

/// Flaps and discs with a nick at their rim, and the pulse's gasket with a gap.
void draw_nicks(const Sheet& sheet, const TrimmerPlan& p, const MachineView& machine)
{
    constexpr double valve = 3.0;
    const auto leak = [&](std::string_view part, std::string_view name) {
        return std::max(0.0, machine.parameter(part, name) - machine.healthy(part, name));
    };
    const auto nick = [&](Spot at, double area) {
        draw_crack(sheet, at - Spot{0.15, 0.45}, at + Spot{0.15, 0.45}, area);
    };
    nick(p.bulb + Spot{valve + 0.7, 0.2}, leak("bulb_suction", "leak"));
    nick(p.bulb + Spot{-valve + 0.7, -1.5}, leak("bulb_discharge", "leak"));
    nick(nozzle_check_hole(p).front() + Spot{0.6, 0.2}, leak("high_circuit", "check_leak"));
    const Spot gasket{p.flange - 0.2, p.pump.plane + 0.8};
    draw_crack(sheet, gasket, gasket + Spot{0.0, 1.3}, leak("pulse", "leak"));
}

/// What old fuel leaves: varnish on the walls of passages and tank.
void draw_varnish(const Sheet& sheet, const TrimmerPlan& p, const MachineView& machine)
{
    const double gum = machine.fuel().gum.si * 1e3;
    draw_film(sheet, stretch(high_passage(p), 0.0, 0.55), 0.9, gum); // up to the screws
    draw_film(sheet, stretch(low_passage(p), 0.0, 0.75), 0.9, gum);
    const Spot low = p.tank_view(p.tank.low);
    const Spot high = p.tank_view(p.tank.high);
    draw_tide_mark(sheet, low, {high.x, (low.y + high.y) / 2.0}, machine);
}

void draw_cracks(const Sheet& sheet, const TrimmerPlan& p, const MachineView& machine)
{
    const auto area = [&](std::string_view part) { return machine.parameter(part, "area"); };
    const Spot hose = p.suction[p.suction.size() / 2];
    const double bore = p.hose_bore / 2.0;
    draw_crack(sheet, hose + Spot{bore, 0.1}, hose + Spot{bore + 0.8, -0.1}, area("hose_wall"));
    const Spot grommet = p.suction.front();
    draw_crack(sheet, grommet + Spot{-0.5, -bore - 0.8}, grommet + Spot{1.3, -bore - 0.9},
               area("grommet"));
    draw_crack(sheet, p.bulb + Spot{-p.bulb_radius - 0.1, 0.8},
               p.bulb + Spot{-p.bulb_radius + 0.8, 0.9}, area("bulb_wall"));
    draw_crack(sheet, {p.wall - 1.6, p.pump.plane}, {p.wall + 0.1, p.pump.plane},
               area("pump_cover"));
    draw_crack(sheet, {p.wall - 2.0, p.base}, {p.wall - 2.0, -p.dry.depth + 0.4}, area("cup_plug"));
    draw_crack(sheet, p.crank - Spot{0.0, p.crank_room}, p.crank - Spot{0.0, p.crank_room + 0.9},
               area("crank_seal"));
    const double under = p.horn_floor() - 2.6;
    draw_crack(sheet, {p.flange - 0.2, under}, {p.flange - 0.2, p.horn_floor()},
               machine.parameter("carburetor_joint", "gap"));
    draw_crack(sheet, {p.adapter + 0.2, under}, {p.adapter + 0.2, p.horn_floor()},
               machine.parameter("adapter_joint", "gap"));
}

} // namespace

void draw_wear(const Sheet& sheet, const TrimmerPlan& p, const Moment& moment)
{
    const MachineView& machine = moment.machine;
    draw_blockages(sheet, p, machine);
    draw_cracks(sheet, p, machine);
    draw_nicks(sheet, p, machine);
    draw_varnish(sheet, p, machine);
    const Outline pump = pump_line(p, machine);
    const Outline metering = metering_line(p, machine);
    draw_stiffness(sheet, pump, growth(machine, "pump", "stiffness"));
    draw_stiffness(sheet, metering, growth(machine, "needle", "stiffness"));
    draw_pinhole(sheet, pump, 0.35, machine.parameter("pump_pinhole", "area"));
    draw_pinhole(sheet, metering, 0.35, machine.parameter("metering_pinhole", "area"));
    draw_dirt(sheet, {p.seat.x - 1.8, p.gallery - 1.1}, {p.seat.x + 1.8, p.gallery - 0.5},
              shut_share(machine, "needle", "screen_area"));
    draw_dirt(sheet, {p.mouth + 0.4, p.horn_floor() - 0.5}, {p.mouth + 1.8, p.horn_roof() + 0.4},
              shut_share(machine, "intake", "filter_open"));
    const Spot felt = pickup_place(p, machine);
    draw_dirt(sheet, felt - p.felt, felt + p.felt, shut_share(machine, "pickup", "felt_area"));
    const Spot screen{p.flange + 0.4, exhaust_height(p)};
    draw_dirt(sheet, screen - Spot{0.3, 0.9}, screen + Spot{0.2, 0.9},
              shut_share(machine, "transfer", "exhaust_area"));
    if (machine.parameter("needle", "dirt") > 0.0) {
        sheet.mesh.disc(sheet.at(p.seat + Spot{-p.seat_bore * 0.4, -0.1}),
                        std::max(sheet.look.px(1.5F), sheet.pixels(0.22)), sheet.theme().solid);
    }
    draw_crack(sheet, p.seat + Spot{p.seat_bore / 2.0, -0.1},
               p.seat + Spot{p.seat_bore / 2.0 + 0.4, 0.5},
               machine.parameter("needle", "seat_leak"));
}

} // namespace scenes
