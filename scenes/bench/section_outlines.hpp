#pragma once

#include "scenes/bench/section_sheet.hpp"

#include "sim/rig.hpp"

#include <memory>
#include <string_view>
#include <vector>

namespace scenes {

/// Where a leak of the machine comes out, in the drawing.
struct LeakMouth {
    std::string_view part; ///< of the rig; its reading "flow" is the fuel through it, m3/s
    double outward = 1.0;  ///< sign that the reading has when fuel leaves; 0: it has no reading
    Place place;           ///< of the drawing plane, metres
};

/// A body seen from outside: what drops run along, and what an outside view shows.
struct Body {
    std::vector<Place> outline; ///< closed, metres
    Material material = Material::alloy;
};

/// The outsides of a machine, its leaks and the floor under it.
///
/// unit: all places are metres of the drawing plane, as the camera takes them
struct SectionOutlines {
    std::vector<Body> bodies;  ///< in the order that they cover each other
    std::vector<Place> screws; ///< that hold covers, as an outside view shows them
    std::vector<LeakMouth> leaks;
    Place floor_left; ///< ends of the level floor
    Place floor_right;
    double pool_middle = 0.0; ///< x about which spilt fuel lies
    double pool_scale = 1.0;  ///< of the machine's drawing

    /// Leaves out what a rig has no part for.
    void keep_parts_of(const sim::Rig& rig);
};

/// The outline in metres.
std::vector<Place> places_of(const Outline& outline);
constexpr Place place_of(Spot spot)
{
    return {spot.x * 1e-3, spot.y * 1e-3};
}
constexpr Spot spot_of(Place place)
{
    return {place.x * 1e3, place.y * 1e3};
}

struct SectionPlan;
struct TrimmerPlan;
SectionOutlines outlines_of(const SectionPlan& plan);
SectionOutlines outlines_of(const TrimmerPlan& plan);

/// The outlines of the machine a rig describes, in the places that its section drawing has.
///
/// throws: AssetError when the rig has no section drawing
SectionOutlines outlines_of(const sim::Rig& rig);

} // namespace scenes
