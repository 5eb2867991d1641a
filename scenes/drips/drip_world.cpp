#include "scenes/drips/drip_world.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

// Box2D wants things about a tenth of a unit to ten units large: a usual drop has a radius of 0.04.
// With this gravity and damping a drop by itself falls 13 cm/s at scale 1, slow enough to be seen.

namespace scenes {
namespace {

constexpr double metres_per_unit = 0.0225;
constexpr float usual_radius = 0.04F;
constexpr float gravity = 5.0F;
constexpr float damping_at_wall = 2.4F;
constexpr float damping_in_air = 0.8F;
constexpr float friction = 0.02F;
/// Pull of a wall on a drop of usual size, in its weights. It grows with the radius, the weight
/// with its cube: a drop hangs until it has grown to twice the usual mass, then falls.
constexpr float cling_weights = 1.6F;
constexpr float reach = 2.2F;   ///< radii within which a wall pulls
constexpr float level = 0.97F;  ///< of the way down to a wall below: not steeper than 14 degrees
constexpr float spread = 0.25F; ///< weights that drive a drop along a level top
constexpr float slow = 0.35F;   ///< units a second; drops that touch at more do not merge

float radius_in_units(double kg)
{
    const double size = std::clamp(std::cbrt(kg / usual_drop), 0.6, 1.85);
    return usual_radius * static_cast<float>(size);
}

float area_of(const std::vector<b2Vec2>& outline)
{
    float sum = 0.0F;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        sum += b2Cross(outline[i], outline[(i + 1) % outline.size()]);
    }
    return sum / 2.0F;
}

bool is_inside(const std::vector<b2Vec2>& outline, b2Vec2 at)
{
    bool inside = false;
    for (std::size_t i = 0, j = outline.size() - 1; i < outline.size(); j = i++) {
        const b2Vec2 a = outline[i];
        const b2Vec2 b = outline[j];
        if ((a.y > at.y) != (b.y > at.y) && at.x < (b.x - a.x) * (at.y - a.y) / (b.y - a.y) + a.x) {
            inside = !inside;
        }
    }
    return inside;
}

b2Vec2 nearest_on(b2Vec2 a, b2Vec2 b, b2Vec2 at)
{
    const b2Vec2 along = b - a;
    const float share = b2Clamp(b2Dot(at - a, along) / along.LengthSquared(), 0.0F, 1.0F);
    return a + share * along;
}

/// The first wall on a straight way.
class FirstWall : public b2RayCastCallback {
public:
    float ReportFixture(b2Fixture* fixture, const b2Vec2&, const b2Vec2&, float at) override
    {
        if (fixture->GetType() != b2Shape::e_chain) {
            return -1.0F; // a drop: look on
        }
        share = at;
        return at;
    }
    float share = 1.0F; ///< of the way up to it
};

} // namespace

Drips::World::World(const DripGround& ground)
    : world_(b2Vec2(0.0F, -gravity)), unit_(metres_per_unit * ground.scale)
{
    world_.SetContinuousPhysics(false);
    const b2BodyDef still;
    walls_ = world_.CreateBody(&still);
    for (const std::vector<DripPoint>& outline : ground.bodies) {
        add_outline(outline);
    }
    for (const DripPoint& mouth : ground.mouths) {
        mouths_.push_back(free_place_near(to_world(mouth)));
    }
}

b2Vec2 Drips::World::to_world(DripPoint place) const
{
    return {static_cast<float>(place.x / unit_), static_cast<float>(place.y / unit_)};
}

DripPoint Drips::World::to_metres(b2Vec2 place) const
{
    return {static_cast<double>(place.x) * unit_, static_cast<double>(place.y) * unit_};
}

/// Chains have one side: wound this way it is the outer one.
void Drips::World::add_outline(const std::vector<DripPoint>& outline)
{
    std::vector<b2Vec2> points;
    for (const DripPoint& place : outline) {
        const b2Vec2 point = to_world(place);
        const float apart = 3.0F * b2_linearSlop;
        if ((points.empty() || b2Distance(points.back(), point) > apart) &&
            (points.empty() || b2Distance(points.front(), point) > apart)) {
            points.push_back(point);
        }
    }
    if (points.size() < 3) {
        return;
    }
    if (area_of(points) < 0.0F) {
        std::ranges::reverse(points);
    }
    b2ChainShape chain;
    chain.CreateLoop(points.data(), static_cast<int32>(points.size()));
    b2FixtureDef wall;
    wall.shape = &chain;
    wall.friction = friction;
    walls_->CreateFixture(&wall);
    for (std::size_t i = 0; i < points.size(); ++i) {
        const Edge edge{points[i], points[(i + 1) % points.size()]};
        const b2AABB box{b2Min(edge.from, edge.to), b2Max(edge.from, edge.to)};
        const std::size_t index = edges_.size();
        edges_.push_back(edge);
        const auto proxy = static_cast<std::size_t>(edge_tree_.CreateProxy(box, nullptr));
        edge_of_proxy_.resize(std::max(edge_of_proxy_.size(), proxy + 1));
        edge_of_proxy_[proxy] = index;
    }
    outlines_.push_back(std::move(points));
}

