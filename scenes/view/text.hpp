#pragma once

#include "scenes/present/contrast.hpp"
#include "scenes/view/fonts.hpp"
#include "scenes/view/mesh.hpp"

#include <SFML/Graphics/Drawable.hpp>

#include <string>
#include <string_view>
#include <vector>

namespace scenes {

enum class Align { left, centre, right };
/// Which height of the line stands at the given point. `middle` is the middle of the capitals.
enum class Anchor { top, middle, baseline, bottom };
/// Text along the x axis, or turned a quarter to be read from below upwards.
enum class Turn { none, upwards };

struct TextStyle {
    Face face = Face::regular;
    float size = 16.0F; ///< em height in pixels; rounded to whole ones
    Rgba colour;
    Align align = Align::left;
    Anchor anchor = Anchor::baseline;
    Turn turn = Turn::none;
};

/// Crisp text: whole pixels, final size, one draw call per face and size.
///
/// Like a mesh it is cleared and written anew, and keeps its memory.
class Text : public sf::Drawable {
public:
    explicit Text(const Fonts& fonts) : fonts_(&fonts) {}

    void clear();

    /// Writes one line and returns the box it fills, from ascenders to descenders.
    sf::FloatRect write(std::string_view text, Point at, const TextStyle& style);

    /// Writes as many lines as needed into a width and returns the box they fill. Breaks at blanks
    /// and line feeds; a word wider than the box gets a line of its own.
    sf::FloatRect write_wrapped(std::string_view text, const sf::FloatRect& box,
                                const TextStyle& style);

    [[nodiscard]] float width(std::string_view text, const TextStyle& style) const;
    /// The text; where it is wider than that, its end gives way to an ellipsis.
    [[nodiscard]] std::string shortened(std::string_view text, float width,
                                        const TextStyle& style) const;
    /// The box `write` would fill.
    [[nodiscard]] sf::FloatRect measure(std::string_view text, Point at,
                                        const TextStyle& style) const;
    [[nodiscard]] std::vector<std::string_view> wrap(std::string_view text, float width,
                                                     const TextStyle& style) const;
    [[nodiscard]] static float line_height(const TextStyle& style);

    /// The boxes of all lines written since `clear`: what tests check for overlaps and cuts.
    [[nodiscard]] const std::vector<sf::FloatRect>& boxes() const { return boxes_; }

private:
    struct Batch {
        Face face;
        unsigned size;
        std::vector<sf::Vertex> vertices;
    };
    struct Metrics {
        float capital; ///< height of capitals
        float ascent;  ///< height of the tallest letters
        float descent;
    };

    void draw(sf::RenderTarget& target, sf::RenderStates states) const override;
    Batch& batch(Face face, unsigned size);
    [[nodiscard]] Metrics metrics(const TextStyle& style) const;
    /// The left end of the baseline, in whole pixels.
    [[nodiscard]] Point start(std::string_view text, Point at, const TextStyle& style) const;
    [[nodiscard]] sf::FloatRect box_from(Point start, float width, const TextStyle& style) const;

    const Fonts* fonts_;
    std::vector<Batch> batches_;
    std::vector<sf::FloatRect> boxes_;
};

} // namespace scenes
