#pragma once

#include "scenes/drips/drips.hpp"

#include <box2d/box2d.h>

#include <limits>
#include <optional>

namespace scenes {

/// What a drop is when it leaves its mouth by itself: 2.3 mg, a bead of 0.9 mm radius at scale 1.
inline constexpr double usual_drop = 2.3e-6; ///< kg
/// Heavier ones do not merge: they would look like stones.
inline constexpr double heaviest_drop = 6.0 * usual_drop;

/// The drops as bodies of Box2D, between chains that are the castings.
class Drips::World {
public:
    explicit World(const DripGround& ground);

    /// Lets a drop go, beside whatever stands at its mouth.
    void add(std::size_t mouth, double kg);
    void step(double seconds);
    /// Which way drops fall: the direction down as far as it lies in the drawing's plane.
    void set_down(DripPoint down);
    /// Makes one drop of two that touch and hardly move, and of the nearest two while there are too
    /// many.
    void merge(std::size_t most);
    void clear();

    struct Bead {
        b2Body* body = nullptr;
        double mass = 0.0;
        bool is_at_wall = false;
        float side = 1.0F; ///< which way it leaves a level top
    };
    [[nodiscard]] std::vector<Bead>& beads() { return beads_; }
    [[nodiscard]] const std::vector<Bead>& beads() const { return beads_; }
    void remove(std::size_t bead);

    [[nodiscard]] DripPoint place_of(const Bead& bead) const;
    [[nodiscard]] DripPoint speed_of(const Bead& bead) const;
    /// Metres.
    [[nodiscard]] double radius_of(double kg) const;
    [[nodiscard]] DripPoint mouth(std::size_t index) const { return to_metres(mouths_[index]); }

private:
    [[nodiscard]] b2Vec2 to_world(DripPoint place) const;
    [[nodiscard]] DripPoint to_metres(b2Vec2 place) const;
    void add_outline(const std::vector<DripPoint>& outline);
    [[nodiscard]] bool is_free(b2Vec2 place, float radius) const;
    [[nodiscard]] b2Vec2 free_place_near(b2Vec2 place) const;
    struct NearestWall {
        b2Vec2 nearest{0.0F, 0.0F};
        float distance = std::numeric_limits<float>::max();
    };
    [[nodiscard]] NearestWall wall_near(b2Vec2 at, float within) const;
    void stop_before_wall(b2Body& body, float seconds) const;
    void cling(Bead& bead);
    void join(std::size_t kept, std::size_t gone);

    b2World world_;
    b2Vec2 down_{0.0F, -1.0F}; ///< shorter the more it points out of the plane
    b2Body* walls_;
    double unit_; ///< metres in a unit of the world
    std::vector<std::vector<b2Vec2>> outlines_;
    struct Edge {
        b2Vec2 from;
        b2Vec2 to;
    };
    std::vector<Edge> edges_; ///< of all outlines
    b2DynamicTree edge_tree_; ///< finds those near a place
    std::vector<std::size_t> edge_of_proxy_;
    std::vector<b2Vec2> mouths_;
    std::vector<Bead> beads_;
    unsigned added_ = 0;
};

} // namespace scenes
