#include "scenes/bench/section_hands.hpp"

#include "scenes/bench/section_outlines.hpp"
#include "scenes/bench/section_parts.hpp"
#include "scenes/bench/section_trimmer_parts.hpp"
#include "scenes/present/part_finder.hpp"

namespace scenes {
namespace {

Hand hand(Hand::Kind kind, Spot low, Spot high)
{
    return {.kind = kind, .low = place_of(low), .high = place_of(high), .pivot = {}};
}

/// The cord's grip hangs at its guide.
Hand cord_hand(Spot guide, double half_width, double half_height, double drawn, double side)
{
    const Spot grip = guide + Spot{side * half_width, 0.0};
    Hand cord = hand(Hand::Kind::cord, grip - Spot{1.6 * half_width, half_height},
                     grip + Spot{1.6 * half_width, half_height});
    cord.pivot = place_of(guide);
    cord.drawn = drawn;
    cord.side = side;
    return cord;
}

std::vector<Hand> float_hands(const SectionPlan& plan)
{
    const double foot = plan.lid_top + 7.5;
    const double tank = plan.tank_view(plan.tank.high).y;
    const Spot hub = tap_hub(plan);
    Hand tap = hand(Hand::Kind::tap, hub - Spot{3.0, 8.0}, hub + Spot{8.0, 3.0});
    tap.pivot = place_of(hub);
    return {cord_hand(cord_guide(plan), 2.6, 4.4, cord_reduction, -1.0),
            hand(Hand::Kind::bulb, {plan.primer_hole.x - plan.bulb_radius, foot},
                 {plan.primer_hole.x + plan.bulb_radius, foot + plan.bulb_radius + 1.0}),
            tap,
            hand(Hand::Kind::cap, {plan.feed - 6.5, tank - 0.5}, {plan.feed + 6.5, tank + 5.5})};
}

std::vector<Hand> trimmer_hands(const TrimmerPlan& plan)
{
    return {cord_hand(cord_guide(plan) + Spot{0.0, -1.2}, 1.2, 1.6, TrimmerPlan::cord_scale * 0.25,
                      1.0),
            hand(Hand::Kind::bulb, plan.bulb - Spot{plan.bulb_radius, 0.0},
                 plan.bulb + Spot{plan.bulb_radius, plan.bulb_radius + 0.5}),
            hand(Hand::Kind::cap, plan.cap + Spot{-3.2, 0.2}, plan.cap + Spot{3.2, 3.0})};
}

} // namespace

std::vector<Hand> hands_of(const sim::Rig& rig)
{
    if (has_kind(rig, "float_needle")) {
        return float_hands(SectionPlan(rig));
    }
    if (has_kind(rig, "metering_needle")) {
        return trimmer_hands(TrimmerPlan(rig));
    }
    return {};
}

} // namespace scenes
