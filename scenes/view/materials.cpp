#include "scenes/view/materials.hpp"

#include "scenes/view/shapes.hpp"
#include "scenes/view/vector_maths.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>

namespace scenes {
namespace {

/// A share from 0 to 1 that looks random but belongs to a place in the texture for good.
float scatter(int row, int column)
{
    std::uint32_t h = static_cast<std::uint32_t>(row) * 0x9E3779B1U ^
                      static_cast<std::uint32_t>(column) * 0x85EBCA77U;
    h ^= h >> 15U;
    h *= 0x2C1B3C6DU;
    h ^= h >> 12U;
    return static_cast<float>(h & 0xFFFFU) / 65535.0F;
}

struct SectionLines {
    Rows rows;
    Dashes dashes; ///< of the rows that are broken
    enum class Broken { never, odd_rows, always } broken = Broken::never;
};

void draw_lines(Mesh& mesh, std::span<const Point> polygon, const SectionLines& lines,
                const Pen& pen)
{
    const float degree = 3.14159265F / 180.0F;
    const Point along{std::cos(lines.rows.angle * degree), std::sin(lines.rows.angle * degree)};
    const float start = dot_product(lines.rows.origin, along);
    const auto use = [&](Point from, Point to, int row) {
        const bool is_odd = (row & 1) != 0;
        const std::array<Point, 2> piece{from, to};
        if (lines.broken == SectionLines::Broken::never ||
            (lines.broken == SectionLines::Broken::odd_rows && !is_odd)) {
            mesh.stroke(piece, pen);
            return;
        }
        Dashes dashes = lines.dashes;
        const float period = dashes.on + dashes.off;
        dashes.phase = start - dot_product(from, along) + period * scatter(row, 7);
        dashes.phase -= period * std::floor(dashes.phase / period);
        dash(mesh, piece, pen, dashes);
    };
    mesh.scanner().scan(polygon, lines.rows, use);
}

/// Draws zigzag pleats: along every row one line runs up and down by a quarter of the pitch.
void draw_pleats(Mesh& mesh, std::span<const Point> polygon, const Texture& texture, float pitch,
                 const Pen& pen)
{
    const float half = pitch / 2.0F;
    const float rise = pitch / 4.0F;
    const auto ends = std::minmax_element(polygon.begin(), polygon.end(),
                                          [](Point a, Point b) { return a.y < b.y; });
    const auto use = [&](Point from, Point to, int) {
        if (from.y - rise < ends.first->y || from.y + rise > ends.second->y) {
            return; // would stick out of the polygon
        }
        const auto first = static_cast<int>(std::ceil((from.x - texture.origin.x) / half));
        const auto last = static_cast<int>(std::floor((to.x - texture.origin.x) / half));
        for (int step = first; step < last; ++step) {
            const float x = texture.origin.x + half * static_cast<float>(step);
            const float up = (step & 1) != 0 ? rise : -rise;
            mesh.stroke({{x, from.y + up}, {x + half, from.y - up}}, pen);
        }
    };
    const Rows rows{.angle = 0.0F, .gap = pitch, .origin = texture.origin};
    mesh.scanner().scan(polygon, rows, use);
}

struct LiquidMarks {
    float gap;    ///< between rows
    float on;     ///< length of a dash
    float off;    ///< space after it
    float second; ///< length of a short dash in that space; 0 for none
    Rgba colour;
};

void draw_liquid_marks(Mesh& mesh, std::span<const Point> polygon, const LiquidMarks& marks,
                       const Look& look, const Texture& texture)
{
    const Rows rows{.angle = 0.0F, .gap = look.px(marks.gap), .origin = texture.origin};
    const float period = look.px(marks.on + marks.off);
    const float thickness = look.whole(1.0F);
    const auto use = [&](Point from, Point to, int row) {
        const float inset = look.px(2.0F);
        const float shift = texture.origin.x + texture.phase +
                            period * ((row & 1) != 0 ? 0.5F : 0.0F) +
                            period * 0.2F * scatter(row, 3);
        const auto piece = [&](float left, float size) {
            const float a = std::max(left, from.x + inset);
            const float b = std::min(left + size, to.x - inset);
            if (b - a > look.px(2.0F)) {
                mesh.block({a, from.y - thickness / 2.0F, b - a, thickness}, marks.colour);
            }
        };
        const auto first = static_cast<int>(std::floor((from.x - shift) / period));
        const auto last = static_cast<int>(std::ceil((to.x - shift) / period));
        for (int mark = first; mark < last; ++mark) {
            const float x = shift + period * static_cast<float>(mark);
            piece(x, look.px(marks.on));
            if (marks.second > 0.0F) {
                piece(x + look.px(marks.on + (marks.off - marks.second) / 2.0F),
                      look.px(marks.second));
            }
        }
    };
    mesh.scanner().scan(polygon, rows, use);
}

void draw_dots(Mesh& mesh, std::span<const Point> polygon, const Look& look, const Texture& texture)
{
    const float gap = look.px(8.0F);
    const Point origin = texture.origin - Point{0.0F, std::fmod(texture.phase, gap * 64.0F)};
    const Rows rows{.angle = 0.0F, .gap = gap, .origin = origin};
    const auto use = [&](Point from, Point to, int row) {
        const float inset = look.px(2.0F);
        auto column = static_cast<int>(std::floor((from.x - origin.x) / gap)) - 1;
        const auto last = static_cast<int>(std::ceil((to.x - origin.x) / gap));
        for (; column <= last; ++column) {
            const float x = origin.x + gap * (static_cast<float>(column) + scatter(row, column));
            if (x > from.x + inset && x < to.x - inset) {
                mesh.dot({x, from.y}, look.px(2.2F), look.theme.vapour_mark);
            }
        }
    };
    mesh.scanner().scan(polygon, rows, use);
}

} // namespace

void draw_section(Mesh& mesh, std::span<const Point> polygon, Material material, const Look& look,
                  const Texture& texture)
{
    const Theme& theme = look.theme;
    const Pen pen{.colour = theme.hatch, .width = look.thin()};
    const float slope = texture.mirrored ? 45.0F : -45.0F;
    const auto lines = [&](float angle, float gap, float shift = 0.0F) {
        return SectionLines{.rows = {.angle = angle,
                                     .gap = look.px(gap),
                                     .origin = texture.origin + Point{look.px(shift), 0.0F}},
                            .dashes = {.on = look.px(9.0F), .off = look.px(4.0F)}};
    };
    switch (material) {
    case Material::metal:
        mesh.fill(polygon, theme.section);
        draw_lines(mesh, polygon, lines(slope, 6.0F), pen);
        break;
    case Material::alloy: {
        mesh.fill(polygon, theme.section);
        SectionLines rows = lines(slope, 5.5F);
        rows.broken = SectionLines::Broken::odd_rows;
        draw_lines(mesh, polygon, rows, pen);
        break;
    }
    case Material::elastomer:
        mesh.fill(polygon, theme.section);
        draw_lines(mesh, polygon, lines(45.0F, 5.0F), pen);
        draw_lines(mesh, polygon, lines(-45.0F, 5.0F), pen);
        break;
    case Material::plastic:
        mesh.fill(polygon, theme.section);
        draw_lines(mesh, polygon, lines(slope, 9.0F), pen);
        draw_lines(mesh, polygon, lines(slope, 9.0F, 4.0F), pen);
        break;
    case Material::gasket:
        mesh.fill(polygon, theme.solid);
        break;
    case Material::glass: {
        mesh.fill(polygon, theme.glass);
        for (const float shift : {0.0F, 5.0F, 10.0F}) {
            SectionLines rows = lines(slope, 26.0F, shift);
            rows.broken = SectionLines::Broken::always;
            rows.dashes = {.on = look.px(7.0F), .off = look.px(19.0F)};
            draw_lines(mesh, polygon, rows, pen);
        }
        break;
    }
    case Material::pleated_paper:
        mesh.fill(polygon, theme.sheet);
        draw_pleats(mesh, polygon, texture, look.px(8.0F), pen);
        break;
    }
}

void draw_content(Mesh& mesh, std::span<const Point> polygon, Content content, const Look& look,
                  const Texture& texture)
{
    const Theme& theme = look.theme;
    switch (content) {
    case Content::fuel:
        mesh.fill(polygon, theme.fuel);
        draw_liquid_marks(mesh, polygon, {8.0F, 9.0F, 9.0F, 0.0F, theme.fuel_mark}, look, texture);
        break;
    case Content::vapour:
        mesh.fill(polygon, theme.vapour);
        draw_dots(mesh, polygon, look, texture);
        break;
    case Content::air:
        mesh.fill(polygon, theme.air);
        break;
    case Content::water:
        mesh.fill(polygon, theme.water);
        draw_liquid_marks(mesh, polygon, {6.0F, 18.0F, 12.0F, 4.0F, theme.water_mark}, look,
                          texture);
        break;
    }
}

void draw_surface(Mesh& mesh, Point from, Point to, Content content, const Look& look,
                  bool is_marked)
{
    const Rgba colour = content == Content::water ? look.theme.water_mark : look.theme.fuel_mark;
    mesh.stroke({from, to}, {.colour = colour, .width = look.medium()});
    const float side = look.px(8.0F);
    if (!is_marked || length(to - from) < side * 3.0F) {
        return;
    }
    // The triangle stands a third of the way along, where a float or a pillar seldom is.
    const Point foot = from + (to - from) * 0.3F;
    const Pen pen{.colour = colour, .width = look.px(1.4F)};
    const Point left = foot + Point{-side * 0.6F, -side};
    const Point right = foot + Point{side * 0.6F, -side};
    const std::array<Point, 3> triangle{left, right, foot};
    mesh.stroke(triangle, {.colour = colour, .width = look.px(1.4F), .closed = true});
    mesh.stroke({foot + Point{-side * 0.6F, side * 0.45F}, foot + Point{side * 0.6F, side * 0.45F}},
                pen);
    mesh.stroke({foot + Point{-side * 0.3F, side * 0.9F}, foot + Point{side * 0.3F, side * 0.9F}},
                pen);
}

} // namespace scenes
