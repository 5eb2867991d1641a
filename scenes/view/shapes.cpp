#include "scenes/view/shapes.hpp"

#include "scenes/view/vector_maths.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace scenes {
namespace {

constexpr float pi = 3.14159265F;

/// Draws the part of a polyline between two distances from its start.
void draw_stretch(Mesh& mesh, std::span<const Point> points, const Pen& pen, float from, float to)
{
    // A dash rarely bends more than a few times; longer ones are cut, invisibly.
    std::array<Point, 24> piece{};
    std::size_t count = 0;
    float walked = 0.0F;
    for (std::size_t i = 0; i + 1 < points.size() && walked < to; ++i) {
        const Point a = points[i];
        const Point run = points[i + 1] - a;
        const float size = length(run);
        if (size > 0.0F && walked + size > from) {
            if (count == 0) {
                piece[count++] = a + run * (std::max(0.0F, from - walked) / size);
            }
            piece[count++] = a + run * (std::min(size, to - walked) / size);
        }
        if (count == piece.size()) {
            mesh.stroke(std::span{piece}.first(count), pen);
            piece[0] = piece[count - 1];
            count = 1;
        }
        walked += size;
    }
    mesh.stroke(std::span{piece}.first(count), pen);
}

} // namespace

void dash(Mesh& mesh, std::span<const Point> points, const Pen& pen, const Dashes& dashes)
{
    float total = 0.0F;
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
        total += length(points[i + 1] - points[i]);
    }
    const float period = dashes.on + dashes.off;
    if (period < 0.5F) {
        mesh.stroke(points, pen);
        return;
    }
    const float middle = dashes.on + (dashes.off - dashes.dot) / 2.0F;
    const float first = std::fmod(dashes.phase, period) - period;
    const auto count = static_cast<int>(std::ceil((total - first) / period));
    for (int i = 0; i < count; ++i) {
        const float start = first + period * static_cast<float>(i);
        if (start + dashes.on > 0.0F) {
            draw_stretch(mesh, points, pen, std::max(0.0F, start),
                         std::min(total, start + dashes.on));
        }
        if (dashes.dot > 0.0F && start + middle > 0.0F && start + middle < total) {
            draw_stretch(mesh, points, pen, start + middle,
                         std::min(total, start + middle + dashes.dot));
        }
    }
}

std::vector<Point> rounded_box(const sf::FloatRect& box, float radius)
{
    const float r = std::min(radius, std::min(box.width, box.height) / 2.0F);
    const std::array<Point, 4> centres{{{box.left + r, box.top + r},
                                        {box.left + box.width - r, box.top + r},
                                        {box.left + box.width - r, box.top + box.height - r},
                                        {box.left + r, box.top + box.height - r}}};
    const int steps = std::clamp(static_cast<int>(r), 1, 10);
    std::vector<Point> outline;
    for (std::size_t corner = 0; corner < centres.size(); ++corner) {
        for (int i = 0; i <= steps; ++i) {
            const float share = static_cast<float>(i) / static_cast<float>(steps);
            const float angle = pi + pi / 2.0F * (static_cast<float>(corner) + share);
            outline.push_back(centres[corner] + Point{std::cos(angle), std::sin(angle)} * r);
        }
    }
    return outline;
}

std::vector<Point> chamfered_box(const sf::FloatRect& box, float cut)
{
    const float right = box.left + box.width;
    const float bottom = box.top + box.height;
    return {{box.left + cut, box.top}, {right, box.top},   {right, bottom - cut},
            {right - cut, bottom},     {box.left, bottom}, {box.left, box.top + cut}};
}

void arrow_head(Mesh& mesh, Point tip, Point direction, float head, Rgba colour)
{
    const Point back = tip - direction * head;
    const Point side = turned(direction) * (head / 6.0F);
    mesh.fill({tip, back + side, back - side}, colour);
}

void arrow(Mesh& mesh, Point from, Point to, const Pen& pen, float head)
{
    const Point direction = unit_vector(to - from);
    mesh.stroke({from, to - direction * (head * 0.8F)}, pen);
    arrow_head(mesh, to, direction, head, pen.colour);
}

void dimension(Mesh& mesh, Point from, Point to, const Pen& pen, float head)
{
    const Point direction = unit_vector(to - from);
    const Point witness = turned(direction) * (head * 0.6F);
    mesh.stroke({from + direction * (head * 0.8F), to - direction * (head * 0.8F)}, pen);
    arrow_head(mesh, to, direction, head, pen.colour);
    arrow_head(mesh, from, -direction, head, pen.colour);
    mesh.stroke({from - witness, from + witness}, pen);
    mesh.stroke({to - witness, to + witness}, pen);
}

std::vector<Point> curve(Point a, Point b, Point c, Point d, int steps)
{
    std::vector<Point> points;
    points.reserve(static_cast<std::size_t>(steps) + 1);
    for (int i = 0; i <= steps; ++i) {
        const float t = static_cast<float>(i) / static_cast<float>(steps);
        const float u = 1.0F - t;
        points.push_back(a * (u * u * u) + b * (3.0F * u * u * t) + c * (3.0F * u * t * t) +
                         d * (t * t * t));
    }
    return points;
}

} // namespace scenes
