#include "scenes/bench/section_liquid.hpp"

#include "scenes/view/shapes.hpp"
#include "scenes/view/vector_maths.hpp"

#include <algorithm>
#include <cmath>

namespace scenes {
namespace {

constexpr double least_fill = 0.002; ///< below this a chamber looks dry

HalfPlane opposite(HalfPlane plane)
{
    plane.inwards = -plane.inwards;
    return plane;
}

} // namespace

Lie lie_of_bowl(sim::Vector up)
{
    return {{up.x, up.z}, up.y};
}

Lie lie_of_throat(sim::Vector up)
{
    return {{-up.y, up.z}, up.x};
}

HalfPlane below_surface(const Sheet& sheet, const RoomPlan& room, const Reduction& view,
                        double fill, const Lie& lie)
{
    const double tall = room.width() * std::abs(lie.up.x) + room.depth * std::abs(lie.across) +
                        room.height() * std::abs(lie.up.y);
    const double square = lie.up.x * lie.up.x + lie.up.y * lie.up.y;
    // Lying on its side across the plane, the surface shows nowhere or everywhere.
    const Spot up = square > 1e-4 ? lie.up : Spot{0.0, 0.01};
    const double rise = tall * (fill - 0.5) / std::max(square, 1e-4);
    const Spot edge = room.middle() + up * rise;
    const Point down{static_cast<float>(-up.x), static_cast<float>(up.y)};
    return {sheet.at(view(edge)), unit_vector(down)};
}

void draw_contained(const Sheet& sheet, const RoomPlan& room, const Reduction& view,
                    const Contained& contained, const Lie& lie)
{
    const Outline room_outline = box_outline(view(room.low), view(room.high));
    sheet.reserve(room_outline);
    const Polygon space = sheet.polygon(room_outline);
    if (contained.fill < least_fill) {
        for (const Polygon& shown : sheet.on_page(space)) {
            draw_content(sheet.mesh, shown, Content::air, sheet.look);
        }
        return;
    }
    const HalfPlane liquid = below_surface(sheet, room, view, contained.fill, lie);
    const bool has_fuel = contained.fill - contained.water > least_fill;
    const Content gas = has_fuel ? Content::vapour : Content::air;
    const auto fill_part = [&](const HalfPlane& part, Content content) {
        for (const Polygon& piece : clip(space, part)) {
            for (const Polygon& shown : sheet.on_page(piece)) {
                draw_content(sheet.mesh, shown, content, sheet.look, sheet.texture());
            }
        }
    };
    const auto surface = [&](const HalfPlane& part, Content content, bool is_marked) {
        for (auto [from, to] : stretches_inside(space, part)) {
            if (from.x > to.x) {
                std::swap(from, to);
            }
            draw_surface(sheet.mesh, from, to, content, sheet.look, is_marked);
        }
    };
    fill_part(opposite(liquid), gas);
    fill_part(liquid, has_fuel ? Content::fuel : Content::water);
    if (contained.water > least_fill / 2.0 && has_fuel) {
        const HalfPlane water = below_surface(sheet, room, view, contained.water, lie);
        fill_part(water, Content::water);
        surface(water, Content::water, false);
    }
    surface(liquid, has_fuel ? Content::fuel : Content::water,
            contained.is_marked && std::abs(lie.up.y) > 0.98);
}

void draw_passage(const Sheet& sheet, const Outline& line, double bore, double share)
{
    const Outline wet = stretch(line, 0.0, std::min(share, 1.0));
    if (wet.size() > 1) {
        sheet.fill(strip(wet, bore / 2.0), Content::fuel);
    }
}

void draw_flow_marks(const Sheet& sheet, const Outline& line, double strength, double phase,
                     Rgba colour)
{
    if (strength <= 0.0) {
        return;
    }
    double total = 0.0;
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        total += distance(line[i], line[i + 1]);
    }
    const double pitch = 17.0 - 8.0 * std::min(strength, 1.0); // closer together, the more flows
    const double size = 2.2 + 4.8 * std::min(strength, 1.0);
    const float head = std::min(sheet.look.px(8.0F), sheet.pixels(size) * 0.9F);
    double start = std::fmod(phase, pitch);
    start += start < 0.0 ? pitch : 0.0;
    for (; start + size < total; start += pitch) {
        const Outline piece = stretch(line, start / total, (start + size) / total);
        Polygon points = sheet.polygon(piece);
        if (points.size() < 2) {
            continue;
        }
        const Point tip = points.back();
        const Point way = unit_vector(tip - points[points.size() - 2]);
        // In a bend the points before the head are nearer than its length: the line must not fold.
        while (points.size() > 2 && length(tip - points[points.size() - 2]) < head) {
            points.erase(points.end() - 2);
        }
        points.back() = tip - way * (head * 0.8F);
        sheet.mesh.stroke(points, {.colour = colour, .width = sheet.look.px(1.6F)});
        arrow_head(sheet.mesh, tip, way, head * 1.15F, colour);
    }
}

} // namespace scenes
