#include "scenes/drips/drips.hpp"

#include "scenes/drips/drip_world.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

namespace scenes {
namespace {

/// The shortest time from drop to drop at a mouth, s: a faster leak makes heavier drops.
constexpr double shortest_wait = 0.05;
/// Kilograms at a mouth beyond which fuel runs down as a stream: straight to the floor.
constexpr double most_forming = 3.0 * heaviest_drop;
/// How long fuel lies before it has evaporated but for a share of 1/e, s. A film of 0.2 mm loses
/// 0.2 g/(m2 s); what clings to a casting is thinner.
/// source:  order of magnitude for gasoline at 20 degC in still air, from memory
constexpr double pool_time = 745.0;
constexpr double drop_time = 150.0;
constexpr double least_pool = 1e-12; ///< kg; less is all gone
/// Of motion; longer than a usual frame, or half of them would take two steps.
constexpr double longest_step = 1.0 / 50.0;
/// Length of down in the plane below which drops fall out of it.
constexpr double least_in_plane = 0.3;
constexpr int most_steps = 2; ///< of motion in a call
constexpr double longest_motion = 1.0 / 30.0;
constexpr double fuel_density = 745.0; ///< for what a pool looks like

} // namespace

Drips::Drips(const DripGround& ground)
    : world_(std::make_unique<World>(ground)),
      ground_(ground),
      low_(ground.floor_left),
      high_{ground.floor_right.x, ground.floor_right.y},
      forming_(ground.mouths.size()),
      since_drop_(ground.mouths.size(), shortest_wait)
{
    for (const std::vector<DripPoint>& body : ground.bodies) {
        for (const DripPoint& place : body) {
            low_.x = std::min(low_.x, place.x);
            high_ = {std::max(high_.x, place.x), std::max(high_.y, place.y)};
        }
    }
    const double margin = 6e-3 * ground.scale;
    low_.x -= margin;
    high_ = {high_.x + margin, high_.y + margin};
}

Drips::~Drips() = default;

void Drips::leak(std::size_t mouth, double kg)
{
    leaked_ += kg;
    forming_[mouth] += kg;
}

void Drips::set_down(DripPoint down)
{
    down_ = down;
    world_->set_down(down);
}

/// Whether a drop has left the drawing the way things fall.
bool Drips::has_landed(DripPoint at, double radius) const
{
    constexpr double along = 0.02; // of the way down
    return (down_.y < -along && at.y - radius <= low_.y) || (down_.y > along && at.y >= high_.y) ||
           (down_.x < -along && at.x <= low_.x) || (down_.x > along && at.x >= high_.x) ||
           std::hypot(down_.x, down_.y) < least_in_plane;
}

/// Where it lies when the drawing is turned upright about its middle.
double Drips::floor_x(DripPoint from) const
{
    const double size = std::hypot(down_.x, down_.y);
    if (size < least_in_plane) {
        return from.x;
    }
    const DripPoint middle{(low_.x + high_.x) / 2.0, (low_.y + high_.y) / 2.0};
    return middle.x + ((middle.x - from.x) * down_.y + (from.y - middle.y) * down_.x) / size;
}

double Drips::mass_in_drops() const
{
    double sum = std::accumulate(forming_.begin(), forming_.end(), 0.0);
    for (const World::Bead& bead : std::as_const(*world_).beads()) {
        sum += bead.mass;
    }
    return sum;
}

double Drips::mass_in_pools() const
{
    double sum = 0.0;
    for (const Pool& pool : pools_) {
        sum += pool.mass;
    }
    return sum;
}

void Drips::form_drops(double seconds)
{
    for (std::size_t i = 0; i < forming_.size(); ++i) {
        since_drop_[i] += seconds;
        if (forming_[i] > most_forming) {
            pour(floor_x(world_->mouth(i)), forming_[i] - most_forming);
            forming_[i] = most_forming;
        }
        if (forming_[i] >= usual_drop && since_drop_[i] >= shortest_wait) {
            const double kg = std::min(forming_[i], heaviest_drop);
            world_->add(i, kg);
            forming_[i] -= kg;
            since_drop_[i] = 0.0;
        }
    }
}

/// Puts fuel on the floor: into the pool that lies there, or into a new one.
void Drips::pour(double x, double kg)
{
    const double at = std::clamp(x, ground_.floor_left.x, ground_.floor_right.x);
    const double margin = world_->radius_of(usual_drop) * 2.0;
    const auto found = std::ranges::find_if(
        pools_, [&](const Pool& pool) { return std::abs(at - pool.middle) <= pool.half + margin; });
    if (found == pools_.end()) {
        pools_.push_back({.middle = at, .mass = kg});
    } else {
        // A drop at the rim moves the pool a little its way.
        found->middle += (at - found->middle) * kg / (found->mass + kg);
        found->mass += kg;
    }
}

/// Drops that have come down to the floor become part of a pool.
void Drips::land()
{
    for (std::size_t i = world_->beads().size(); i-- > 0;) {
        const World::Bead& bead = world_->beads()[i];
        const DripPoint at = world_->place_of(bead);
        if (has_landed(at, world_->radius_of(bead.mass))) {
            pour(floor_x(at), bead.mass);
            world_->remove(i);
        }
    }
}

void Drips::evaporate(double seconds)
{
    const double of_drop = -std::expm1(-seconds / drop_time);
    const double of_pool = -std::expm1(-seconds / pool_time);
    for (std::size_t i = world_->beads().size(); i-- > 0;) {
        World::Bead& bead = world_->beads()[i];
        const double lost = bead.mass * of_drop;
        bead.mass -= lost;
        evaporated_ += lost;
        if (bead.mass < 0.05 * usual_drop) { // a damp spot that nobody sees
            evaporated_ += bead.mass;
            world_->remove(i);
        }
    }
    for (double& kg : forming_) {
        const double lost = kg * of_drop;
        kg -= lost;
        evaporated_ += lost;
    }
    for (Pool& pool : pools_) {
        const double lost = pool.mass < least_pool ? pool.mass : pool.mass * of_pool;
        pool.mass -= lost;
        evaporated_ += lost;
    }
    std::erase_if(pools_, [](const Pool& pool) { return pool.mass <= 0.0; });
}

/// A pool spreads with its mass, ever more slowly, and is never wider than the floor.
void Drips::shape_pools()
{
    const double room = (ground_.floor_right.x - ground_.floor_left.x) / 2.0;
    for (Pool& pool : pools_) {
        const double millilitres = pool.mass / fuel_density * 1e6;
        const double half = 6.5e-3 * std::sqrt(millilitres) * ground_.scale;
        pool.half = room * std::tanh(half / room);
        pool.depth = 1.6e-3 * ground_.scale * -std::expm1(-half / (6e-3 * ground_.scale));
        pool.middle = std::clamp(
            pool.middle, ground_.floor_left.x + pool.half,
            std::max(ground_.floor_left.x + pool.half, ground_.floor_right.x - pool.half));
    }
}

void Drips::merge_touching_pools()
{
    std::ranges::sort(pools_, {}, &Pool::middle);
    for (std::size_t i = 1; i < pools_.size();) {
        Pool& left = pools_[i - 1];
        const Pool& right = pools_[i];
        if (right.middle - left.middle < left.half + right.half) {
            const double mass = left.mass + right.mass;
            left.middle += (right.middle - left.middle) * right.mass / mass;
            left.mass = mass;
            pools_.erase(pools_.begin() + static_cast<std::ptrdiff_t>(i));
            shape_pools();
        } else {
            ++i;
        }
    }
}

void Drips::list_drops()
{
    drops_.clear();
    for (const World::Bead& bead : world_->beads()) {
        drops_.push_back({.at = world_->place_of(bead),
                          .radius = world_->radius_of(bead.mass),
                          .mass = bead.mass,
                          .speed = world_->speed_of(bead)});
    }
    for (std::size_t i = 0; i < forming_.size(); ++i) {
        if (forming_[i] > 0.0) {
            const double kg = std::min(forming_[i], usual_drop);
            drops_.push_back({.at = world_->mouth(i),
                              .radius = world_->radius_of(usual_drop) * std::cbrt(kg / usual_drop),
                              .mass = forming_[i],
                              .speed = {},
                              .is_forming = true});
        }
    }
}

void Drips::go_on(double seconds)
{
    if (seconds <= 0.0) {
        list_drops();
        return;
    }
    form_drops(seconds);
    const double moved = std::min(seconds, longest_motion);
    const int steps = moved > longest_step ? most_steps : 1;
    for (int i = 0; i < steps; ++i) {
        world_->step(moved / steps);
    }
    world_->merge(most_drops);
    land();
    evaporate(seconds);
    shape_pools();
    merge_touching_pools();
    list_drops();
}

/// Adds to the pools in their shares; to one at the usual place when there are none.
void Drips::fill_pools(double kg)
{
    const double lying = mass_in_pools();
    if (lying > 0.0) {
        for (Pool& pool : pools_) {
            pool.mass *= 1.0 + kg / lying;
        }
    } else if (kg > 0.0) {
        pools_.assign(1, {.middle = ground_.pool_middle, .mass = kg});
    }
    std::erase_if(pools_, [](const Pool& pool) { return pool.mass <= 0.0; });
    shape_pools();
    merge_touching_pools();
    list_drops();
}

void Drips::add_fallen(double kg)
{
    leaked_ += kg;
    fill_pools(kg);
}

void Drips::set_leaked(double kg)
{
    const double vapour = leaked_ > 0.0 ? std::clamp(evaporated_ / leaked_, 0.0, 1.0) : 0.0;
    world_->clear();
    std::ranges::fill(forming_, 0.0);
    leaked_ = kg;
    evaporated_ = kg * vapour;
    fill_pools(kg - evaporated_ - mass_in_pools());
}

} // namespace scenes
