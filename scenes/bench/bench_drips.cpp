#include "scenes/bench/bench_drips.hpp"

#include "scenes/bench/section_outlines.hpp"
#include "scenes/present/leak_shares.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace scenes {
namespace {

/// A longer step of the clock is a jump: nobody saw the drops.
constexpr double longest_step = 10.0; // s

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

} // namespace

BenchDrips::BenchDrips(const sim::Rig& rig) : density_(rig.fuel.density.si)
{
    const SectionOutlines outlines = outlines_of(rig);
    ground_ = ground_of(outlines);
    for (const LeakMouth& leak : outlines.leaks) {
        mouth_readings_.emplace_back(std::string(leak.part) + ".flow", leak.outward);
    }
    const bool has_floor =
        std::ranges::find(rig.parts, "floor", &sim::PartSpec::id) != rig.parts.end();
    if (has_floor && !ground_.mouths.empty()) {
        drips_.emplace(ground_);
    }
}

void BenchDrips::take_run(BenchModel& model)
{
    sim::Simulator& machine = model.run().machine();
    run_number_ = model.run_number();
    floor_ = machine.network().state_index("floor.fuel");
    mouths_.clear();
    for (const auto& [reading, outward] : mouth_readings_) {
        mouths_.push_back({outward == 0.0 ? 0 : machine.reading_index(reading), outward});
    }
    flows_.resize(mouths_.size());
    masses_.resize(mouths_.size());
    seconds_ = machine.seconds();
    look_at_flows(model);
    rebuild(machine.state()[floor_]);
}

void BenchDrips::look_at_flows(BenchModel& model)
{
    const std::vector<double>& values = model.run().values();
    for (std::size_t i = 0; i < mouths_.size(); ++i) {
        flows_[i] = mouths_[i].outward == 0.0
                        ? -std::numeric_limits<double>::infinity()
                        : mouths_[i].outward * values[mouths_[i].flow] * density_;
    }
}

void BenchDrips::rebuild(double leaked)
{
    constexpr int steps = 240;
    constexpr double step = 1.0 / 30.0;
    double rate = 0.0;
    for (const double flow : flows_) {
        rate += std::isfinite(flow) ? std::max(0.0, flow) : 0.0;
    }
    const double late = std::min(rate * step * steps, leaked);
    drips_->set_leaked(0.0);
    for (int i = 0; i < steps && late > 0.0; ++i) {
        share_leak(late / steps, step, flows_, masses_);
        for (std::size_t k = 0; k < masses_.size(); ++k) {
            drips_->leak(k, masses_[k]);
        }
        drips_->go_on(step);
    }
    drips_->add_fallen(leaked - drips_->leaked());
}

void BenchDrips::follow(BenchModel& model)
{
    if (!drips_) {
        return;
    }
    if (run_number_ != model.run_number()) {
        take_run(model);
    }
    sim::Simulator& machine = model.run().machine();
    const double leaked = machine.state()[floor_];
    const double passed = machine.seconds() - seconds_;
    seconds_ = machine.seconds();
    const double gained = leaked - drips_->leaked();
    if (passed < 0.0 || passed > longest_step || gained < 0.0) {
        drips_->set_leaked(leaked);
        return;
    }
    look_at_flows(model);
    share_leak(gained, passed, flows_, masses_);
    for (std::size_t i = 0; i < masses_.size(); ++i) {
        drips_->leak(i, masses_[i]);
    }
    drips_->go_on(passed);
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

void BenchDrips::draw(Mesh& mesh, const Look& look, const Camera& camera) const
{
    if (!drips_) {
        return;
    }
    for (const Pool& pool : drips_->pools()) {
        draw_pool(mesh, look, camera, pool);
    }
    const double falls = 0.03 * ground_.scale; // m/s: faster ones are drawn long
    for (const Drop& drop : drips_->drops()) {
        const Point at = camera.to_pixels(Place{drop.at.x, drop.at.y});
        const float radius =
            std::max(look.px(drop.is_forming ? 0.8F : 1.6F), camera.to_pixels(drop.radius));
        if (-drop.speed.y > falls) {
            mesh.fill({at + Point{0.0F, -2.2F * radius}, at + Point{radius * 0.8F, 0.0F},
                       at + Point{-radius * 0.8F, 0.0F}},
                      look.theme.fuel_mark);
        }
        mesh.disc(at, radius, look.theme.fuel_mark);
        if (radius > look.px(2.6F)) {
            mesh.disc(at, radius - look.px(1.3F), look.theme.fuel);
        }
    }
}

} // namespace scenes