bool Drips::World::is_free(b2Vec2 place, float radius) const
{
    return std::ranges::none_of(outlines_, [&](const std::vector<b2Vec2>& outline) {
        if (is_inside(outline, place)) {
            return true;
        }
        for (std::size_t i = 0; i < outline.size(); ++i) {
            const b2Vec2 point = nearest_on(outline[i], outline[(i + 1) % outline.size()], place);
            if (b2Distance(point, place) < radius) {
                return true;
            }
        }
        return false;
    });
}

/// The nearest place in the open where a usual drop has room; the place itself when there is none.
b2Vec2 Drips::World::free_place_near(b2Vec2 place) const
{
    constexpr int directions = 32;
    constexpr int rings = 60;
    for (int ring = 0; ring <= rings; ++ring) {
        for (int i = 0; i < directions; ++i) {
            // Downwards first: that is where a drop would go.
            const float angle = b2_pi * (1.5F + 2.0F * static_cast<float>(i) / directions);
            const float far = 0.5F * usual_radius * static_cast<float>(ring);
            const b2Vec2 there = place + far * b2Vec2(std::cos(angle), std::sin(angle));
            if (is_free(there, usual_radius)) {
                return there;
            }
        }
    }
    return place;
}

void Drips::World::add(std::size_t mouth, double kg)
{
    b2BodyDef loose;
    loose.type = b2_dynamicBody;
    // One to the left, one to the right: they would stand on each other's heads.
    const float side = added_++ % 2 == 0 ? 1.0F : -1.0F;
    loose.position = mouths_[mouth] + b2Vec2(0.4F * side * usual_radius, 0.0F);
    loose.linearVelocity.Set(0.6F * side, 0.0F);
    loose.fixedRotation = true;
    loose.linearDamping = damping_at_wall;
    b2CircleShape bead;
    bead.m_radius = radius_in_units(kg);
    b2FixtureDef drop;
    drop.shape = &bead;
    drop.density = 1.0F;
    drop.friction = friction;
    b2Body* const body = world_.CreateBody(&loose);
    body->CreateFixture(&drop);
    beads_.push_back({body, kg, false, side});
}

void Drips::World::remove(std::size_t bead)
{
    world_.DestroyBody(beads_[bead].body);
    beads_[bead] = beads_.back();
    beads_.pop_back();
}

void Drips::World::clear()
{
    while (!beads_.empty()) {
        remove(beads_.size() - 1);
    }
}

/// The point of the walls nearest to a place; far away when none is within reach.
Drips::World::NearestWall Drips::World::wall_near(b2Vec2 at, float within) const
{
    struct Search {
        const World& world;
        b2Vec2 at;
        NearestWall found;
        bool QueryCallback(int32 proxy)
        {
            const Edge& edge = world.edges_[world.edge_of_proxy_[static_cast<std::size_t>(proxy)]];
            const b2Vec2 point = nearest_on(edge.from, edge.to, at);
            const float far = b2Distance(point, at);
            if (far < found.distance) {
                found = {point, far};
            }
            return true;
        }
    };
    Search search{*this, at, {}};
    const b2Vec2 span{within, within};
    edge_tree_.Query(&search, b2AABB{at - span, at + span});
    return search.found;
}

/// A wall pulls what is near it and brakes it.
void Drips::World::cling(Bead& bead)
{
    b2Body& body = *bead.body;
    const float radius = body.GetFixtureList()->GetShape()->m_radius;
    const b2Vec2 at = body.GetPosition();
    const NearestWall wall = wall_near(at, reach * radius);
    bead.is_at_wall = wall.distance < reach * radius;
    body.SetLinearDamping(bead.is_at_wall ? damping_at_wall : damping_in_air);
    if (!bead.is_at_wall) {
        return;
    }
    b2Vec2 toward = wall.nearest - at;
    toward.Normalize();
    const float touching = 1.15F * radius;
    const float share = wall.distance < touching
                            ? 1.0F
                            : 1.0F - (wall.distance - touching) / (reach * radius - touching);
    // In two dimensions the body weighs as its area; the pull goes with the same power less than
    // the weight as in three.
    const float relative = radius / usual_radius;
    const float pull = cling_weights * gravity * body.GetMass() / (relative * relative) * share;
    body.ApplyForceToCenter(pull * toward, true);
    if (b2Dot(toward, down_) > level) { // on a level top liquid spreads to the edges
        const b2Vec2 across(-down_.y, down_.x);
        body.ApplyForceToCenter(spread * gravity * body.GetMass() * bead.side * across, true);
    }
}

