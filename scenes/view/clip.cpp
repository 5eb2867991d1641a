#include "scenes/view/clip.hpp"

#include "scenes/view/vector_maths.hpp"

#include <algorithm>
#include <cstddef>

// The outline is cut where it crosses the edge of the half plane. The inside parts are chains that
// begin at an entry and end at an exit. Along the edge, sorted crossings 0-1, 2-3, ... bound the
// stretches that lie inside the polygon, so an exit is joined to its pair partner, which is the
// entry of the chain to go on with. Following the links until they close gives one piece.

namespace scenes {
namespace {

struct Crossing {
    Point at;
    float along = 0.0F;
    bool enters = false;
    std::size_t chain = 0; ///< of an entry: the chain that begins here
};

struct Cut {
    std::vector<Crossing> crossings; ///< in the order of the outline
    std::vector<Polygon> chains;
    std::vector<std::size_t> exits; ///< per chain, its exit in `crossings`
};

float depth(Point point, const HalfPlane& plane)
{
    // Exactly on the edge counts as just inside, so that every crossing is a change of sign.
    const float value = dot_product(point - plane.edge, plane.inwards);
    return value == 0.0F ? 1e-6F : value;
}

Cut cut_outline(std::span<const Point> polygon, const HalfPlane& plane)
{
    Cut cut;
    const Point along = turned(unit_vector(plane.inwards));
    const std::size_t count = polygon.size();
    std::size_t start = 0;
    while (start < count && depth(polygon[start], plane) > 0.0F) {
        ++start;
    }
    if (start == count) {
        return cut;
    }
    for (std::size_t step = 0; step < count; ++step) {
        const Point a = polygon[(start + step) % count];
        const Point b = polygon[(start + step + 1) % count];
        const float depth_a = depth(a, plane);
        const float depth_b = depth(b, plane);
        if ((depth_a > 0.0F) != (depth_b > 0.0F)) {
            const Point at = a + (b - a) * (depth_a / (depth_a - depth_b));
            const bool enters = depth_b > 0.0F;
            if (enters) {
                cut.chains.emplace_back();
            } else {
                cut.exits.push_back(cut.crossings.size());
            }
            cut.chains.back().push_back(at);
            cut.crossings.push_back({at, dot_product(at, along), enters, cut.chains.size() - 1});
        }
        if (depth_b > 0.0F) {
            cut.chains.back().push_back(b);
        }
    }
    return cut;
}

/// The crossings' order along the edge; neighbours 0-1, 2-3, ... are partners.
std::vector<std::size_t> order_along_edge(const std::vector<Crossing>& crossings)
{
    std::vector<std::size_t> order(crossings.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
        order[i] = i;
    }
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return crossings[a].along < crossings[b].along;
    });
    return order;
}

} // namespace

std::vector<Polygon> clip(std::span<const Point> polygon, const HalfPlane& plane)
{
    const auto is_inside = [&](Point point) { return depth(point, plane) > 0.0F; };
    if (std::all_of(polygon.begin(), polygon.end(), is_inside)) {
        return {Polygon(polygon.begin(), polygon.end())};
    }
    const Cut cut = cut_outline(polygon, plane);
    const std::vector<std::size_t> order = order_along_edge(cut.crossings);
    std::vector<std::size_t> partner(order.size());
    for (std::size_t i = 0; i + 1 < order.size(); i += 2) {
        partner[order[i]] = order[i + 1];
        partner[order[i + 1]] = order[i];
    }
    std::vector<bool> is_used(cut.chains.size(), false);
    std::vector<Polygon> pieces;
    for (std::size_t first = 0; first < cut.chains.size(); ++first) {
        Polygon piece;
        for (std::size_t chain = first; !is_used[chain];) {
            is_used[chain] = true;
            piece.insert(piece.end(), cut.chains[chain].begin(), cut.chains[chain].end());
            const Crossing& next = cut.crossings[partner[cut.exits[chain]]];
            chain = next.enters ? next.chain : first;
        }
        if (piece.size() > 2) {
            pieces.push_back(std::move(piece));
        }
    }
    return pieces;
}

std::vector<std::pair<Point, Point>> stretches_inside(std::span<const Point> polygon,
                                                      const HalfPlane& plane)
{
    std::vector<std::pair<Point, Point>> stretches;
    const Cut cut = cut_outline(polygon, plane);
    const std::vector<std::size_t> order = order_along_edge(cut.crossings);
    for (std::size_t i = 0; i + 1 < order.size(); i += 2) {
        stretches.emplace_back(cut.crossings[order[i]].at, cut.crossings[order[i + 1]].at);
    }
    return stretches;
}

} // namespace scenes
