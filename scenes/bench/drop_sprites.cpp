#include "scenes/bench/drop_sprites.hpp"

#include "scenes/view/vector_maths.hpp"

#include <SFML/Graphics/Image.hpp>
#include <SFML/Graphics/RenderTarget.hpp>

#include <algorithm>
#include <cmath>

// The picture has a column for each half pixel of radius: the rim is as thick for all. Two texels a
// pixel, so that what is smoothed between them stays as sharp as an edge of a mesh. Upper row:
// drops that lie; lower row: drops that fall, with a tail upwards.

namespace scenes {
namespace {

constexpr float finest = 1.0F; ///< radius of the first column
constexpr float per_pixel = 2.0F;
constexpr float margin = 1.5F; ///< pixels about a drop
constexpr float tail = 2.2F;   ///< radii from the middle to its end
constexpr float tail_half = 0.8F;
constexpr int columns = 2 * static_cast<int>(DropSprites::largest - finest) + 1;
constexpr int cell_width = static_cast<int>(per_pixel * 2.0F * (DropSprites::largest + margin));
constexpr int cell_height =
    static_cast<int>(per_pixel * ((1.0F + tail) * DropSprites::largest + 2.0F * margin));

float radius_of(int column)
{
    return finest + 0.5F * static_cast<float>(column);
}

/// The middle of a drop in the picture, in texels.
Point middle_of(int column, bool falls)
{
    const float down =
        falls ? static_cast<float>(cell_width) + per_pixel * (tail * DropSprites::largest + margin)
              : 0.5F * static_cast<float>(cell_width);
    return {(static_cast<float>(column) + 0.5F) * static_cast<float>(cell_width), down};
}

bool is_in_tail(Point from, float radius)
{
    const float up = -from.y / (tail * radius);
    return up >= 0.0F && up <= 1.0F && std::abs(from.x) <= tail_half * radius * (1.0F - up);
}

/// The colour of a texel, by nine looks into it.
///
/// unit:    pixels from the drop's middle
sf::Color texel(Point from, float radius, float core, bool falls, const Look& look)
{
    constexpr int looks = 3;
    int within = 0;
    int inside = 0;
    for (int i = 0; i < looks * looks; ++i) {
        const Point shift(static_cast<float>(i % looks) - 1.0F,
                          static_cast<float>(i / looks) - 1.0F);
        const Point at = from + shift / (per_pixel * looks);
        const float far = length(at);
        within += far <= radius || (falls && is_in_tail(at, radius)) ? 1 : 0;
        inside += far <= core ? 1 : 0;
    }
    const double share = within == 0 ? 0.0 : static_cast<double>(inside) / within;
    sf::Color colour = to_sfml(mix(look.theme.fuel_mark, look.theme.fuel, share));
    colour.a = static_cast<sf::Uint8>(colour.a * within / (looks * looks));
    return colour;
}

} // namespace

void DropSprites::paint(const Look& look)
{
    sf::Image image;
    image.create(columns * cell_width, cell_width + cell_height);
    for (int column = 0; column < columns; ++column) {
        const float radius = radius_of(column);
        const float core = radius > look.px(2.6F) ? radius - look.px(1.3F) : -1.0F;
        for (int y = 0; y < cell_width + cell_height; ++y) {
            const bool falls = y >= cell_width;
            const Point middle = middle_of(column, falls);
            for (int x = column * cell_width; x < (column + 1) * cell_width; ++x) {
                const Point at(static_cast<float>(x) + 0.5F, static_cast<float>(y) + 0.5F);
                image.setPixel(static_cast<unsigned>(x), static_cast<unsigned>(y),
                               texel((at - middle) / per_pixel, radius, core, falls, look));
            }
        }
    }
    is_usable_ = picture_.loadFromImage(image);
    picture_.setSmooth(true);
}

void DropSprites::begin(const Look& look)
{
    vertices_.clear();
    if (theme_id_ != look.theme.id || scale_ != look.px(1.0F)) {
        theme_id_ = look.theme.id;
        scale_ = look.px(1.0F);
        paint(look);
    }
}

void DropSprites::add(Point at, float radius, std::optional<Point> back)
{
    const int column =
        std::clamp(static_cast<int>(std::lround(2.0F * (radius - finest))), 0, columns - 1);
    const float painted = radius_of(column);
    const float stretch = radius / painted;
    const float half = painted + margin;
    const float above = back ? tail * painted + margin : half;
    const Point up = back.value_or(Point{0.0F, -1.0F});
    const Point right{-up.y, up.x};
    const Point middle = middle_of(column, back.has_value());
    const auto corner = [&](float x, float y) { // pixels of the picture, y upwards
        return sf::Vertex(at + stretch * (x * right + y * up), middle + per_pixel * Point{x, -y});
    };
    const sf::Vertex corners[] = {corner(-half, above), corner(half, above), corner(half, -half),
                                  corner(-half, -half)};
    for (const std::size_t i : {0U, 1U, 2U, 0U, 2U, 3U}) {
        vertices_.push_back(corners[i]);
    }
}

void DropSprites::draw(sf::RenderTarget& target) const
{
    if (!vertices_.empty()) {
        target.draw(vertices_.data(), vertices_.size(), sf::Triangles, &picture_);
    }
}

} // namespace scenes
