#include "scenes/bench/section_trimmer_marks.hpp"

#include "scenes/bench/section_trimmer_parts.hpp"

// Words and figures of the pump and the metering chamber.

namespace scenes {

std::vector<Mark> pump_marks(const TrimmerPlan& p)
{
    return {
        {.name = "pump diaphragm",
         .rank = 1,
         .spot = {-1.5, p.pump.plane},
         .half = {p.pump.half, 0.9},
         .facts = {reading_fact("stroke", "pump.stroke"),
                   value_fact("stiffness", "pump", "stiffness", "kPa"),
                   value_fact("full travel", "pump", "full_travel", "mm")}},
        {.name = "pump chamber",
         .rank = 2,
         .spot = {-p.pump.half + 2.4, p.pump.plane - p.pump.depth * 0.45},
         .half = {2.0, 0.8},
         .facts = {value_fact("volume", "pump_chamber", "volume", "mL"),
                   reading_fact("pressure", "pump_chamber.pressure"),
                   reading_fact("liquid", "pump_chamber.liquid")}},
        {.name = "pulse chamber",
         .rank = 2,
         .spot = {-p.pulse.half + 1.4, p.pulse.plane + p.pulse.depth - 0.4},
         .half = {2.0, 0.8},
         .facts = {reading_fact("pressure", "pulse.pressure"),
                   value_fact("leak", "pulse", "leak", "mm2")}},
        {.name = "pulse passage",
         .rank = 1,
         .spot = {(p.mouth - p.wall) / 2.0, p.pump.plane + 0.8},
         .half = {2.0, 0.9},
         .facts = {bore_fact("bore", "pulse", "passage"),
                   reading_fact("pressure", "pulse.pressure")},
         .shows_outside = true},
        {.name = "inlet flap",
         .rank = 1,
         .spot = {p.inlet_flap + 0.6, p.pump_floor() + 0.2},
         .half = {1.4, 0.9},
         .facts = {bore_fact("hole", "inlet_flap", "area"), bore_fact("leak", "inlet_flap", "leak"),
                   reading_fact("flow", "inlet_flap.flow")}},
        {.name = "outlet flap",
         .rank = 1,
         .spot = {p.outlet_flap, p.entry - 0.3},
         .half = {1.4, 0.9},
         .facts = {bore_fact("hole", "outlet_flap", "area"),
                   bore_fact("leak", "outlet_flap", "leak"),
                   reading_fact("flow", "outlet_flap.flow")}},
        {.name = "gallery",
         .rank = 2,
         .spot = {p.seat.x - 3.4, p.gallery},
         .half = {2.0, 0.9},
         .facts = {reading_fact("pressure", "gallery.pressure"),
                   reading_fact("liquid", "gallery.liquid")}},
        {.name = "inlet screen",
         .rank = 1,
         .spot = {p.seat.x + 1.3, p.gallery - 0.9},
         .half = {1.9, 0.5},
         .facts = {value_fact("free area", "needle", "screen_area", "mm2"),
                   reading_fact("loss", "needle.screen_drop")}},
    };
}

std::vector<Mark> metering_marks(const TrimmerPlan& p)
{
    return {
        {.name = "needle",
         .rank = 1,
         .spot = {p.seat.x + 0.8, p.seat.y - 2.6},
         .half = {1.3, 2.2},
         .facts = {reading_fact("lift", "needle.lift"), reading_fact("flow", "needle.flow")}},
        {.name = "seat",
         .rank = 2,
         .spot = {p.seat.x + 1.5, p.seat.y + 0.7},
         .half = {1.9, 0.9},
         .facts = {value_fact("bore", "needle", "seat_bore", "mm"),
                   value_fact("leak", "needle", "seat_leak", "mm2")}},
        {.name = "lever",
         .rank = 1,
         .spot = {p.hinge() * 0.2, 1.1},
         .half = {2.0, 0.5},
         .facts = {value_fact("ratio", "needle", "lever_ratio", ""),
                   value_fact("free height", "needle", "lever_gap", "mm")}},
        {.name = "spring",
         .rank = 2,
         .spot = {p.hinge() * 0.55 - 0.7, p.roof + 0.6},
         .half = {1.2, 1.4},
         .facts = {value_fact("force", "needle", "spring_force", "N"),
                   value_fact("rate", "needle", "spring_rate", "N/m")}},
        {.name = "metering chamber",
         .rank = 2,
         .spot = {-p.metering.half * 0.25, p.roof * 0.62},
         .half = {3.5, 0.9},
         .facts = {reading_fact("pressure", "metering.pressure"),
                   reading_fact("liquid", "metering.liquid"),
                   value_fact("volume", "metering", "volume", "mL")}},
        {.name = "metering diaphragm",
         .rank = 1,
         .spot = {-p.metering.half + 2.0, 0.1},
         .half = {p.metering.half, 0.6},
         .facts = {reading_fact("travel", "needle.diaphragm"),
                   value_fact("stiffness", "needle", "stiffness", "kPa"),
                   value_fact("area", "needle", "diaphragm_area", "mm2")}},
        {.name = "dry side",
         .rank = 2,
         .spot = {-p.dry.half * 0.5, -p.dry.depth * 0.6},
         .half = {3.0, 1.0},
         .facts = {reading_fact("pressure", "dry_side.pressure")}},
        {.name = "dry-side hole",
         .rank = 1,
         .spot = {p.dry.half * 0.3, p.base + 0.5},
         .half = {1.2, 1.2},
         .facts = {bore_fact("bore", "dry_side", "passage")},
         .shows_outside = true},
    };
}

std::vector<Mark> marks_of(const TrimmerPlan& plan)
{
    std::vector<Mark> all;
    for (auto& marks : {supply_marks(plan), pump_marks(plan), metering_marks(plan),
                        throat_marks(plan), engine_marks(plan)}) {
        all.insert(all.end(), marks.begin(), marks.end());
    }
    return all;
}

} // namespace scenes
