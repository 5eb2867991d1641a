#include "scenes/bench/section_outlines.hpp"

#include <algorithm>
#include <cmath>

namespace scenes {

std::vector<Place> places_of(const Outline& outline)
{
    std::vector<Place> places;
    places.reserve(outline.size());
    for (const Spot spot : outline) {
        places.push_back(place_of(spot));
    }
    return places;
}

void SectionOutlines::keep_parts_of(const sim::Rig& rig)
{
    std::erase_if(leaks, [&](const LeakMouth& leak) {
        return std::ranges::find(rig.parts, leak.part, &sim::PartSpec::id) == rig.parts.end();
    });
}

std::vector<Place> SectionOutlines::pool(double volume) const
{
    const double spilt = std::max(0.0, volume) * 1e6; // mL
    const double half = std::min(52.0, 5.0 + 5.0 * std::sqrt(spilt)) * 1e-3 * pool_scale;
    const double deep = std::min(1.5, 0.7 + 0.01 * spilt) * 1e-3 * pool_scale;
    const double bank = 2e-3 * pool_scale;
    const double floor = floor_left.y;
    const double left = std::max(floor_left.x, pool_middle - half);
    const double right = std::min(floor_right.x, pool_middle + half);
    return {
        {left, floor}, {left + bank, floor + deep}, {right - bank, floor + deep}, {right, floor}};
}

} // namespace scenes
