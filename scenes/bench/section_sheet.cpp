#include "scenes/bench/section_sheet.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace scenes {
namespace {

Spot unit(Spot a)
{
    const double size = std::hypot(a.x, a.y);
    return size > 0.0 ? a * (1.0 / size) : a;
}

} // namespace

double distance(Spot a, Spot b)
{
    return std::hypot(a.x - b.x, a.y - b.y);
}

void add_bend(Outline& outline, Spot from, Spot to)
{
    constexpr int steps = 12;
    for (int i = 0; i <= steps; ++i) {
        const double share = static_cast<double>(i) / steps;
        const double eased = share * share * (3.0 - 2.0 * share);
        outline.push_back({from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * eased});
    }
}

Outline circle_outline(Spot centre, double radius)
{
    Outline outline;
    constexpr int steps = 20;
    for (int i = 0; i < steps; ++i) {
        const double angle = 2.0 * std::numbers::pi * i / steps;
        outline.push_back(centre + Spot{std::cos(angle), std::sin(angle)} * radius);
    }
    return outline;
}

Outline box_outline(Spot low, Spot high)
{
    return {low, {high.x, low.y}, high, {low.x, high.y}};
}

Outline turned_about(Outline outline, Spot about, double radians)
{
    const double c = std::cos(radians);
    const double s = std::sin(radians);
    for (Spot& spot : outline) {
        const Spot arm = spot - about;
        spot = about + Spot{c * arm.x - s * arm.y, s * arm.x + c * arm.y};
    }
    return outline;
}

Outline stretch(const Outline& line, double from, double to)
{
    double total = 0.0;
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        total += distance(line[i], line[i + 1]);
    }
    Outline piece;
    double walked = 0.0;
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        const double size = distance(line[i], line[i + 1]);
        const double begin = std::max((from * total - walked) / size, 0.0);
        const double end = std::min((to * total - walked) / size, 1.0);
        if (end > begin) {
            const Spot run = line[i + 1] - line[i];
            if (piece.empty()) {
                piece.push_back(line[i] + run * begin);
            }
            piece.push_back(line[i] + run * end);
        }
        walked += size;
    }
    return piece;
}

Outline strip(const Outline& line, double half)
{
    Outline sides;
    Outline far_side;
    for (std::size_t i = 0; i < line.size(); ++i) {
        const Spot in = unit(line[i] - line[i == 0 ? 0 : i - 1]);
        const Spot out = unit(line[i + 1 == line.size() ? i : i + 1] - line[i]);
        const Spot along = unit(in + out);
        const Spot side{-along.y, along.x};
        // A mitre: longer than half the width by the cosine of half the corner.
        const Spot leg = i == 0 ? out : in;
        const double stretched = half / std::max(0.3, along.x * leg.x + along.y * leg.y);
        sides.push_back(line[i] + side * stretched);
        far_side.push_back(line[i] - side * stretched);
    }
    sides.insert(sides.end(), far_side.rbegin(), far_side.rend());
    return sides;
}

Polygon Sheet::polygon(const Outline& outline) const
{
    Polygon points;
    points.reserve(outline.size());
    for (const Spot spot : outline) {
        points.push_back(at(spot));
    }
    return points;
}

void Sheet::cover(const Outline& outline, LabelGround::Cover kind) const
{
    if (ground == nullptr) {
        return;
    }
    std::vector<LabelPoint> points;
    points.reserve(outline.size());
    for (const Spot spot : outline) {
        const Point point = at(spot);
        points.push_back({point.x, point.y});
    }
    ground->cover(points, kind);
}

std::vector<Polygon> Sheet::on_page(Polygon points) const
{
    constexpr float rim = 4.0F; // edges of the page itself stay out of sight
    const float left = page.left - rim;
    const float top = page.top - rim;
    const float right = page.left + page.width + rim;
    const float bottom = page.top + page.height + rim;
    const auto [west, east] = std::ranges::minmax(points, {}, &Point::x);
    const auto [north, south] = std::ranges::minmax(points, {}, &Point::y);
    if (east.x < left || west.x > right || south.y < top || north.y > bottom) {
        return {};
    }
    std::vector<Polygon> pieces{std::move(points)};
    const auto cut = [&](bool is_needed, HalfPlane plane) {
        if (!is_needed) {
            return;
        }
        std::vector<Polygon> kept;
        for (const Polygon& piece : pieces) {
            for (Polygon& part : clip(piece, plane)) {
                kept.push_back(std::move(part));
            }
        }
        pieces = std::move(kept);
    };
    cut(west.x < left, {{left, 0.0F}, {1.0F, 0.0F}});
    cut(east.x > right, {{right, 0.0F}, {-1.0F, 0.0F}});
    cut(north.y < top, {{0.0F, top}, {0.0F, 1.0F}});
    cut(south.y > bottom, {{0.0F, bottom}, {0.0F, -1.0F}});
    return pieces;
}

void Sheet::solid(const Outline& outline, Material material, bool is_mirrored) const
{
    cover(outline, LabelGround::Cover::solid);
    const Polygon points = polygon(outline);
    for (const Polygon& piece : on_page(points)) {
        draw_section(mesh, piece, material, look, texture(is_mirrored));
    }
    mesh.stroke(points, {.colour = theme().ink, .width = look.medium(), .closed = true});
}

void Sheet::fill(const Outline& outline, Content content, float phase) const
{
    cover(outline, LabelGround::Cover::inner);
    for (const Polygon& piece : on_page(polygon(outline))) {
        draw_content(mesh, piece, content, look, texture(false, phase));
    }
}

void Sheet::hollow(const Outline& outline) const
{
    fill(outline, Content::air);
    edge(outline);
}

void Sheet::edge(const Outline& outline, bool is_closed) const
{
    mesh.stroke(polygon(outline),
                {.colour = theme().ink, .width = look.medium(), .closed = is_closed});
}

void Sheet::walls(const Outline& both) const
{
    const auto half = static_cast<std::ptrdiff_t>(both.size() / 2);
    edge({both.begin(), both.begin() + half}, false);
    edge({both.begin() + half, both.end()}, false);
}

void Sheet::line(const Outline& outline, bool is_closed) const
{
    mesh.stroke(polygon(outline),
                {.colour = theme().ink_soft, .width = look.thin(), .closed = is_closed});
}

bool Sheet::has_room(std::string_view words, double room) const
{
    const TextStyle style{.size = lettering.small(), .colour = theme().ink_soft};
    return text.width(words, style) <= pixels(room);
}

void Sheet::note(std::string_view words, Spot spot, double room, Align align) const
{
    if (has_room(words, room)) {
        text.write(words, at(spot),
                   {.size = lettering.small(),
                    .colour = theme().ink_soft,
                    .align = align,
                    .anchor = Anchor::middle});
    }
}

} // namespace scenes
