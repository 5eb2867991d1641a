#include "scenes/drips/drip_follower.hpp"

#include "scenes/present/leak_shares.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace scenes {
namespace {

/// A longer step of the clock is a leap: nobody saw the drops.
constexpr double longest_step = 10.0; // s
constexpr std::string_view floor_fuel = "floor.fuel";

double spilt(sim::Simulator& machine)
{
    return machine.state()[machine.network().state_index(floor_fuel)];
}

} // namespace

DripFollower::DripFollower(const sim::Rig& rig, const DripGround& ground,
                           std::vector<DripMouth> mouths)
    : mouths_(std::move(mouths)),
      flows_(mouths_.size()),
      masses_(mouths_.size()),
      density_(rig.fuel.density.si)
{
    const bool has_floor =
        std::ranges::find(rig.parts, "floor", &sim::PartSpec::id) != rig.parts.end();
    if (has_floor && !mouths_.empty()) {
        drips_.emplace(ground);
    }
}

/// The drawing's plane is that of the machine's x and z axes.
void DripFollower::look_at_attitude(const sim::Simulator& machine)
{
    const sim::Vector up = machine.surroundings().up;
    drips_->set_down({-up.x, -up.z});
}

void DripFollower::look_at_flows(const sim::Simulator& machine, std::span<const double> values)
{
    for (std::size_t i = 0; i < mouths_.size(); ++i) {
        const DripMouth& mouth = mouths_[i];
        flows_[i] = mouth.outward == 0.0
                        ? -std::numeric_limits<double>::infinity()
                        : mouth.outward * values[machine.reading_index(mouth.reading)] * density_;
    }
}

void DripFollower::share(double gained, double seconds)
{
    share_leak(gained, seconds, flows_, masses_);
    for (std::size_t i = 0; i < masses_.size(); ++i) {
        drips_->leak(i, masses_[i]);
    }
    drips_->go_on(seconds);
}

void DripFollower::shed(double kg)
{
    for (std::size_t i = 0; i < masses_.size() && drips_; ++i) {
        drips_->leak(i, kg);
        shed_ += kg;
    }
}

/// Some seconds of the flows that run now bring the drops where they would be.
void DripFollower::rebuild(double leaked)
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
        share(late / steps, step);
    }
    drips_->add_fallen(std::max(0.0, leaked - drips_->leaked()));
}

void DripFollower::begin(sim::Simulator& machine, std::span<const double> values)
{
    if (drips_) {
        seconds_ = machine.seconds();
        look_at_attitude(machine);
        look_at_flows(machine, values);
        rebuild(spilt(machine));
    }
}

void DripFollower::follow(sim::Simulator& machine, std::span<const double> values)
{
    if (!drips_) {
        return;
    }
    const double leaked = spilt(machine) + shed_;
    const double passed = machine.seconds() - seconds_;
    const double gained = leaked - drips_->leaked();
    seconds_ = machine.seconds();
    // What rounding took off is no fuel that went back.
    const double rounding = 1e-12 * leaked;
    if (passed < 0.0 || passed > longest_step || gained < -rounding) {
        drips_->set_leaked(leaked);
        return;
    }
    look_at_attitude(machine);
    look_at_flows(machine, values);
    share(std::max(0.0, gained), passed);
}

} // namespace scenes
