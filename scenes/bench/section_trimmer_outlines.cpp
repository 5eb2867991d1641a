#include "scenes/bench/section_outlines.hpp"
#include "scenes/bench/section_trimmer_parts.hpp"

namespace scenes {
namespace {

constexpr double sheet_thickness = 0.8;
constexpr double hose_wall = 0.7;

Outline rounded_box(Spot low, Spot high, double cut)
{
    return {{low.x, low.y + cut},  {low.x + cut, low.y},   {high.x - cut, low.y},
            {high.x, low.y + cut}, {high.x, high.y - cut}, {high.x - cut, high.y},
            {low.x + cut, high.y}, {low.x, high.y - cut}};
}

std::vector<Body> supply_bodies(const TrimmerPlan& p)
{
    const Spot thick{sheet_thickness, sheet_thickness};
    const Spot bulb{p.bulb_radius + 0.9, 1.6};
    return {
        {places_of(strip(p.return_line, p.hose_bore / 2.0 + hose_wall)), Material::elastomer},
        {places_of(strip(p.bulb_line, 0.4 + hose_wall)), Material::elastomer},
        {places_of(strip(p.suction, p.hose_bore / 2.0 + hose_wall)), Material::elastomer},
        {places_of(
             rounded_box(p.tank_view(p.tank.low) - thick, p.tank_view(p.tank.high) + thick, 1.2)),
         Material::plastic},
        {places_of(box_outline(p.bulb - bulb, {p.bulb.x + bulb.x, p.bulb.y})), Material::plastic},
        {places_of(bulb_dome(p.bulb, p.bulb_radius, 1.0, 0.0)), Material::elastomer},
    };
}

std::vector<Body> carburetor_bodies(const TrimmerPlan& p)
{
    const double casting_top = pulse_line(p).back().y + 1.6;
    const double under = p.horn_floor() - 2.6;
    constexpr double joint = 0.4;
    const Outline throat{{p.mouth, p.low_line - 1.7}, {p.mouth, casting_top},
                         {p.flange, casting_top},     {p.flange, under},
                         {p.flange + 1.6, under},     {p.flange + 1.6, p.low_line - 1.7}};
    return {
        {places_of(throat), Material::alloy},
        {places_of(box_outline({p.adapter + joint, under}, {p.flange - joint, casting_top})),
         Material::plastic},
        {places_of(box_outline({p.adapter, under}, {p.adapter + joint, casting_top})),
         Material::gasket},
        {places_of(box_outline({p.flange - joint, under}, {p.flange, casting_top})),
         Material::gasket},
        {places_of(box_outline({p.mouth + 0.3, p.horn_floor() - 0.7},
                               {p.mouth + 1.9, p.horn_roof() + 0.6})),
         Material::pleated_paper},
        {places_of(strip({{-p.wall, pulse_line(p).back().y}, {p.mouth, pulse_line(p).back().y}},
                         p.pulse_bore / 2.0 + 0.35)),
         Material::metal},
        {places_of(box_outline({-p.wall, 0.0}, {p.wall, p.pump.plane})), Material::alloy},
        {places_of({{-p.wall, p.base + 1.0},
                    {-p.wall + 1.0, p.base},
                    {p.wall - 1.0, p.base},
                    {p.wall, p.base + 1.0},
                    {p.wall, 0.0},
                    {-p.wall, 0.0}}),
         Material::alloy},
        {places_of({{-p.wall, p.pump.plane},
                    {p.wall, p.pump.plane},
                    {p.wall, p.top - 1.0},
                    {p.wall - 1.0, p.top},
                    {-p.wall + 1.0, p.top},
                    {-p.wall, p.top - 1.0}}),
         Material::alloy},
    };
}

} // namespace

SectionOutlines outlines_of(const TrimmerPlan& p)
{
    SectionOutlines outlines;
    outlines.bodies = engine_bodies(p);
    for (const auto& bodies : {supply_bodies(p), carburetor_bodies(p)}) {
        outlines.bodies.insert(outlines.bodies.end(), bodies.begin(), bodies.end());
    }
    for (const double x : {2.2 - p.wall, p.wall - 2.2}) {
        outlines.screws.push_back(place_of({x, (p.pump.plane + p.top) / 2.0}));
        outlines.screws.push_back(place_of({x, p.base / 2.0}));
    }
    const Spot hose = p.suction[p.suction.size() / 2];
    const double hole = p.dry.half * 0.3;
    outlines.leaks = {{"cap", 1.0, place_of(p.cap + Spot{-3.2, 0.8})},
                      {"tank_vent", -1.0, place_of(p.vent + Spot{1.6, 1.6})},
                      {"grommet", 1.0, place_of(p.suction.front() + Spot{1.6, -1.4})},
                      {"hose_wall", 1.0, place_of(hose + Spot{1.6, 0.0})},
                      {"bulb_wall", 1.0, place_of(p.bulb + Spot{-p.bulb_radius - 0.4, 0.6})},
                      {"metering_pinhole", 1.0, place_of({hole, p.base - 0.2})},
                      {"cup_plug", 1.0, place_of({p.wall - 2.0, p.base - 0.2})},
                      {"pump_cover", 1.0, place_of({p.wall + 0.4, p.pump.plane})},
                      {"mouth", 1.0, place_of({p.mouth + 0.4, p.horn_floor() - 0.3})},
                      {"crank_seal", 1.0, place_of(p.crank - Spot{0.0, p.crank_room + 1.1})}};
    outlines.floor_left = place_of({detail_corner(p).x + 1.0, p.floor});
    outlines.floor_right = place_of({p.high().x, p.floor});
    outlines.pool_middle = p.tank_view.to.x * 1e-3;
    outlines.pool_scale = 0.45;
    return outlines;
}

} // namespace scenes
