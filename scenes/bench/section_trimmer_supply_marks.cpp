#include "scenes/bench/section_trimmer_marks.hpp"

#include "scenes/bench/section_trimmer_parts.hpp"
#include "scenes/view/number.hpp"

// Words and figures of tank, hoses and bulb: the way of the fuel to the carburetor.

namespace scenes {

std::vector<Mark> supply_marks(const TrimmerPlan& p)
{
    const Spot low = p.tank_view(p.tank.low);
    const Spot high = p.tank_view(p.tank.high);
    const double valve = 3.0;
    return {
        {.name = "fuel tank",
         .rank = 1,
         .spot = {high.x - 1.2, low.y + 3.0},
         .half = (high - low) * 0.5,
         .facts = {reading_fact("fuel", "tank.fuel"), reading_fact("water", "tank.water"),
                   reading_fact("pressure", "tank.pressure"),
                   reading_fact("temperature", "tank.temperature")},
         .note = "1:" + fixed_text(1.0 / TrimmerPlan::tank_scale, 0),
         .shows_outside = true},
        {.name = "tank cap",
         .rank = 2,
         .spot = p.cap + Spot{-1.6, 1.2},
         .half = {2.6, 1.0},
         .facts = {reading_fact("fuel out", "cap.flow")},
         .shows_outside = true},
        {.name = "tank vent",
         .rank = 1,
         .spot = p.vent + Spot{0.8, 1.4},
         .half = {1.3, 1.6},
         .facts = {bore_fact("hole", "tank_vent", "area"),
                   value_fact("opens at", "tank_vent", "cracking", "kPa")},
         .shows_outside = true},
        {.name = pickup_name.english(),
         .rank = 1,
         .spot = {p.tank_view.to.x, low.y + p.felt.y},
         .half = p.felt,
         .facts = {reading_fact("covered", "pickup.cover"), reading_fact("flow", "pickup.flow"),
                   value_fact("felt, free area", "pickup", "felt_area", "mm2")}},
        {.name = "suction hose",
         .rank = 1,
         .spot = {p.wall + 2.9, p.entry - 1.0},
         .half = {1.2, 6.0},
         .facts = {value_fact("bore", "suction_hose", "bore", "mm"),
                   reading_fact("liquid", "suction_hose.liquid"),
                   reading_fact("pressure", "suction_hose.pressure")},
         .shows_outside = true},
        {.name = "grommet",
         .rank = 3,
         .spot = {high.x + 0.6, p.suction.front().y - 1.6},
         .half = {1.0, 1.6},
         .facts = {value_fact("gap", "grommet", "area", "mm2")},
         .shows_outside = true},
        {.name = "purge bulb",
         .rank = 1,
         .spot = p.bulb + Spot{-p.bulb_radius * 0.8, p.bulb_radius * 0.6},
         .half = {p.bulb_radius * 0.6, p.bulb_radius * 0.6},
         .facts = {reading_fact("volume", "bulb.volume"), reading_fact("pressure", "bulb.pressure"),
                   reading_fact("liquid", "bulb.liquid"),
                   reading_fact("came back in", "bulb.return_time")},
         .shows_outside = true},
        {.name = "suction valve",
         .rank = 2,
         .spot = p.bulb + Spot{valve, -0.4},
         .half = {1.2, 1.0},
         .facts = {bore_fact("hole", "bulb_suction", "area"),
                   reading_fact("flow", "bulb_suction.flow")}},
        {.name = "discharge valve",
         .rank = 2,
         .spot = p.bulb + Spot{-valve, -0.8},
         .half = {1.2, 1.0},
         .facts = {bore_fact("hole", "bulb_discharge", "area"),
                   reading_fact("flow", "bulb_discharge.flow")}},
        {.name = "purge line",
         .rank = 2,
         .spot = {-p.wall - 1.8, (p.bulb.y - 4.0) * 0.5},
         .half = {1.2, 3.0},
         .facts = {reading_fact("flow", "bulb_suction.flow")},
         .shows_outside = true},
        {.name = "return hose",
         .rank = 2,
         .spot = {(p.bulb.x - 3.0 + low.x) / 2.0, p.bulb.y - 6.9},
         .half = {5.0, 1.2},
         .facts = {value_fact("bore", "return_hose", "bore", "mm"),
                   reading_fact("liquid", "return_hose.liquid"),
                   reading_fact("flow", "return_end.flow")},
         .shows_outside = true},
    };
}

} // namespace scenes
