#include "scenes/bench/section_name_placer.hpp"

#include "scenes/present/phrase.hpp"
#include "scenes/view/vector_maths.hpp"

#include <algorithm>

namespace scenes {
namespace {

bool is_crossing(Point a, Point b, Point c, Point d)
{
    const auto side = [](Point p, Point q, Point r) { return cross_product(q - p, r - p); };
    return (side(a, b, c) > 0.0F) != (side(a, b, d) > 0.0F) &&
           (side(c, d, a) > 0.0F) != (side(c, d, b) > 0.0F);
}

bool is_crossing(Point a, Point b, const sf::FloatRect& box)
{
    const Point nw{box.left, box.top};
    const Point ne{box.left + box.width, box.top};
    const Point sw{box.left, box.top + box.height};
    const Point se{box.left + box.width, box.top + box.height};
    return box.contains(a) || box.contains(b) || is_crossing(a, b, nw, se) ||
           is_crossing(a, b, ne, sw);
}

sf::FloatRect grown(const sf::FloatRect& box, float by)
{
    return {box.left - by, box.top - by, box.width + 2.0F * by, box.height + 2.0F * by};
}

} // namespace

NamePlacer::NamePlacer(const Sheet& sheet, Spot low, Spot high, NamePass pass)
    : sheet_(sheet), pass_(pass), page_(box(low, high))
{
}

void NamePlacer::keep_clear(Spot low, Spot high)
{
    taken_.push_back(box(low, high));
}

void NamePlacer::place(const Name& name)
{
    for (const bool with_figure : {true, false}) {
        if (!with_figure && name.figure.empty()) {
            return;
        }
        for (const Spot spot : name.words) {
            const Leader leader{.part = sheet_.at(name.part),
                                .words = sheet_.at(spot),
                                .name = translated(name.name),
                                .figure = with_figure ? name.figure : std::string_view{}};
            const sf::FloatRect ink = box_of(leader);
            if (is_free(leader, ink)) {
                draw(leader);
                words_.push_back(ink);
                taken_.push_back(grown(ink, sheet_.look.px(3.0F)));
                lines_.emplace_back(leader.part, leader.words);
                return;
            }
        }
    }
}

void NamePlacer::draw(const Leader& leader) const
{
    if (pass_ == NamePass::words) {
        draw_leader(sheet_.mesh, sheet_.text, sheet_.look, leader);
        return;
    }
    const Rgba colour = sheet_.theme().ink_soft;
    sheet_.mesh.stroke({leader.part, pixel_middle(leader.words)},
                       {.colour = colour, .width = sheet_.look.thin()});
    sheet_.mesh.disc(leader.part, sheet_.look.px(2.2F), colour);
}

sf::FloatRect NamePlacer::box(Spot low, Spot high) const
{
    const Point corner = sheet_.at({low.x, high.y});
    const Point opposite = sheet_.at({high.x, low.y});
    return {corner, opposite - corner};
}

sf::FloatRect NamePlacer::box_of(const Leader& leader) const
{
    const TextStyle style{
        .size = sheet_.look.body(), .colour = sheet_.theme().ink, .anchor = Anchor::middle};
    float width = sheet_.text.width(leader.name, style) + sheet_.look.px(18.0F);
    if (!leader.figure.empty()) {
        width += sheet_.text.width(leader.figure, style) + sheet_.look.px(7.0F);
    }
    const sf::FloatRect line = sheet_.text.measure("Ag", leader.words, style);
    const bool is_rightwards = leader.words.x >= leader.part.x;
    return {is_rightwards ? leader.words.x : leader.words.x - width, line.top, width, line.height};
}

bool NamePlacer::is_free(const Leader& leader, const sf::FloatRect& ink) const
{
    const bool is_on_page = ink.left >= page_.left && ink.top >= page_.top &&
                            ink.left + ink.width <= page_.left + page_.width &&
                            ink.top + ink.height <= page_.top + page_.height;
    return is_on_page &&
           std::ranges::none_of(taken_,
                                [&](const sf::FloatRect& box) { return box.intersects(ink); }) &&
           std::ranges::none_of(lines_,
                                [&](const auto& line) {
                                    return is_crossing(line.first, line.second, leader.part,
                                                       leader.words) ||
                                           is_crossing(line.first, line.second, ink);
                                }) &&
           std::ranges::none_of(words_, [&](const sf::FloatRect& box) {
               return is_crossing(leader.part, leader.words, box);
           });
}

} // namespace scenes
