#pragma once

#include "scenes/present/contrast.hpp"
#include "scenes/view/scan_rows.hpp"
#include "scenes/view/triangulate.hpp"

#include <SFML/Graphics/Color.hpp>
#include <SFML/Graphics/Drawable.hpp>
#include <SFML/Graphics/Rect.hpp>
#include <SFML/Graphics/RenderStates.hpp>
#include <SFML/Graphics/RenderTarget.hpp>
#include <SFML/Graphics/Vertex.hpp>
#include <SFML/System/Vector2.hpp>

#include <cmath>
#include <initializer_list>
#include <span>
#include <vector>

namespace scenes {

/// A place on the screen in pixels, y downwards.
using Point = sf::Vector2f;

/// The middle of the pixel a point lies in: where the points of thin level or upright lines belong,
/// lest they spread over two rows of pixels.
inline Point pixel_middle(Point point)
{
    return {std::floor(point.x) + 0.5F, std::floor(point.y) + 0.5F};
}

inline sf::Color to_sfml(Rgba colour)
{
    return {colour.red, colour.green, colour.blue, colour.alpha};
}

/// How a line is drawn.
///
/// unit: width in pixels; below 1 the line fades instead of thinning
struct Pen {
    Rgba colour;
    float width = 1.0F;
    bool closed = false;
    bool round = false; ///< round ends; otherwise cut square at the end points
};

/// A vertical cut through a ribbon.
struct Slice {
    float x = 0.0F;
    float top = 0.0F;
    float bottom = 0.0F;
};

/// A straight run of colours from one point to another; beyond them the end colours.
struct Gradient {
    Point from;
    Rgba first;
    Point to;
    Rgba last;
};

/// Antialiased flat shapes in one list of triangles, drawn by one call.
///
/// Every edge fades out over one pixel, so that no multisampling is needed (which costs three to
/// four times the time with software rendering). Keeps its memory when cleared: a mesh that is
/// rebuilt every frame allocates nothing once it has grown.
class Mesh : public sf::Drawable {
public:
    void clear() { vertices_.clear(); }
    [[nodiscard]] std::size_t vertex_count() const { return vertices_.size(); }

    /// Draws a line through the points, with mitred corners.
    void stroke(std::span<const Point> points, const Pen& pen);
    void stroke(std::initializer_list<Point> points, const Pen& pen)
    {
        stroke(std::span{points.begin(), points.size()}, pen);
    }

    /// Fills the band between the tops and the bottoms of slices that follow each other.
    void ribbon(std::span<const Slice> slices, Rgba colour);

    /// Fills a simple polygon, concave or not, wound either way.
    void fill(std::span<const Point> polygon, Rgba colour);
    void fill(std::span<const Point> polygon, const Gradient& gradient);
    void fill(std::initializer_list<Point> polygon, Rgba colour)
    {
        fill(std::span{polygon.begin(), polygon.size()}, colour);
    }

    /// Fills a rectangle whose edges are whole pixels; costs two triangles and no feather.
    void block(const sf::FloatRect& box, Rgba colour);
    void disc(Point centre, float radius, Rgba colour);
    void ring(Point centre, float radius, const Pen& pen);
    /// Puts a dot of a texture: four triangles that fade towards their rim.
    void dot(Point centre, float radius, Rgba colour);

    /// Cuts polygons into rows; lends its memory to hatching.
    [[nodiscard]] RowScanner& scanner() { return scanner_; }

private:
    struct Corner {
        Point at;
        Point before; ///< side vector that ends the segment before, one pixel of half width long
        Point after;  ///< side vector that begins the segment after
    };
    struct Shade {
        sf::Color core;
        sf::Color clear;
        float core_half;  ///< half width drawn at full strength
        float outer_half; ///< half width including the feather
    };

    void draw(sf::RenderTarget& target, sf::RenderStates states) const override;
    void triangle(Point a, sf::Color ca, Point b, sf::Color cb, Point c, sf::Color cc);
    void quad(Point a, sf::Color ca, Point b, sf::Color cb, Point c, sf::Color cc, Point d,
              sf::Color cd);
    /// Gives a corner its side vectors from the directions of the line before and after it.
    static void set_sides(Corner& corner, Point arriving, Point leaving);
    void collect_corners(std::span<const Point> points, const Pen& pen);
    void band(Point a, Point side_a, Point b, Point side_b, const Shade& shade);
    void flat_cap(Point at, Point side, Point outwards, const Shade& shade);
    void round_cap(Point at, Point side, Point outwards, const Shade& shade);
    template <class ColourAt>
    void fill_with(std::span<const Point> polygon, ColourAt colour_at);

    std::vector<sf::Vertex> vertices_;
    std::vector<Corner> corners_;
    std::vector<Point> circle_;
    std::vector<Point> outline_;
    Triangulator triangulator_;
    RowScanner scanner_;
};

} // namespace scenes
