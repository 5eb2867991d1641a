#include "scenes/view/mesh.hpp"

#include "scenes/view/vector_maths.hpp"

#include <algorithm>
#include <cmath>

// Every edge is feathered: full strength up to half a pixel inside the edge, nothing half a pixel
// outside it. Sampled at pixel centres this equals a box filter for edges along the axes, and comes
// close to one for others.

namespace scenes {
namespace {

constexpr float pi = 3.14159265F;
/// Below this cosine between neighbouring segments a corner is cut square instead of mitred:
/// the mitre would stick out further than the line is wide.
constexpr float sharpest_mitre = -0.2F;
/// Points nearer to each other, in pixels, count as one: they have no direction between them.
constexpr float same_point = 0.02F;

sf::Color faded(sf::Color colour)
{
    colour.a = 0;
    return colour;
}

Rgba colour_at(const Gradient& gradient, Point point)
{
    const Point run = gradient.to - gradient.from;
    const float square = std::max(1e-6F, dot_product(run, run));
    const float share = std::clamp(dot_product(point - gradient.from, run) / square, 0.0F, 1.0F);
    return mix(gradient.first, gradient.last, static_cast<double>(share));
}

int circle_steps(float radius)
{
    return std::clamp(static_cast<int>(8.0F + 3.0F * std::sqrt(radius) * 1.5F), 10, 96);
}

} // namespace

void Mesh::draw(sf::RenderTarget& target, sf::RenderStates states) const
{
    if (!vertices_.empty()) {
        target.draw(vertices_.data(), vertices_.size(), sf::Triangles, states);
    }
}

void Mesh::triangle(Point a, sf::Color ca, Point b, sf::Color cb, Point c, sf::Color cc)
{
    vertices_.emplace_back(a, ca);
    vertices_.emplace_back(b, cb);
    vertices_.emplace_back(c, cc);
}

void Mesh::quad(Point a, sf::Color ca, Point b, sf::Color cb, Point c, sf::Color cc, Point d,
                sf::Color cd)
{
    triangle(a, ca, b, cb, c, cc);
    triangle(a, ca, c, cc, d, cd);
}

void Mesh::collect_corners(std::span<const Point> points, const Pen& pen)
{
    corners_.clear();
    for (const Point point : points) {
        if (corners_.empty() || length(point - corners_.back().at) > same_point) {
            corners_.push_back({point, {}, {}});
        }
    }
    if (pen.closed && corners_.size() > 2 &&
        length(corners_.front().at - corners_.back().at) <= same_point) {
        corners_.pop_back();
    }
    const std::size_t count = corners_.size();
    for (std::size_t i = 0; count > 1 && i < count; ++i) {
        const Point here = corners_[i].at;
        const Point in = unit_vector(here - corners_[(i + count - 1) % count].at);
        const Point out = unit_vector(corners_[(i + 1) % count].at - here);
        const bool is_first = !pen.closed && i == 0;
        const bool is_last = !pen.closed && i + 1 == count;
        set_sides(corners_[i], is_first ? out : in, is_last ? in : out);
    }
}

void Mesh::set_sides(Corner& corner, Point arriving, Point leaving)
{
    if (dot_product(arriving, leaving) < sharpest_mitre) {
        corner.before = turned(arriving);
        corner.after = turned(leaving);
        return;
    }
    const Point middle = turned(unit_vector(arriving + leaving));
    corner.before = middle / dot_product(middle, turned(leaving));
    corner.after = corner.before;
}

void Mesh::band(Point a, Point side_a, Point b, Point side_b, const Shade& shade)
{
    const Point out_a = side_a * shade.outer_half;
    const Point out_b = side_b * shade.outer_half;
    const Point in_a = side_a * shade.core_half;
    const Point in_b = side_b * shade.core_half;
    quad(a + out_a, shade.clear, b + out_b, shade.clear, b + in_b, shade.core, a + in_a,
         shade.core);
    if (shade.core_half > 0.0F) {
        quad(a + in_a, shade.core, b + in_b, shade.core, b - in_b, shade.core, a - in_a,
             shade.core);
    }
    quad(a - in_a, shade.core, b - in_b, shade.core, b - out_b, shade.clear, a - out_a,
         shade.clear);
}

void Mesh::flat_cap(Point at, Point side, Point outwards, const Shade& shade)
{
    const Point inner = side * shade.core_half;
    const Point outer = side * shade.outer_half;
    quad(at + inner, shade.core, at - inner, shade.core, at - inner + outwards, shade.clear,
         at + inner + outwards, shade.clear);
    triangle(at + inner, shade.core, at + inner + outwards, shade.clear, at + outer, shade.clear);
    triangle(at - inner, shade.core, at - outer, shade.clear, at - inner + outwards, shade.clear);
}

void Mesh::round_cap(Point at, Point side, Point outwards, const Shade& shade)
{
    const int steps = std::max(4, circle_steps(shade.outer_half) / 2);
    Point last = side;
    for (int i = 1; i <= steps; ++i) {
        const float angle = pi * static_cast<float>(i) / static_cast<float>(steps);
        const Point next = side * std::cos(angle) + outwards * std::sin(angle);
        triangle(at, shade.core, at + last * shade.core_half, shade.core,
                 at + next * shade.core_half, shade.core);
        quad(at + last * shade.core_half, shade.core, at + next * shade.core_half, shade.core,
             at + next * shade.outer_half, shade.clear, at + last * shade.outer_half, shade.clear);
        last = next;
    }
}

void Mesh::stroke(std::span<const Point> points, const Pen& pen)
{
    collect_corners(points, pen);
    const std::size_t count = corners_.size();
    if (count < 2) {
        return;
    }
    Rgba colour = pen.colour;
    colour.alpha = static_cast<std::uint8_t>(static_cast<float>(colour.alpha) *
                                             std::clamp(pen.width, 0.0F, 1.0F));
    const float width = std::max(1.0F, pen.width);
    const sf::Color core = to_sfml(colour);
    const Shade shade{core, faded(core), (width - 1.0F) / 2.0F, (width + 1.0F) / 2.0F};
    for (std::size_t i = 0; i + (pen.closed ? 0 : 1) < count; ++i) {
        const Corner& a = corners_[i];
        const Corner& b = corners_[(i + 1) % count];
        band(a.at, a.after, b.at, b.before, shade);
        const bool is_joined = pen.closed || i + 2 < count;
        if (is_joined && b.before != b.after && shade.core_half > 0.8F) {
            round_cap(b.at, b.before, unit_vector(b.at - a.at), shade);
        }
    }
    // The ends of hairlines are left as they are: a feather there costs much and shows nothing.
    if (!pen.closed && (shade.core_half > 0.1F || pen.round)) {
        const Corner& first = corners_.front();
        const Corner& last = corners_.back();
        const Point backwards = unit_vector(first.at - corners_[1].at);
        const Point forwards = unit_vector(last.at - corners_[count - 2].at);
        const auto cap = pen.round ? &Mesh::round_cap : &Mesh::flat_cap;
        (this->*cap)(first.at, first.after, backwards, shade);
        (this->*cap)(last.at, last.before, forwards, shade);
    }
}

void Mesh::ribbon(std::span<const Slice> slices, Rgba colour)
{
    const sf::Color core = to_sfml(colour);
    const sf::Color clear = faded(core);
    for (std::size_t i = 0; i + 1 < slices.size(); ++i) {
        const Slice& a = slices[i];
        const Slice& b = slices[i + 1];
        // On a steep edge the feather is made taller, to stay one pixel wide across the edge.
        const float run = std::max(0.1F, b.x - a.x);
        const float over = std::min(5.0F, std::hypot(1.0F, (b.top - a.top) / run));
        const float under = std::min(5.0F, std::hypot(1.0F, (b.bottom - a.bottom) / run));
        quad({a.x, a.top - over}, clear, {b.x, b.top - over}, clear, {b.x, b.top}, core,
             {a.x, a.top}, core);
        quad({a.x, a.top}, core, {b.x, b.top}, core, {b.x, b.bottom}, core, {a.x, a.bottom}, core);
        quad({a.x, a.bottom}, core, {b.x, b.bottom}, core, {b.x, b.bottom + under}, clear,
             {a.x, a.bottom + under}, clear);
    }
}

template <class ColourAt>
void Mesh::fill_with(std::span<const Point> polygon, ColourAt colour)
{
    outline_.clear();
    for (const Point point : polygon) {
        if (outline_.empty() || length(point - outline_.back()) > same_point) {
            outline_.push_back(point);
        }
    }
    while (outline_.size() > 1 && length(outline_.front() - outline_.back()) <= same_point) {
        outline_.pop_back();
    }
    const std::size_t count = outline_.size();
    if (count < 3) {
        return;
    }
    if (twice_area(outline_) < 0.0F) {
        std::reverse(outline_.begin(), outline_.end());
    }
    const std::span<const std::uint32_t> cut = triangulator_.triangles(outline_);
    for (const std::uint32_t index : cut) {
        vertices_.emplace_back(outline_[index], colour(outline_[index]));
    }
    const auto outwards = [this, count](std::size_t i) {
        const Point in = unit_vector(outline_[i] - outline_[(i + count - 1) % count]);
        const Point out = unit_vector(outline_[(i + 1) % count] - outline_[i]);
        const Point side = -turned(unit_vector(in + out));
        return side / std::max(0.5F, dot_product(side, -turned(out)));
    };
    Point side_a = outwards(0);
    for (std::size_t i = 0; i < count; ++i) {
        const std::size_t j = (i + 1) % count;
        const Point side_b = outwards(j);
        const sf::Color a = colour(outline_[i]);
        const sf::Color b = colour(outline_[j]);
        quad(outline_[i], a, outline_[j], b, outline_[j] + side_b, faded(b), outline_[i] + side_a,
             faded(a));
        side_a = side_b;
    }
}

void Mesh::fill(std::span<const Point> polygon, Rgba colour)
{
    const sf::Color flat = to_sfml(colour);
    fill_with(polygon, [flat](Point) { return flat; });
}

void Mesh::fill(std::span<const Point> polygon, const Gradient& gradient)
{
    fill_with(polygon, [&gradient](Point at) { return to_sfml(colour_at(gradient, at)); });
}

void Mesh::block(const sf::FloatRect& box, Rgba colour)
{
    const float left = std::round(box.left);
    const float top = std::round(box.top);
    const float right = std::round(box.left + box.width);
    const float bottom = std::round(box.top + box.height);
    const sf::Color c = to_sfml(colour);
    quad({left, top}, c, {right, top}, c, {right, bottom}, c, {left, bottom}, c);
}

void Mesh::disc(Point centre, float radius, Rgba colour)
{
    const sf::Color core = to_sfml(colour);
    const Shade shade{core, faded(core), std::max(0.0F, radius - 0.5F), radius + 0.5F};
    round_cap(centre, {1.0F, 0.0F}, {0.0F, 1.0F}, shade);
    round_cap(centre, {-1.0F, 0.0F}, {0.0F, -1.0F}, shade);
}

void Mesh::ring(Point centre, float radius, const Pen& pen)
{
    const int steps = circle_steps(radius) * 2;
    circle_.clear();
    for (int i = 0; i < steps; ++i) {
        const float angle = 2.0F * pi * static_cast<float>(i) / static_cast<float>(steps);
        circle_.push_back(centre + Point{std::cos(angle), std::sin(angle)} * radius);
    }
    Pen closed = pen;
    closed.closed = true;
    stroke(circle_, closed);
}

void Mesh::dot(Point centre, float radius, Rgba colour)
{
    const sf::Color core = to_sfml(colour);
    const sf::Color rim = faded(core);
    const Point corners[] = {{radius, 0.0F}, {0.0F, radius}, {-radius, 0.0F}, {0.0F, -radius}};
    for (std::size_t i = 0; i < 4; ++i) {
        triangle(centre, core, centre + corners[i], rim, centre + corners[(i + 1) % 4], rim);
    }
}

} // namespace scenes
