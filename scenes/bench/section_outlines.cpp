#include "scenes/bench/section_outlines.hpp"

#include <algorithm>

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

} // namespace scenes
