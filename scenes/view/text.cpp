#include "scenes/view/text.hpp"

#include <SFML/System/Utf.hpp>

#include <algorithm>
#include <cmath>

namespace scenes {
namespace {

unsigned pixel_size(const TextStyle& style)
{
    return static_cast<unsigned>(std::max(1.0F, std::round(style.size)));
}

/// Calls `use(code point)` for every character of a UTF-8 text; broken bytes come as U+FFFD.
template <class Use>
void each_character(std::string_view text, Use use)
{
    for (const char* at = text.data(); at != text.data() + text.size();) {
        sf::Uint32 character = 0;
        at = sf::Utf8::decode(at, text.data() + text.size(), character, 0xFFFD);
        use(character);
    }
}

void add_glyph(std::vector<sf::Vertex>& vertices, const sf::Glyph& glyph, Point pen, Turn turn,
               sf::Color colour)
{
    // One pixel more on each side, as the glyph's page keeps it clear: bilinear sampling needs it.
    constexpr float margin = 1.0F;
    const sf::FloatRect& b = glyph.bounds;
    const sf::FloatRect t(glyph.textureRect);
    const float x[] = {b.left - margin, b.left + b.width + margin};
    const float y[] = {b.top - margin, b.top + b.height + margin};
    const float u[] = {t.left - margin, t.left + t.width + margin};
    const float v[] = {t.top - margin, t.top + t.height + margin};
    const auto corner = [&](int i, int j) {
        const Point offset = turn == Turn::none ? Point{x[i], y[j]} : Point{y[j], -x[i]};
        return sf::Vertex(pen + offset, colour, {u[i], v[j]});
    };
    for (const auto& [i, j] : {std::pair{0, 0}, {1, 0}, {1, 1}, {0, 0}, {1, 1}, {0, 1}}) {
        vertices.push_back(corner(i, j));
    }
}

} // namespace

void Text::draw(sf::RenderTarget& target, sf::RenderStates states) const
{
    for (const Batch& batch : batches_) {
        if (!batch.vertices.empty()) {
            states.texture = &fonts_->face(batch.face).getTexture(batch.size);
            target.draw(batch.vertices.data(), batch.vertices.size(), sf::Triangles, states);
        }
    }
}

void Text::clear()
{
    for (Batch& batch : batches_) {
        batch.vertices.clear();
    }
    boxes_.clear();
}

Text::Batch& Text::batch(Face face, unsigned size)
{
    const auto found = std::find_if(batches_.begin(), batches_.end(), [&](const Batch& b) {
        return b.face == face && b.size == size;
    });
    if (found != batches_.end()) {
        return *found;
    }
    return batches_.emplace_back(Batch{face, size, {}});
}

Text::Metrics Text::metrics(const TextStyle& style) const
{
    const sf::Font& font = fonts_->face(style.face);
    const unsigned size = pixel_size(style);
    const sf::FloatRect low = font.getGlyph('g', size, false).bounds;
    return {-font.getGlyph('H', size, false).bounds.top,
            -font.getGlyph('b', size, false).bounds.top, low.top + low.height};
}

std::string Text::shortened(std::string_view text, float width, const TextStyle& style) const
{
    std::string words(text);
    while (!text.empty() && this->width(words, style) > width) {
        do { // a whole letter of UTF-8
            text.remove_suffix(1);
        } while (!text.empty() &&
                 (static_cast<unsigned char>(words[text.size()]) & 0xC0U) == 0x80U);
        words = std::string(text) + "\u2026";
    }
    return words;
}

float Text::width(std::string_view text, const TextStyle& style) const
{
    float sum = 0.0F;
    if (fonts_->is_usable()) {
        const sf::Font& font = fonts_->face(style.face);
        each_character(text, [&](sf::Uint32 character) {
            sum += font.getGlyph(character, pixel_size(style), false).advance;
        });
    }
    return sum;
}

float Text::line_height(const TextStyle& style)
{
    return std::round(style.size * 1.35F);
}

Point Text::start(std::string_view text, Point at, const TextStyle& style) const
{
    const Metrics m = metrics(style);
    float back = 0.0F;
    if (style.align != Align::left) {
        back = width(text, style) * (style.align == Align::centre ? 0.5F : 1.0F);
    }
    float down = 0.0F;
    switch (style.anchor) {
    case Anchor::top:
        down = m.ascent;
        break;
    case Anchor::middle:
        down = std::round(m.capital) / 2.0F;
        break;
    case Anchor::baseline:
        break;
    case Anchor::bottom:
        down = -m.descent;
        break;
    }
    const Point offset = style.turn == Turn::none ? Point{-back, down} : Point{down, back};
    return {std::round(at.x + offset.x), std::round(at.y + offset.y)};
}

sf::FloatRect Text::box_from(Point start, float width, const TextStyle& style) const
{
    const Metrics m = metrics(style);
    if (style.turn == Turn::none) {
        return {start.x, start.y - m.ascent, width, m.ascent + m.descent};
    }
    return {start.x - m.ascent, start.y - width, m.ascent + m.descent, width};
}

sf::FloatRect Text::measure(std::string_view text, Point at, const TextStyle& style) const
{
    if (!fonts_->is_usable()) {
        return {at.x, at.y, 0.0F, 0.0F};
    }
    return box_from(start(text, at, style), width(text, style), style);
}

sf::FloatRect Text::write(std::string_view text, Point at, const TextStyle& style)
{
    if (!fonts_->is_usable() || text.empty()) {
        return {at.x, at.y, 0.0F, 0.0F};
    }
    const sf::Font& font = fonts_->face(style.face);
    const unsigned size = pixel_size(style);
    std::vector<sf::Vertex>& vertices = batch(style.face, size).vertices;
    const Point first = start(text, at, style);
    float advance = 0.0F;
    each_character(text, [&](sf::Uint32 character) {
        const sf::Glyph& glyph = font.getGlyph(character, size, false);
        const float along = std::round(advance);
        const Point pen =
            first + (style.turn == Turn::none ? Point{along, 0.0F} : Point{0.0F, -along});
        if (glyph.textureRect.width > 0) {
            add_glyph(vertices, glyph, pen, style.turn, to_sfml(style.colour));
        }
        advance += glyph.advance;
    });
    boxes_.push_back(box_from(first, advance, style));
    return boxes_.back();
}

std::vector<std::string_view> Text::wrap(std::string_view text, float width,
                                         const TextStyle& style) const
{
    std::vector<std::string_view> lines;
    std::size_t line = 0; // where the line begins
    std::size_t fits = 0; // up to where it is known to fit
    std::size_t at = 0;
    while (at <= text.size()) {
        const std::size_t stop = std::min(text.find_first_of(" \n", at), text.size());
        if (this->width(text.substr(line, stop - line), style) > width && fits > line) {
            lines.push_back(text.substr(line, fits - line));
            line = fits + 1;
        }
        fits = stop;
        if (stop == text.size() || text[stop] == '\n') {
            lines.push_back(text.substr(line, stop - line));
            line = stop + 1;
        }
        at = stop + 1;
    }
    return lines;
}

sf::FloatRect Text::write_wrapped(std::string_view text, const sf::FloatRect& box,
                                  const TextStyle& style)
{
    TextStyle line_style = style;
    line_style.anchor = Anchor::top;
    line_style.turn = Turn::none;
    const float anchor = style.align == Align::left     ? 0.0F
                         : style.align == Align::centre ? box.width / 2.0F
                                                        : box.width;
    float y = box.top;
    float widest = 0.0F;
    for (const std::string_view line : wrap(text, box.width, style)) {
        widest = std::max(widest, write(line, {box.left + anchor, y}, line_style).width);
        y += line_height(style);
    }
    return {box.left, box.top, widest, y - box.top};
}

} // namespace scenes
