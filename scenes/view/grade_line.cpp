#include "scenes/view/grade_line.hpp"

#include "scenes/view/number.hpp"
#include "scenes/view/shapes.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

namespace scenes {
namespace {

float y_of(const GradeView& view, double head)
{
    const double share = std::clamp((head - view.low) / (view.high - view.low), 0.0, 1.0);
    return view.box.top + view.box.height * static_cast<float>(1.0 - share);
}

bool is_cliff(const GradeView& view, const GradeStation& station)
{
    return std::abs(station.before - station.after) >= view.least_named;
}

} // namespace

void GradeLine::trace(const Sheet& sheet, std::span<const GradeStation> stations)
{
    line_.clear();
    for (const GradeStation& station : stations) {
        line_.push_back({station.x, y_of(sheet.view, station.before)});
        line_.push_back({station.x, y_of(sheet.view, station.after)});
    }
}

void GradeLine::draw_ground(const Sheet& sheet)
{
    const Look& look = sheet.look;
    const sf::FloatRect& box = sheet.view.box;
    const int most = std::clamp(static_cast<int>(box.height / look.px(26.0F)), 2, 8);
    const Ticks ticks = nice_ticks(sheet.view.low, sheet.view.high, most);
    TextStyle style{.size = look.small(), .colour = look.theme.ink_soft};
    style.align = Align::right;
    style.anchor = Anchor::middle;
    for (const double value : ticks.values) {
        const float y = std::round(y_of(sheet.view, value));
        sheet.mesh.block({box.left, y, box.width, 1.0F}, look.theme.ink_grid);
        sheet.text.write(fixed_text(value, ticks.decimals), {box.left - look.px(6.0F), y}, style);
    }
    style = {.face = Face::bold, .size = look.small(), .colour = look.theme.ink};
    const float baseline = box.top - look.px(12.0F);
    const float left = std::max(0.0F, box.left - look.px(44.0F));
    const sf::FloatRect title = sheet.text.write(sheet.view.title, {left, baseline}, style);
    style.face = Face::regular;
    style.colour = look.theme.ink_soft;
    const Point beside{title.left + title.width + look.px(8.0F), baseline};
    const sf::FloatRect unit = sheet.text.write(sheet.view.unit, beside, style);
    labels_.push_back({title.left, title.top, unit.left + unit.width - title.left, title.height});
}

void GradeLine::draw_twin(const Sheet& sheet)
{
    if (!sheet.view.twin.empty()) {
        trace(sheet, sheet.view.twin);
        sheet.mesh.stroke(line_, {.colour = sheet.look.theme.twin, .width = sheet.look.px(1.4F)});
    }
}

void GradeLine::draw_line(const Sheet& sheet)
{
    const Look& look = sheet.look;
    trace(sheet, sheet.view.stations);
    if (line_.size() < 2) {
        return;
    }
    ground_ = line_;
    const float bottom = sheet.view.box.top + sheet.view.box.height;
    ground_.push_back({line_.back().x, bottom});
    ground_.push_back({line_.front().x, bottom});
    sheet.mesh.fill(ground_, with_alpha(look.theme.fuel, 110));
    draw_twin(sheet);
    trace(sheet, sheet.view.stations);
    sheet.mesh.stroke(line_, {.colour = look.theme.ink, .width = look.px(2.6F), .round = true});
}

void GradeLine::draw_levels(const Sheet& sheet)
{
    const Look& look = sheet.look;
    for (const GradeLevel& level : sheet.view.levels) {
        const float y = std::round(y_of(sheet.view, level.head)) + 0.5F;
        const std::array<Point, 2> line{{{level.from, y}, {level.to, y}}};
        dash(sheet.mesh, line, {.colour = look.theme.warning, .width = look.px(1.6F)},
             {.on = look.px(9.0F), .off = look.px(4.0F)});
        const TextStyle style{.size = look.small(),
                              .colour = look.theme.warning,
                              .align = Align::right,
                              .anchor = Anchor::bottom};
        labels_.push_back(sheet.text.write(level.name, {level.to, y - look.px(3.0F)}, style));
    }
}

std::optional<Point> GradeLine::find_room(const Sheet& sheet, const std::string& label, Point at,
                                          const TextStyle& style) const
{
    const sf::FloatRect& box = sheet.view.box;
    const float half = sheet.text.width(label, style) / 2.0F;
    const float line = Text::line_height(style);
    const float aside = half + sheet.look.px(4.0F);
    const float far_right = std::max(box.left + half, box.left + box.width - half);
    const float ceiling = box.top - sheet.look.px(30.0F);
    const auto candidate = [&](float dx, float dy) {
        return Point{std::clamp(at.x + dx, box.left + half, far_right), at.y + dy};
    };
    const auto is_free = [&](Point place) {
        const sf::FloatRect wanted = sheet.text.measure(label, place, style);
        return wanted.top >= ceiling &&
               std::none_of(labels_.begin(), labels_.end(),
                            [&](const sf::FloatRect& taken) { return taken.intersects(wanted); });
    };
    // Above a falling line there is room: over the cliff, else beside it, else a line higher.
    for (const float dy : {0.0F, -line, -2.0F * line, 2.0F * line}) {
        for (const float dx : {0.0F, aside, -aside}) {
            if (is_free(candidate(dx, dy))) {
                return candidate(dx, dy);
            }
        }
    }
    return {};
}

/// Writes a label at a place that is free.
sf::FloatRect GradeLine::place_label(const Sheet& sheet, const std::string& label, Point at,
                                     const TextStyle& style)
{
    const sf::FloatRect label_box = sheet.text.write(label, at, style);
    // Lines behind stop short of the label, as around figures in a drawing.
    const float clear = sheet.look.px(2.0F);
    sheet.mesh.block(
        {label_box.left - clear, label_box.top, label_box.width + 2.0F * clear, label_box.height},
        sheet.look.theme.ground);
    labels_.push_back(label_box);
    return label_box;
}

void GradeLine::draw_cliff(const Sheet& sheet, const GradeStation& station)
{
    const Look& look = sheet.look;
    const float y1 = y_of(sheet.view, station.before);
    const float y2 = y_of(sheet.view, station.after);
    const Pen pen{.colour = look.theme.accent, .width = look.px(4.0F)};
    sheet.mesh.stroke({{station.x, y1}, {station.x, y2}}, pen);
    const double drop = station.before - station.after;
    const std::string figure = std::string(station.name) + ": " +
                               (drop < 0.0 ? "+" : "") + // what a pump lifts
                               fixed_text(std::abs(drop), sheet.view.decimals) + " ";
    std::string label = figure + std::string(sheet.view.loss_unit);
    const TextStyle style{.face = Face::bold,
                          .size = look.small(),
                          .colour = look.theme.accent,
                          .align = Align::centre,
                          .anchor = Anchor::bottom};
    const float top = std::min(y1, y2);
    const Point over{station.x, top - look.px(10.0F)};
    std::optional<Point> place = find_room(sheet, label, over, style);
    if (!place) {
        label = figure + std::string(sheet.view.unit);
        place = find_room(sheet, label, over, style);
    }
    if (!place) {
        return; // the line shows it all the same
    }
    const sf::FloatRect box = place_label(sheet, label, *place, style);
    const float below_words = box.top + box.height + look.px(1.0F);
    if (below_words < top) {
        sheet.mesh.stroke({{station.x, below_words}, {station.x, top - look.px(3.0F)}},
                          {.colour = look.theme.accent, .width = look.thin()});
    }
}

void GradeLine::name_stations(const Sheet& sheet)
{
    const Look& look = sheet.look;
    const float bottom = sheet.view.box.top + sheet.view.box.height;
    const TextStyle style{.size = look.small(),
                          .colour = look.theme.ink_soft,
                          .align = Align::centre,
                          .anchor = Anchor::top};
    for (const GradeStation& station : sheet.view.stations) {
        sheet.mesh.block({std::round(station.x), bottom, 1.0F, look.px(5.0F)}, look.theme.ink_soft);
        const Point at{station.x, bottom + look.px(6.0F)};
        sf::FloatRect wanted = sheet.text.measure(station.name, at, style);
        wanted.left -= look.px(4.0F);
        wanted.width += look.px(8.0F);
        const bool is_free =
            std::none_of(labels_.begin(), labels_.end(),
                         [&](const sf::FloatRect& taken) { return taken.intersects(wanted); });
        if (is_free) {
            labels_.push_back(sheet.text.write(station.name, at, style));
        }
    }
}

void GradeLine::draw(Mesh& mesh, Text& text, const Look& look, const GradeView& view)
{
    const Sheet sheet{mesh, text, look, view};
    labels_.clear();
    draw_ground(sheet);
    draw_line(sheet);
    draw_levels(sheet);
    cliffs_.clear();
    for (const GradeStation& station : view.stations) {
        if (is_cliff(view, station)) {
            cliffs_.push_back(&station);
        }
    }
    // High ones are named first, while there is room.
    const auto height = [](const GradeStation* station) {
        return std::abs(station->before - station->after);
    };
    if (!cliffs_.empty()) {
        const double highest = height(*std::ranges::max_element(cliffs_, {}, height));
        std::ranges::stable_partition(
            cliffs_, [&](const GradeStation* station) { return height(station) > 0.1 * highest; });
    }
    for (const GradeStation* station : cliffs_) {
        draw_cliff(sheet, *station);
    }
    name_stations(sheet);
    const float bottom = view.box.top + view.box.height;
    mesh.block({view.box.left, bottom, view.box.width, std::max(1.0F, std::round(look.thin()))},
               look.theme.ink_soft);
}

} // namespace scenes
