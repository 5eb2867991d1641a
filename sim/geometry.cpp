#include "geometry.hpp"

#include <algorithm>

namespace sim {

Port find_port(const PortPlace& place, Vector up)
{
    const Box& box = place.box;
    if (box.mixed) {
        return {dot(box.end_a - place.point, up), 0.0, true};
    }
    if (!box.exists()) {
        return {};
    }
    const double tall =
        box.size.x * std::abs(up.x) + box.size.y * std::abs(up.y) + box.size.z * std::abs(up.z);
    return {tall, dot(box.centre - place.point, up) - 0.5 * tall, false};
}

Tilt tilt_for(Vector up)
{
    const double length = std::sqrt(dot(up, up));
    // Taken from 0.0, a nothing is not negative: upside down is then 180 degrees, never minus 180.
    return {{std::asin(std::clamp(0.0 - up.x / length, -1.0, 1.0))},
            {std::atan2(0.0 - up.y, up.z)}};
}

Vector tilted_up(Angle forward, Angle side)
{
    const double cf = std::cos(forward.si);
    return {-std::sin(forward.si), -std::sin(side.si) * cf, std::cos(side.si) * cf};
}

} // namespace sim