void Drips::World::set_down(DripPoint down)
{
    const b2Vec2 wanted(static_cast<float>(down.x), static_cast<float>(down.y));
    if (wanted == down_) {
        return;
    }
    down_ = wanted;
    world_.SetGravity(gravity * down_);
    for (const Bead& bead : beads_) {
        bead.body->SetAwake(true);
    }
}

void Drips::World::step(double seconds)
{
    for (Bead& bead : beads_) {
        if (bead.body->IsAwake()) {
            cling(bead);
        }
    }
    for (const Bead& bead : beads_) {
        if (bead.body->IsAwake()) {
            stop_before_wall(*bead.body, static_cast<float>(seconds));
        }
    }
    constexpr int32 velocity_rounds = 6;
    constexpr int32 position_rounds = 2;
    world_.Step(static_cast<float>(seconds), velocity_rounds, position_rounds);
}

/// A drop that would go through a wall in a step goes up to it only.
///
/// The world's own way to see to that takes many times as long with 300 drops at walls.
void Drips::World::stop_before_wall(b2Body& body, float seconds) const
{
    const float radius = body.GetFixtureList()->GetShape()->m_radius;
    const b2Vec2 way = seconds * body.GetLinearVelocity();
    const float far = way.Length();
    if (far < 0.5F * radius) { // its own contact with the wall stops it
        return;
    }
    const b2Vec2 at = body.GetPosition();
    const b2Vec2 ahead = (1.0F + radius / far) * way;
    FirstWall wall;
    world_.RayCast(&wall, at, at + ahead);
    const float free = wall.share * (far + radius) - 0.9F * radius;
    if (wall.share < 1.0F && free < far) {
        body.SetLinearVelocity(std::max(0.0F, free / far) * body.GetLinearVelocity());
    }
}

void Drips::World::join(std::size_t kept, std::size_t gone)
{
    Bead& bead = beads_[kept];
    bead.mass += beads_[gone].mass;
    b2Fixture* const old = bead.body->GetFixtureList();
    b2CircleShape shape;
    shape.m_radius = radius_in_units(bead.mass);
    b2FixtureDef drop;
    drop.shape = &shape;
    drop.density = 1.0F;
    drop.friction = friction;
    bead.body->DestroyFixture(old);
    bead.body->CreateFixture(&drop);
    bead.body->SetAwake(true);
    remove(gone);
}

void Drips::World::merge(std::size_t most)
{
    for (std::size_t i = 0; i < beads_.size(); ++i) {
        for (std::size_t k = beads_.size(); k-- > i + 1;) {
            const b2Vec2 a = beads_[i].body->GetPosition();
            const b2Vec2 b = beads_[k].body->GetPosition();
            const float touch = 1.15F * (beads_[i].body->GetFixtureList()->GetShape()->m_radius +
                                         beads_[k].body->GetFixtureList()->GetShape()->m_radius);
            if (std::abs(a.x - b.x) > touch || std::abs(a.y - b.y) > touch ||
                b2Distance(a, b) > touch || beads_[i].mass + beads_[k].mass > heaviest_drop) {
                continue;
            }
            const b2Vec2 rush =
                beads_[i].body->GetLinearVelocity() - beads_[k].body->GetLinearVelocity();
            if (rush.Length() < slow) {
                join(i, k);
            }
        }
    }
    while (beads_.size() > most) {
        // The oldest gives way to its nearest.
        std::size_t nearest = 1;
        for (std::size_t k = 2; k < beads_.size(); ++k) {
            const b2Vec2 at = beads_[0].body->GetPosition();
            if (b2DistanceSquared(beads_[k].body->GetPosition(), at) <
                b2DistanceSquared(beads_[nearest].body->GetPosition(), at)) {
                nearest = k;
            }
        }
        join(nearest, 0);
    }
}

DripPoint Drips::World::place_of(const Bead& bead) const
{
    return to_metres(bead.body->GetPosition());
}

DripPoint Drips::World::speed_of(const Bead& bead) const
{
    return to_metres(bead.body->GetLinearVelocity());
}

double Drips::World::radius_of(double kg) const
{
    return static_cast<double>(radius_in_units(kg)) * unit_;
}

} // namespace scenes
