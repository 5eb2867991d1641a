#pragma once

#include <cstddef>
#include <memory>
#include <span>
#include <vector>

namespace scenes {

/// A place of the drawing plane.
///
/// unit:    metres
/// sign:    y upwards
struct DripPoint {
    double x = 0.0;
    double y = 0.0;
};

/// What drops run along and fall to.
struct DripGround {
    std::vector<std::vector<DripPoint>> bodies; ///< closed outlines of castings, hoses, tank
    std::vector<DripPoint> mouths;              ///< where leaks come out
    DripPoint floor_left;                       ///< ends of the level floor
    DripPoint floor_right;
    double pool_middle = 0.0; ///< x of a pool of which nobody saw the drops
    double scale = 1.0;       ///< of drops and pools: 1 for a drawing some 200 mm wide
};

struct Drop {
    DripPoint at;
    double radius = 0.0; ///< metres
    double mass = 0.0;   ///< kg
    DripPoint speed;     ///< m/s; a falling drop is drawn longer
    bool is_forming = false;
};

struct Pool {
    double middle = 0.0; ///< x, metres
    double mass = 0.0;   ///< kg
    double half = 0.0;   ///< half its width, metres
    double depth = 0.0;  ///< metres
};

/// Fuel outside the machine: drops that run along the castings, hang, fall, pool and evaporate.
///
/// Looks, not physics, but for one thing: they carry the mass the model lost, and the sum of drops,
/// pools and vapour is that mass, to rounding. Nothing here feeds back into the model. The same
/// calls give the same drops.
/// source:  Box2D carries the drops; sizes, cling and damping are chosen for looks
class Drips {
public:
    static constexpr std::size_t most_drops = 400;

    /// valid:   outlines of three points or more; the floor has a length
    explicit Drips(const DripGround& ground);
    ~Drips();
    Drips(const Drips&) = delete;
    Drips& operator=(const Drips&) = delete;

    /// Fuel has come out at a mouth.
    ///
    /// valid:   mouth below the number of mouths, kg from 0 on
    void leak(std::size_t mouth, double kg);
    /// Which way things fall: the unit vector down, as far as it lies in the drawing's plane.
    ///
    /// The drawing is not turned with the machine: gravity turns in it, as liquids do. A drop that
    /// leaves the drawing has fallen to the floor, and lies where it would with the drawing turned
    /// upright. Where down points out of the plane, drops fall straight to the floor.
    void set_down(DripPoint down);
    /// Goes on; long steps are looked at in short ones, up to a thirtieth of a second of motion.
    ///
    /// unit:    seconds of the machine, from 0 on
    void go_on(double seconds);
    /// The clock was turned: drops are cleared, and what had leaked by then lies in the pools or
    /// has evaporated, in the shares that it had.
    void set_leaked(double kg);

    /// Fuel that leaked before anyone looked: it lies where drops have landed since.
    ///
    /// valid:   kg from 0 on
    void add_fallen(double kg);

    [[nodiscard]] std::span<const Drop> drops() const { return drops_; }
    [[nodiscard]] std::span<const Pool> pools() const { return pools_; }
    [[nodiscard]] double leaked() const { return leaked_; }
    [[nodiscard]] double evaporated() const { return evaporated_; }
    /// Mass of the drops, those that still form at their mouths included.
    [[nodiscard]] double mass_in_drops() const;
    [[nodiscard]] double mass_in_pools() const;

private:
    class World;

    void form_drops(double seconds);
    void land();
    [[nodiscard]] bool has_landed(DripPoint at, double radius) const;
    [[nodiscard]] double floor_x(DripPoint from) const;
    void pour(double x, double kg);
    void evaporate(double seconds);
    void shape_pools();
    void merge_touching_pools();
    void fill_pools(double kg);
    void list_drops();

    std::unique_ptr<World> world_;
    DripGround ground_;
    DripPoint low_; ///< corners of what drops fall in
    DripPoint high_;
    DripPoint down_{0.0, -1.0};
    std::vector<double> forming_;    ///< kg at each mouth
    std::vector<double> since_drop_; ///< s, of each mouth
    std::vector<Drop> drops_;
    std::vector<Pool> pools_;
    double leaked_ = 0.0;
    double evaporated_ = 0.0;
};

} // namespace scenes
