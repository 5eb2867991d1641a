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
constexpr float damping_at_wall = 1.2F;
constexpr float damping_in_air = 0.8F;
constexpr int pieces = 3; ///< of a step
constexpr float friction = 0.02F;
/// Pull of a wall on a drop of usual size, in its weights. It grows with the radius, the weight
/// with its cube: a drop hangs until it has grown to twice the usual mass, then falls.
constexpr float cling_weights = 1.6F;
constexpr float reach = 2.2F; ///< radii within which a wall pulls
constexpr float drag_at_wall = 0.02F;
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

/// The point of the walls nearest to a place, within an area that is asked for.
class NearestWall : public b2QueryCallback {
public:
    explicit NearestWall(b2Vec2 at) : at_(at) {}
    bool ReportFixture(b2Fixture* fixture) override
    {
        if (fixture->GetType() != b2Shape::e_chain) {
            return true;
        }
        const auto* const chain = static_cast<const b2ChainShape*>(fixture->GetShape());
        for (int32 i = 0; i < chain->GetChildCount(); ++i) {
            b2EdgeShape edge;
            chain->GetChildEdge(&edge, i);
            const b2Vec2 point = nearest_on(edge.m_vertex1, edge.m_vertex2, at_);
            const float far = (point - at_).Length();
            if (far < distance) {
                distance = far;
                nearest = point;
            }
        }
        return true;
    }
    float distance = std::numeric_limits<float>::max();
    b2Vec2 nearest{0.0F, 0.0F};

private:
    b2Vec2 at_;
};

} // namespace

Drips::World::World(const DripGround& ground)
    : world_(b2Vec2(0.0F, -gravity)), unit_(metres_per_unit * ground.scale)
{
    world_.SetContinuousPhysics(false);
    world_.SetAutoClearForces(false); // what clings does so in all pieces of a step
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

/// A wall pulls what is near it and brakes it.
void Drips::World::cling(Bead& bead)
{
    b2Body& body = *bead.body;
    const float radius = body.GetFixtureList()->GetShape()->m_radius;
    const b2Vec2 at = body.GetPosition();
    const b2Vec2 span{reach * radius, reach * radius};
    b2AABB near;
    near.lowerBound = at - span;
    near.upperBound = at + span;
    NearestWall wall(at);
    world_.QueryAABB(&wall, near);
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
    body.SetLinearVelocity((1.0F - drag_at_wall) * body.GetLinearVelocity());
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
    constexpr int32 velocity_rounds = 6;
    constexpr int32 position_rounds = 2;
    // A drop falls no further in such a piece than its radius, so that it goes through no wall; the
    // world's own way to see to that takes ten times as long with 300 drops at walls.
    for (int i = 0; i < pieces; ++i) {
        world_.Step(static_cast<float>(seconds) / pieces, velocity_rounds, position_rounds);
    }
    world_.ClearForces();
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
