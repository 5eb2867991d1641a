#include "scenes/bench/section_outlines.hpp"
#include "scenes/bench/section_parts.hpp"
#include "scenes/bench/section_shared.hpp"

namespace scenes {
namespace {

/// Where the filter's clip and the tap end, as the section draws them.
constexpr double filter_half = 5.2;
constexpr double filter_height = 6.2;
constexpr double tap_half = 2.9;
constexpr double sheet_thickness = 1.0;

std::vector<Body> supply_bodies(const SectionPlan& p)
{
    const Spot low = p.tank_view(p.tank.low) - Spot{sheet_thickness, sheet_thickness};
    const Spot high = p.tank_view(p.tank.high) + Spot{sheet_thickness, sheet_thickness};
    const double half = p.tap_bore / 2.0;
    const double neck = half + 1.1;
    const Outline tank{{low.x + 1.5, low.y},   {high.x - 1.5, low.y},  {high.x, low.y + 1.5},
                       {high.x, high.y - 1.5}, {high.x - 1.5, high.y}, {low.x + 1.5, high.y},
                       {low.x, high.y - 1.5},  {low.x, low.y + 1.5}};
    return {
        {places_of(box_outline({p.feed - neck, p.neck_foot}, {p.feed + neck, low.y + 0.5})),
         Material::plastic},
        {places_of(tank), Material::plastic},
        {places_of(box_outline({p.feed - half - 1.0, p.filter_foot + filter_height},
                               {p.feed + half + 1.0, p.tap_foot})),
         Material::metal},
        {places_of(box_outline({p.feed - half - tap_half, p.tap_foot},
                               {p.feed + half + tap_half, p.neck_foot})),
         Material::metal},
        {places_of(strip(p.hose_line, p.hose_bore / 2.0 + 1.6)), Material::elastomer},
        {places_of(box_outline({p.feed - filter_half, p.filter_foot},
                               {p.feed + filter_half, p.filter_foot + filter_height})),
         Material::plastic},
    };
}

std::vector<Body> carburetor_bodies(const SectionPlan& p)
{
    const double under = p.horn_floor() - 4.0;
    const double top = p.idle.outlet() + 6.0;
    const double start = p.flange + 0.5;
    const Outline throat{{p.mouth, under},
                         {p.flange - 3.5, under},
                         {p.flange - 3.5, under - 2.5},
                         {p.flange - 0.5, under - 2.5},
                         {p.flange - 0.5, top + 2.5},
                         {p.flange - 3.5, top + 2.5},
                         {p.flange - 3.5, top},
                         {p.mouth, top}};
    const Outline bowl{
        {p.left, p.gasket - 0.5},       {p.left, p.base + 3.0},  {p.left + 3.0, p.base},
        {p.nozzle + 3.6, p.base},       {p.nozzle + 3.6, under}, {p.nozzle - 3.6, under},
        {p.nozzle - 3.6, p.bowl.low.y}, {p.wall, p.bowl.low.y},  {p.wall, p.gasket - 0.5}};
    const double crest = p.idle.outlet() + 4.6;
    const Outline lid{{p.left - 1.0, p.gasket + 0.5}, {p.left - 1.0, p.lid_top - 1.5},
                      {p.left + 0.5, p.lid_top},      {p.bowl.high.x + 1.2, p.lid_top},
                      {p.bowl.high.x + 1.2, crest},   {p.wall, crest},
                      {p.wall, p.gasket + 0.5}};
    const Outline runner{{start, under - 2.5},       {start + 3.0, under - 2.5},
                         {start + 3.0, under + 0.6}, {p.end, under + 0.6},
                         {p.end, top - 2.6},         {start + 3.0, top - 2.6},
                         {start + 3.0, top + 2.5},   {start, top + 2.5}};
    const double drain = p.bowl.low.x + 9.0;
    const double head = p.drain_bore / 2.0 + 2.2;
    return {
        {places_of(runner), Material::metal},
        {places_of(box_outline({p.flange - 0.5, under - 2.5}, {start, top + 2.5})),
         Material::gasket},
        {places_of(throat), Material::alloy},
        {places_of(bowl), Material::alloy},
        {places_of(box_outline({p.left - 1.0, p.gasket - 0.5}, {p.wall, p.gasket + 0.5})),
         Material::gasket},
        {places_of(lid), Material::alloy},
        {places_of(box_outline({p.bowl.high.x + 1.2, p.lid_top}, {p.mouth, crest})),
         Material::alloy},
        {places_of(box_outline({drain - head, p.base - 2.0}, {drain + head, p.base})),
         Material::metal},
        {places_of(box_outline({p.mouth - 5.0, p.horn_floor() - 2.0},
                               {p.mouth - 1.0, p.horn_roof() + 0.6})),
         Material::pleated_paper},
    };
}

/// The bulb at rest on its foot.
std::vector<Body> bulb_bodies(const SectionPlan& p)
{
    const double foot = p.lid_top + 7.5;
    const double x = p.primer_hole.x;
    const double half = p.primer_bore / 2.0 + 0.9;
    return {
        {places_of(box_outline({x - half, p.lid_top}, {x + half, foot - 1.6})), Material::plastic},
        {places_of(
             box_outline({x - p.bulb_radius - 1.6, foot - 1.6}, {x + p.bulb_radius + 1.6, foot})),
         Material::plastic},
        {places_of(bulb_dome({x, foot}, p.bulb_radius, 1.0, 0.0)), Material::elastomer}};
}

} // namespace

SectionOutlines outlines_of(const SectionPlan& p)
{
    SectionOutlines outlines;
    for (const auto& bodies : {supply_bodies(p), carburetor_bodies(p), bulb_bodies(p)}) {
        outlines.bodies.insert(outlines.bodies.end(), bodies.begin(), bodies.end());
    }
    const double under = p.gasket - 4.0;
    for (const double x : {p.left + 4.0, p.bowl.high.x - 2.0}) {
        outlines.screws.push_back(place_of({x, under}));
    }
    const Spot hose = p.hose_line[p.hose_line.size() / 2] - Spot{3.5, 3.5};
    const double tank_top = p.tank_view(p.tank.high).y;
    outlines.leaks = {
        {"cap_vent", 1.0, place_of({p.feed, tank_top + 3.5})},
        {"hose_wall", 1.0, place_of(hose)},
        {"hose_end", 1.0, place_of(p.hose_line.back() + Spot{0.0, -3.5})},
        {"bowl_vent", 1.0, place_of({p.bowl_vent.x, p.lid_top + 0.3})},
        {"bowl_gasket", 1.0, place_of({p.left - 1.2, p.gasket})},
        {"bowl_drain", 1.0, place_of({p.bowl.low.x + 9.0, p.base - 2.0})},
        {"bulb_hole", 1.0, place_of({p.primer_hole.x, p.lid_top + 7.7 + p.bulb_radius})},
        {"bulb_wall", 1.0,
         place_of({p.primer_hole.x - p.bulb_radius - 0.3, p.lid_top + 7.5 + 2.0})},
        // What runs back out of the intake: the floor gains it, no reading tells it.
        {"runner", 0.0, place_of({p.mouth - 0.5, p.horn_floor() - 4.2})}};
    outlines.floor_left = place_of({p.low().x, p.floor});
    outlines.floor_right = place_of({p.end, p.floor});
    outlines.pool_middle = (p.wall + 6.0) * 1e-3;
    return outlines;
}

} // namespace scenes
