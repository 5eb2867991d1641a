#pragma once

#include "scenes/present/label_layout.hpp"
#include "scenes/view/camera.hpp"
#include "scenes/view/clip.hpp"
#include "scenes/view/materials.hpp"
#include "scenes/view/mesh.hpp"
#include "scenes/view/text.hpp"
#include "scenes/view/theme.hpp"

#include <vector>

namespace scenes {

/// A place of the section.
///
/// unit: millimetres; in and around the bowl these are the machine's own x and z
struct Spot {
    double x = 0.0;
    double y = 0.0;
};
constexpr Spot operator+(Spot a, Spot b)
{
    return {a.x + b.x, a.y + b.y};
}
constexpr Spot operator-(Spot a, Spot b)
{
    return {a.x - b.x, a.y - b.y};
}
constexpr Spot operator*(Spot a, double factor)
{
    return {a.x * factor, a.y * factor};
}

using Outline = std::vector<Spot>;

/// A rectangle of the section as an outline.
Outline box_outline(Spot low, Spot high);
/// The outline turned by an angle about a place.
///
/// sign: positive turns anticlockwise
Outline turned_about(Outline outline, Spot about, double radians);
double distance(Spot a, Spot b);
/// Adds smooth points between two spots, level at both ends.
void add_bend(Outline& outline, Spot from, Spot to);
Outline circle_outline(Spot centre, double radius);
/// The part of a line between two shares of its length.
Outline stretch(const Outline& line, double from, double to);
/// The strip on both sides of a line: first its left side, then its right side backwards.
///
/// unit: half is half the strip's width, millimetres
Outline strip(const Outline& line, double half);

/// What a section is drawn with: the one way from millimetres to pixels.
struct Sheet {
    Mesh& mesh;
    Text& text;
    const Look& look;      ///< of lines and textures
    const Look& lettering; ///< of words
    const Camera& camera;
    sf::FloatRect page;            ///< pixels; what lies outside is not drawn
    LabelGround* ground = nullptr; ///< told what covers what, for the places of names

    [[nodiscard]] Point at(Spot spot) const
    {
        return camera.to_pixels(Place{spot.x * 1e-3, spot.y * 1e-3});
    }
    [[nodiscard]] float pixels(double millimetres) const
    {
        return camera.to_pixels(millimetres * 1e-3);
    }
    [[nodiscard]] Polygon polygon(const Outline& outline) const;
    [[nodiscard]] const Theme& theme() const { return look.theme; }

    /// Draws a cut solid with its section lines and its edge.
    void solid(const Outline& outline, Material material, bool is_mirrored = false) const;
    /// Fills a space without drawing its edge.
    void fill(const Outline& outline, Content content, float phase = 0.0F) const;
    /// Keeps names off a space that something moves through.
    void reserve(const Outline& outline) const { cover(outline, LabelGround::Cover::inner); }
    /// A space cut into solids: air and its edge.
    void hollow(const Outline& outline) const;
    void edge(const Outline& outline, bool is_closed = true) const;
    /// The two long edges of a strip; its ends stay open.
    void walls(const Outline& both) const;
    /// A thin line, for what is no edge of a solid.
    void line(const Outline& outline, bool is_closed = false) const;
    [[nodiscard]] Texture texture(bool is_mirrored = false, float phase = 0.0F) const
    {
        return {.origin = at({}), .mirrored = is_mirrored, .phase = phase};
    }
    /// Whether small words fit into a width.
    ///
    /// unit: room in millimetres
    [[nodiscard]] bool has_room(std::string_view words, double room) const;
    /// Small words in the second ink; left out when wider than the room they have.
    void note(std::string_view words, Spot spot, double room, Align align = Align::left) const;

    void cover(const Outline& outline, LabelGround::Cover kind) const;
    /// The pieces of a polygon on the page: one enlarged forty times must not be hatched all over.
    [[nodiscard]] std::vector<Polygon> on_page(Polygon points) const;
};

} // namespace scenes
