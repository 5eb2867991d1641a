#include "scenes/bench/section_parts.hpp"

namespace scenes {
namespace {

/// The casting that is bowl, galleries, well tower and lower half of the throat in one.
Outline body(const SectionPlan& plan)
{
    const double top = plan.gasket - 0.5;
    const double under = plan.horn_floor() - 4.0;
    const double slab = plan.bowl.low.y;
    Outline outline{{plan.left, top},
                    {plan.left, plan.base + 3.0},
                    {plan.left + 3.0, plan.base},
                    {plan.nozzle + 3.6, plan.base},
                    {plan.nozzle + 3.6, under},
                    {plan.flange - 3.5, under},
                    {plan.flange - 3.5, under - 2.5},
                    {plan.flange - 0.5, under - 2.5}};
    const Outline floor = throat_wall(plan, -1.0);
    outline.insert(outline.end(), floor.rbegin(), floor.rend());
    const Outline rest{
        {plan.mouth, under},      {plan.nozzle - 3.6, under}, {plan.nozzle - 3.6, slab},
        {plan.wall, slab},        {plan.wall, top},           {plan.bowl.high.x, top},
        {plan.bowl.high.x, slab}, {plan.bowl.low.x, slab},    {plan.bowl.low.x, top}};
    outline.insert(outline.end(), rest.begin(), rest.end());
    return outline;
}

/// The lid over the bowl, with the hump that carries the idle passage across.
Outline lid(const SectionPlan& plan)
{
    const double foot = plan.gasket + 0.5;
    const double crest = plan.idle.outlet() + 4.6;
    return {{plan.left - 1.0, foot},
            {plan.left - 1.0, plan.lid_top - 1.5},
            {plan.left + 0.5, plan.lid_top},
            {plan.bowl.high.x + 1.2, plan.lid_top},
            {plan.bowl.high.x + 1.2, crest},
            {plan.wall, crest},
            {plan.wall, foot},
            {plan.bowl.high.x, foot},
            {plan.bowl.high.x, plan.bowl.high.y},
            {plan.bowl.low.x, plan.bowl.high.y},
            {plan.bowl.low.x, foot}};
}

/// The drain screw, beside the jets so that both show.
void draw_drain(const Sheet& sheet, const SectionPlan& plan)
{
    const double middle = plan.bowl.low.x + 9.0;
    const double half = plan.drain_bore / 2.0 + 0.6;
    const double head = half + 1.6;
    sheet.solid({{middle - half, plan.bowl.low.y},
                 {middle - half, plan.base},
                 {middle - head, plan.base},
                 {middle - head, plan.base - 2.0},
                 {middle + head, plan.base - 2.0},
                 {middle + head, plan.base},
                 {middle + half, plan.base},
                 {middle + half, plan.bowl.low.y}},
                Material::metal, true);
}

void draw_upright_hole(const Sheet& sheet, const SectionPlan& plan, double x, double bore)
{
    const Outline hole = strip({{x, plan.bowl.high.y}, {x, plan.lid_top}}, bore / 2.0);
    sheet.fill(hole, Content::air);
    sheet.walls(hole);
}

} // namespace

void draw_body_still(const Sheet& sheet, const SectionPlan& plan)
{
    sheet.solid(body(plan), Material::alloy);
    sheet.solid(lid(plan), Material::alloy, true);
    const double low = plan.gasket - 0.5;
    const double high = plan.gasket + 0.5;
    sheet.solid(box_outline({plan.left - 1.0, low}, {plan.bowl.low.x, high}), Material::gasket);
    sheet.solid(box_outline({plan.bowl.high.x, low}, {plan.wall, high}), Material::gasket);
    draw_drain(sheet, plan);
    draw_upright_hole(sheet, plan, plan.bowl_vent.x, plan.bowl_vent_bore);
    draw_upright_hole(sheet, plan, plan.primer_hole.x, plan.primer_bore);
}

void draw_bowl_moving(const Sheet& sheet, const SectionPlan& plan, const Moment& moment)
{
    const double fill =
        (moment.machine.reading("bowl.level") * 1e3 + plan.bowl.zero) / plan.bowl.height();
    const double volume = plan.bowl.width() * plan.bowl.height() * plan.bowl.depth * 1e-9;
    const double water = moment.machine.reading("bowl.water") / volume;
    draw_contained(sheet, plan.bowl, {}, {fill, water, true}, lie_of_bowl(moment.up));
    sheet.edge(box_outline(plan.bowl.low, plan.bowl.high));
    // The mouths of vent and primer line stay open.
    for (const auto& [x, bore] : {std::pair{plan.bowl_vent.x, plan.bowl_vent_bore},
                                  std::pair{plan.primer_hole.x, plan.primer_bore}}) {
        const Outline mouth =
            strip({{x, plan.bowl.high.y - 0.4}, {x, plan.bowl.high.y + 0.5}}, bore / 2.0 - 0.15);
        sheet.fill(mouth, Content::air);
    }
}

} // namespace scenes
