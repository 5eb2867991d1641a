#pragma once

#include "scenes/view/clip.hpp"
#include "scenes/view/mesh.hpp"
#include "scenes/view/theme.hpp"

#include <span>

namespace scenes {

/// What a cut solid is made of; each has its own section lines, as in engineering drawings.
///
/// source: section lining of drawing practice, from memory; pleats are our own
enum class Material {
    metal,         ///< single lines at 45 degrees
    alloy,         ///< cast light alloy: full and broken lines in turn
    elastomer,     ///< rubber, diaphragms: crossed lines
    plastic,       ///< lines in pairs
    gasket,        ///< thin sheet: drawn solid
    glass,         ///< short strokes in threes
    pleated_paper, ///< filter medium
};

/// What fills a space. Told apart by colour and by texture.
enum class Content {
    fuel,   ///< staggered rows of short dashes
    vapour, ///< dots
    air,    ///< plain
    water,  ///< rows of long dashes with a short one between
};

/// How a textured area lies on the drawing.
struct Texture {
    Point origin;          ///< a fixed point of the drawing, so that the texture moves with it
    bool mirrored = false; ///< slopes the section lines the other way, for the neighbouring part
    float phase = 0.0F;    ///< pixels that liquid marks or vapour dots have travelled
};

/// Fills a polygon with a material's ground and section lines. The outline is left to the caller.
void draw_section(Mesh& mesh, std::span<const Point> polygon, Material material, const Look& look,
                  const Texture& texture = {});

/// Fills a polygon with a content and its texture.
void draw_content(Mesh& mesh, std::span<const Point> polygon, Content content, const Look& look,
                  const Texture& texture = {});

/// Draws a liquid's free surface between two points, with the level mark of drawing practice (a
/// small triangle standing on the line over two short ones) when `is_marked` and there is room.
void draw_surface(Mesh& mesh, Point from, Point to, Content content, const Look& look,
                  bool is_marked = false);

} // namespace scenes
