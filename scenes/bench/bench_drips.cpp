#include "scenes/bench/bench_drips.hpp"

#include "scenes/bench/section_outlines.hpp"

#include <algorithm>
#include <cmath>

namespace scenes {
namespace {

DripPoint drip_point(Place place)
{
    return {place.x, place.y};
}

DripGround ground_of(const SectionOutlines& outlines)
{
    DripGround ground{.bodies = {},
                      .mouths = {},
                      .floor_left = drip_point(outlines.floor_left),
                      .floor_right = drip_point(outlines.floor_right),
                      .pool_middle = outlines.pool_middle,
                      .scale = outlines.pool_scale};
    for (const Body& body : outlines.bodies) {
        std::vector<DripPoint>& outline = ground.bodies.emplace_back();
        for (const Place place : body.outline) {
            outline.push_back(drip_point(place));
        }
    }
    for (const LeakMouth& leak : outlines.leaks) {
        ground.mouths.push_back(drip_point(leak.place));
    }
    return ground;
}

std::vector<DripMouth> mouths_of(const SectionOutlines& outlines)
{
    std::vector<DripMouth> mouths;
    for (const LeakMouth& leak : outlines.leaks) {
        mouths.push_back({std::string(leak.part) + ".flow", leak.outward});
    }
    return mouths;
}

} // namespace

BenchDrips::BenchDrips(const sim::Rig& rig)
    : ground_(ground_of(outlines_of(rig))), follower_(rig, ground_, mouths_of(outlines_of(rig)))
{
}

void BenchDrips::follow(sim::Simulator& machine, const std::vector<double>& values, int run_number)
{
    if (run_number_ != run_number) {
        run_number_ = run_number;
        follower_.begin(machine, values);
    } else {
        follower_.follow(machine, values);
    }
}

void BenchDrips::draw_pool(Mesh& mesh, const Look& look, const Camera& camera,
                           const Pool& pool) const
{
    const double floor = ground_.floor_left.y;
    // Never thinner than a line, never shorter than a drop is wide.
    const double depth =
        std::max(pool.depth, static_cast<double>(look.px(2.5F)) / camera.pixels_per_metre());
    const double half = std::max(pool.half, depth);
    const double bank = std::min(half * 0.5, 1.6 * depth);
    const auto at = [&](double x, double y) { return camera.to_pixels(Place{x, y}); };
    const Polygon outline{at(pool.middle - half, floor),
                          at(pool.middle + half, floor),
                          at(pool.middle + half - 0.35 * bank, floor + 0.7 * depth),
                          at(pool.middle + half - bank, floor + depth),
                          at(pool.middle - half + bank, floor + depth),
                          at(pool.middle - half + 0.35 * bank, floor + 0.7 * depth)};
    mesh.fill(outline, look.theme.fuel);
    mesh.stroke(outline, {.colour = look.theme.fuel_mark, .width = look.px(1.4F), .closed = true});
}

void BenchDrips::draw_drop(Mesh& mesh, const Look& look, const Camera& camera, const Drop& drop,
                           const sf::FloatRect& area)
{
    const double falls = 0.03 * ground_.scale; // m/s: faster ones are drawn long
    const Point at = camera.to_pixels(Place{drop.at.x, drop.at.y});
    const float radius =
        std::max(look.px(drop.is_forming ? 0.8F : 1.6F), camera.to_pixels(drop.radius));
    const float around = 2.5F * radius + 2.0F;
    if (at.x + around < area.left || at.x - around > area.left + area.width ||
        at.y + around < area.top || at.y - around > area.top + area.height) {
        return;
    }
    const double speed = std::hypot(drop.speed.x, drop.speed.y);
    std::optional<Point> tail; // it points back the way it came
    if (speed > falls) {
        tail = Point{static_cast<float>(-drop.speed.x / speed),
                     static_cast<float>(drop.speed.y / speed)};
    }
    if (sprites_.is_usable() && radius >= 1.0F && radius <= DropSprites::largest) {
        sprites_.add(at, radius, tail);
        return;
    }
    if (tail) {
        const Point back = *tail * radius;
        const Point across{-back.y, back.x};
        mesh.fill({at + 2.2F * back, at + 0.8F * across, at - 0.8F * across}, look.theme.fuel_mark);
    }
    mesh.disc(at, radius, look.theme.fuel_mark);
    if (radius > look.px(2.6F)) {
        mesh.disc(at, radius - look.px(1.3F), look.theme.fuel);
    }
}

void BenchDrips::lay_out(Mesh& mesh, const Look& look, const Camera& camera,
                         const sf::FloatRect& area)
{
    if (!follower_.drips()) {
        return;
    }
    sprites_.begin(look);
    for (const Pool& pool : follower_.drips()->pools()) {
        draw_pool(mesh, look, camera, pool);
    }
    for (const Drop& drop : follower_.drips()->drops()) {
        draw_drop(mesh, look, camera, drop, area);
    }
}

} // namespace scenes
