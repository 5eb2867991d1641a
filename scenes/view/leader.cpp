#include "scenes/view/leader.hpp"

namespace scenes {

sf::FloatRect draw_leader(Mesh& mesh, Text& text, const Look& look, const Leader& leader)
{
    const Theme& theme = look.theme;
    const bool is_rightwards = leader.words.x >= leader.part.x;
    const float side = is_rightwards ? 1.0F : -1.0F;
    const Rgba colour = leader.is_strong ? theme.accent : theme.ink_soft;
    const Point elbow = pixel_middle(leader.words);
    const Point end = elbow + Point{side * look.px(12.0F), 0.0F};
    mesh.stroke({leader.part, elbow, end}, {.colour = colour, .width = look.thin()});
    mesh.disc(leader.part, look.px(2.2F), colour);

    TextStyle name{.face = leader.is_strong ? Face::bold : Face::regular,
                   .size = look.body(),
                   .colour = leader.is_strong ? theme.accent : theme.ink,
                   .anchor = Anchor::middle};
    TextStyle figure = name;
    figure.face = Face::regular;
    figure.colour = theme.ink_soft;
    const float gap = leader.figure.empty() ? 0.0F : look.px(7.0F);
    const float name_width = text.width(leader.name, name);
    const float width = name_width + gap + text.width(leader.figure, figure);
    const float left = is_rightwards ? end.x + look.px(6.0F) : end.x - look.px(6.0F) - width;
    const sf::FloatRect box = text.write(leader.name, {left, elbow.y}, name);
    if (!leader.figure.empty()) {
        text.write(leader.figure, {left + name_width + gap, elbow.y}, figure);
    }
    return {box.left, box.top, width, box.height};
}

} // namespace scenes
