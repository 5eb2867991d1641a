#include "scenes/bench/section_names.hpp"

#include "scenes/bench/bench_layout.hpp"
#include "scenes/present/phrase.hpp"

#include <algorithm>
#include <cmath>

namespace scenes {
namespace {

constexpr float pad = 4.0F; ///< pixels at text scale 1, between a name and its box

TextStyle name_style(const Look& look)
{
    return {.size = look.small(), .colour = look.theme.ink, .anchor = Anchor::middle};
}

float name_width(const Text& text, const Look& look, const Mark& mark)
{
    const TextStyle style = name_style(look);
    float width = text.width(translated(mark.name), style) + 2.0F * look.px(pad);
    if (!mark.note.empty()) {
        width += text.width(mark.note, style) + look.px(6.0F);
    }
    return std::ceil(width);
}

LabelBox box_of(const sf::FloatRect& rect)
{
    return {static_cast<double>(rect.left), static_cast<double>(rect.top),
            static_cast<double>(rect.width), static_cast<double>(rect.height)};
}

sf::FloatRect rect_of(const LabelBox& box)
{
    return {static_cast<float>(box.left), static_cast<float>(box.top),
            static_cast<float>(box.width), static_cast<float>(box.height)};
}

} // namespace

void SectionNames::lay_out(const SectionDrawing& section, const SectionDrawing::Canvas& canvas,
                           const SectionDrawing::State& state)
{
    const Look& look = canvas.look;
    const sf::FloatRect& page = canvas.page;
    const float rim = look.px(2.0F);
    LabelGround ground(box_of({page.left + rim, page.top + rim, page.width - 2.0F * rim,
                               page.height - 2.0F * rim}),
                       2.0);
    scratch_.clear();
    scratch_text_.clear();
    section.cover(ground, {scratch_, scratch_text_, look, canvas.camera, page}, state);
    const LabelBox dial = box_of(tilt_dial_box(page, look));
    ground.cover(LabelBox{dial.left, dial.top, dial.width + 4.0, dial.height + 4.0},
                 LabelGround::Cover::words);
    ground.settle();

    std::vector<LabelWish> wishes;
    wanted_.clear();
    const float height = std::ceil(Text::line_height(name_style(look)));
    const auto& marks = section.marks();
    for (std::size_t i = 0; i < marks.size(); ++i) {
        if (const auto place = section.place_of(marks[i], state)) {
            const Point part = canvas.camera.to_pixels(*place);
            wanted_.push_back(i);
            wishes.push_back({{static_cast<double>(part.x), static_cast<double>(part.y)},
                              static_cast<double>(name_width(scratch_text_, look, marks[i])),
                              static_cast<double>(height),
                              marks[i].rank});
        }
    }
    const auto [low, high] = section.bounds();
    const float drawn =
        0.7F * canvas.camera.to_pixels(high.x - low.x); // wider: parts fill the page
    places_ = lay_out_labels(ground, wishes,
                             {.gap = static_cast<double>(look.px(3.0F)),
                              .nearest = static_cast<double>(look.px(13.0F)),
                              .reach = static_cast<double>(look.px(220.0F)),
                              .may_hide = drawn > page.width});
    int left_out = 0;
    for (std::size_t k = 0; k < places_.size(); ++k) {
        const LabelPoint& part = wishes[k].part;
        const bool is_here = page.contains(static_cast<float>(part.x), static_cast<float>(part.y));
        left_out += is_here && !places_[k].is_shown ? 1 : 0;
    }
    place_count(ground, look, left_out);
}

/// Says at the page's lower or upper edge, where that is free, how many names had no place.
void SectionNames::place_count(const LabelGround& ground, const Look& look, int left_out)
{
    more_at_.reset();
    if (left_out == 0) {
        return;
    }
    more_ = filled(phrase("Enlarge for {0} more"), {std::to_string(left_out)});
    const LabelBox& page = ground.page();
    const double height = std::ceil(static_cast<double>(Text::line_height(name_style(look))));
    const double width = static_cast<double>(scratch_text_.width(more_, name_style(look)));
    const double gap = static_cast<double>(look.px(6.0F));
    for (const double top : {page.bottom() - height, page.top}) {
        for (double left = page.right() - width - gap; left > page.left; left -= gap) {
            const LabelBox box{left, top, width, height};
            const LabelBox clear{left - gap, top, width + gap, height};
            const bool is_free = ground.share(clear, LabelGround::Cover::words) == 0.0 &&
                                 ground.share(clear, LabelGround::Cover::inner) == 0.0 &&
                                 ground.share(clear, LabelGround::Cover::solid) == 0.0 &&
                                 std::ranges::none_of(places_, [&](const LabelPlace& place) {
                                     return place.is_shown && place.box.overlaps(box, gap);
                                 });
            if (is_free) {
                more_at_ = Point{static_cast<float>(left), static_cast<float>(top + height / 2.0)};
                return;
            }
        }
    }
}

bool SectionNames::is_stale(const SectionDrawing& section, const SectionDrawing::State& state) const
{
    std::size_t next = 0;
    const auto& marks = section.marks();
    for (std::size_t i = 0; i < marks.size(); ++i) {
        const bool was_wanted = next < wanted_.size() && wanted_[next] == i;
        if (section.place_of(marks[i], state).has_value() != was_wanted) {
            return true;
        }
        next += was_wanted ? 1 : 0;
    }
    return false;
}

void SectionNames::refresh(const SectionDrawing& section, const SectionDrawing::Canvas& canvas,
                           const SectionDrawing::State& state, std::optional<std::size_t> pointed)
{
    const Look& look = canvas.look;
    const Theme& theme = look.theme;
    mesh_.clear();
    text_.clear();
    for (std::size_t k = 0; k < places_.size(); ++k) {
        const LabelPlace& place = places_[k];
        const Mark& mark = section.marks()[wanted_[k]];
        const auto spot = section.place_of(mark, state);
        if (!place.is_shown || !spot) {
            continue;
        }
        const bool is_pointed = pointed == wanted_[k];
        const Point part = canvas.camera.to_pixels(*spot);
        const sf::FloatRect box = rect_of(place.box);
        const Point foot(static_cast<float>(place.foot.x), static_cast<float>(place.foot.y));
        const Rgba ink = is_pointed ? theme.accent : theme.ink_soft;
        mesh_.stroke({part, pixel_middle(foot)},
                     {.colour = ink, .width = is_pointed ? look.px(1.8F) : look.thin()});
        mesh_.disc(part, look.px(is_pointed ? 3.0F : 2.0F), ink);
        if (place.solid + place.inner > 0.0) { // section lines stop short of words
            mesh_.block(box, place.inner > 0.0 || place.solid < 0.6 ? theme.ground : theme.section);
        }
        TextStyle style = name_style(look);
        style.colour = is_pointed ? theme.accent : theme.ink;
        const Point at{box.left + look.px(pad), std::round(box.top + box.height / 2.0F)};
        const sf::FloatRect words = text_.write(translated(mark.name), at, style);
        if (!mark.note.empty()) {
            style.colour = theme.ink_soft;
            text_.write(mark.note, {words.left + words.width + look.px(6.0F), at.y}, style);
        }
    }
    if (more_at_) {
        TextStyle style = name_style(look);
        style.colour = theme.ink_soft;
        text_.write(more_, *more_at_, style);
    }
}

void SectionNames::draw(sf::RenderTarget& target) const
{
    target.draw(mesh_);
    target.draw(text_);
}

void SectionNames::draw_card(sf::RenderTarget& target, const SectionDrawing::Canvas& canvas,
                             const SectionDrawing::State& state, const Mark& mark, Point at)
{
    const Look& look = canvas.look;
    const Theme& theme = look.theme;
    const TextStyle title{
        .face = Face::bold, .size = look.body(), .colour = theme.ink, .anchor = Anchor::top};
    TextStyle label{.size = look.small(), .colour = theme.ink_soft, .anchor = Anchor::top};
    const std::vector<CardLine> lines =
        state.is_open ? card_lines(mark, state.machine) : std::vector<CardLine>();
    float label_width = 0.0F;
    float figure_width = 0.0F;
    for (const CardLine& line : lines) {
        label_width = std::max(label_width, card_text_.width(line.label, label));
        figure_width = std::max(figure_width, card_text_.width(line.figure, label));
    }
    const float rim = look.whole(9.0F);
    const float gap = look.px(16.0F);
    const float row = std::round(Text::line_height(label) * 1.05F);
    const float head = std::round(Text::line_height(title) * 1.1F);
    const float inner = std::max(card_text_.width(translated(mark.name), title),
                                 lines.empty() ? 0.0F : label_width + gap + figure_width);
    const sf::Vector2f size{std::round(inner + 2.0F * rim),
                            std::round(head + row * static_cast<float>(lines.size()) + 1.6F * rim)};
    const sf::FloatRect& page = canvas.page;
    const float aside = look.px(18.0F);
    Point corner{at.x + aside, at.y + aside};
    if (corner.x + size.x > page.left + page.width) {
        corner.x = at.x - aside - size.x;
    }
    if (corner.y + size.y > page.top + page.height) {
        corner.y = at.y - aside - size.y;
    }
    corner.x = std::round(
        std::clamp(corner.x, page.left, std::max(page.left, page.left + page.width - size.x)));
    corner.y = std::round(
        std::clamp(corner.y, page.top, std::max(page.top, page.top + page.height - size.y)));

    card_.clear();
    card_text_.clear();
    const sf::FloatRect box{corner, size};
    const float line = std::max(1.0F, look.whole(1.0F));
    card_.block(box, theme.ink);
    card_.block(
        {box.left + line, box.top + line, box.width - 2.0F * line, box.height - 2.0F * line},
        theme.sheet);
    card_.block({box.left, box.top, look.whole(4.0F), box.height}, theme.accent);
    card_text_.write(translated(mark.name), {corner.x + rim, corner.y + rim * 0.7F}, title);
    float y = corner.y + rim * 0.8F + head;
    for (const CardLine& entry : lines) {
        label.colour = theme.ink_soft;
        label.align = Align::left;
        card_text_.write(entry.label, {corner.x + rim, y}, label);
        label.colour = theme.ink;
        label.align = Align::right;
        card_text_.write(entry.figure, {corner.x + size.x - rim, y}, label);
        y += row;
    }
    target.draw(card_);
    target.draw(card_text_);
}

std::vector<SectionNames::Shown> SectionNames::shown(const SectionDrawing& section) const
{
    std::vector<Shown> boxes;
    for (std::size_t k = 0; k < places_.size(); ++k) {
        if (places_[k].is_shown) {
            boxes.push_back(
                {translated(section.marks()[wanted_[k]].name), rect_of(places_[k].box)});
        }
    }
    return boxes;
}

} // namespace scenes
