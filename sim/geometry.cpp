#include "geometry.hpp"

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

Vector tilted_up(Angle forward, Angle side)
{
    const double cf = std::cos(forward.si);
    return {-std::sin(forward.si), -std::sin(side.si) * cf, std::cos(side.si) * cf};
}

} // namespace sim
