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

void BenchDrips::follow(BenchModel& model)
{
    BenchRun& run = model.run();
    if (run_number_ != model.run_number()) {
        run_number_ = model.run_number();
        follower_.begin(run.machine(), run.values());
    } else {
        follower_.follow(run.machine(), run.values());
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

void BenchDrips::draw_drop(Mesh& mesh, const Look& look, const Camera& camera,
                           const Drop& drop) const
{
    const double falls = 0.03 * ground_.scale; // m/s: faster ones are drawn long
    const Point at = camera.to_pixels(Place{drop.at.x, drop.at.y});
    const float radius =
        std::max(look.px(drop.is_forming ? 0.8F : 1.6F), camera.to_pixels(drop.radius));
    const double speed = std::hypot(drop.speed.x, drop.speed.y);
    if (speed > falls) { // its tail points back the way it came
        const Point back{static_cast<float>(-drop.speed.x / speed) * radius,
                         static_cast<float>(drop.speed.y / speed) * radius};
        const Point across{-back.y, back.x};
        mesh.fill({at + 2.2F * back, at + 0.8F * across, at - 0.8F * across}, look.theme.fuel_mark);
    }
    mesh.disc(at, radius, look.theme.fuel_mark);
    if (radius > look.px(2.6F)) {
        mesh.disc(at, radius - look.px(1.3F), look.theme.fuel);
    }
}

void BenchDrips::draw(Mesh& mesh, const Look& look, const Camera& camera) const
{
    if (!follower_.drips()) {
        return;
    }
    for (const Pool& pool : follower_.drips()->pools()) {
        draw_pool(mesh, look, camera, pool);
    }
    for (const Drop& drop : follower_.drips()->drops()) {
        draw_drop(mesh, look, camera, drop);
    }
}

} // namespace scenes
