#include "scenes/bench/section_shared.hpp"

namespace scenes {
namespace {

/// The shade that a material has from outside.
Rgba shade_of(Material material, const Theme& theme)
{
    switch (material) {
    case Material::metal:
    case Material::alloy:
        return theme.section;
    case Material::elastomer:
        return theme.hatch;
    case Material::plastic:
    case Material::pleated_paper:
        return theme.sheet;
    case Material::gasket:
        return theme.solid;
    case Material::glass:
        return theme.glass;
    }
    return theme.section;
}

/// A slotted screw head that holds a cover.
void draw_screw_head(const Sheet& sheet, Spot spot, double radius)
{
    sheet.mesh.disc(sheet.at(spot), sheet.pixels(radius), sheet.theme().sheet);
    sheet.mesh.ring(sheet.at(spot), sheet.pixels(radius),
                    {.colour = sheet.theme().ink, .width = sheet.look.thin()});
    const Spot slot{0.6 * radius, 0.6 * radius};
    sheet.mesh.stroke({sheet.at(spot - slot), sheet.at(spot + slot)},
                      {.colour = sheet.theme().ink, .width = sheet.look.medium()});
}

} // namespace

void draw_body(const Sheet& sheet, const Outline& outline, Material material)
{
    sheet.cover(outline, LabelGround::Cover::inner);
    for (const Polygon& piece : sheet.on_page(sheet.polygon(outline))) {
        sheet.mesh.fill(piece, shade_of(material, sheet.theme()));
    }
    sheet.mesh.stroke(sheet.polygon(outline),
                      {.colour = sheet.theme().ink, .width = sheet.look.medium(), .closed = true});
}

void draw_outside(const Sheet& sheet, const SectionOutlines& outlines)
{
    for (const Body& body : outlines.bodies) {
        Outline outline;
        outline.reserve(body.outline.size());
        for (const Place place : body.outline) {
            outline.push_back(spot_of(place));
        }
        draw_body(sheet, outline, body.material);
    }
    for (const Place screw : outlines.screws) {
        draw_screw_head(sheet, spot_of(screw), 1.9 * outlines.pool_scale);
    }
}

} // namespace scenes
