#include "scenes/bench/chart_board.hpp"

#include "scenes/present/time_words.hpp"
#include "scenes/present/words.hpp"
#include "scenes/ui/controls.hpp"
#include "scenes/ui/handle.hpp"
#include "scenes/ui/panel.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

// Pictures for export, the plot under the pointer and the choice of readings are in
// chart_board_use.cpp.

namespace scenes {
namespace {

/// Frames between two charts drawn anew: each is 20 times a second at 60 frames.
constexpr std::size_t frames_per_chart = 2;
constexpr double least_span = 0.05;
constexpr double most_span = 10.0 * 86400.0;
/// Height of a chart's head, pixels at scale 1.
constexpr float head_height = 26.0F;

/// The box around all places that the layout gives to charts.
sf::FloatRect around(const BenchLayout& layout)
{
    const sf::FloatRect& first = layout.charts.front();
    sf::Vector2f end;
    for (const sf::FloatRect& box : layout.charts) {
        end = {std::max(end.x, box.left + box.width), std::max(end.y, box.top + box.height)};
    }
    return {first.left, first.top, end.x - first.left, end.y - first.top};
}

} // namespace

ChartBoard::ChartBoard(const Fonts& fonts, const BenchModel& model)
    : fonts_(fonts), set_(model.run().machine())
{
    choosing_.order.resize(model.run().values().size());
}

std::size_t ChartBoard::most_lines() const
{
    std::size_t most = 1;
    for (const ChartChoice& chart : set_.charts()) {
        most = std::max(most, chart.lines.size());
    }
    return most;
}

void ChartBoard::refresh()
{
    sheets_.clear();
    is_stale_ = true;
}

void ChartBoard::show(std::size_t reading)
{
    set_.show(reading);
    refresh();
}

void ChartBoard::zoom_time(double factor)
{
    span_ = std::clamp(span_ * factor, least_span, most_span);
    is_stale_ = true;
}

bool ChartBoard::has_point(sf::Vector2f at) const
{
    return area_.contains(at);
}

void ChartBoard::lay_out(const BenchLayout& layout, const Look& look)
{
    area_ = around(layout);
    const float gap = look.whole(8.0F);
    const auto across = static_cast<std::size_t>((area_.width + gap) / (look.px(196.0F) + gap));
    const auto down = static_cast<std::size_t>((area_.height + gap) / (look.px(116.0F) + gap));
    const std::size_t columns_fit = std::max<std::size_t>(1, across);
    room_ = columns_fit * std::max<std::size_t>(1, down);
    const std::size_t count = std::min(set_.charts().size(), room_);
    // As wide as they can be, but no flatter than they must.
    const bool is_column = area_.width < look.px(750.0F) && down >= count;
    const std::size_t columns = is_column              ? 1
                                : count <= columns_fit ? count
                                                       : std::min(columns_fit, (count + 1) / 2);
    const std::size_t rows = (count + columns - 1) / columns;
    while (sheets_.size() < set_.charts().size()) {
        sheets_.push_back(std::make_unique<Sheet>(fonts_));
    }
    for (std::size_t i = 0; i < sheets_.size(); ++i) {
        const auto column = static_cast<float>(i % columns);
        const auto row = static_cast<float>(i / columns);
        const float width =
            (area_.width - gap * static_cast<float>(columns - 1)) / static_cast<float>(columns);
        const float height =
            (area_.height - gap * static_cast<float>(rows - 1)) / static_cast<float>(rows);
        sf::FloatRect box{std::round(area_.left + column * (width + gap)),
                          std::round(area_.top + row * (height + gap)), std::round(width),
                          std::round(height)};
        box = i < count ? box : sf::FloatRect();
        is_stale_ = is_stale_ || box != sheets_[i]->box;
        sheets_[i]->box = box;
    }
}

void ChartBoard::follow_time(const BenchDesk& desk)
{
    if (chosen_span_ != desk.view.span) {
        chosen_span_ = desk.view.span;
        span_ = words::span_seconds[chosen_span_];
        is_stale_ = true;
    }
    const double now = desk.model.seconds();
    const double end = std::max(desk.model.end_seconds(), span_);
    if (desk.model.is_at_end()) {
        window_.to = end;
    } else if (now > window_.to || now < window_.to - span_ || window_.to > end) {
        window_.to = std::clamp(now + span_ / 2.0, span_, end);
    }
    window_.from = std::max(0.0, window_.to - span_);
}

void ChartBoard::draw_chart(std::size_t chart, const BenchDesk& desk)
{
    Sheet& sheet = *sheets_[chart];
    if (sheet.box.height > 0.0F) {
        write_chart(sheet, chart, desk, desk.ui.look());
        sheet.picture.take(sheet.box, desk.ui.look().theme.ground, {&sheet.mesh, &sheet.text});
    }
}

void ChartBoard::write_chart(Sheet& sheet, std::size_t chart, const BenchDesk& desk,
                             const Look& look)
{
    const BenchRun& run = desk.model.run();
    const ChartChoice& choice = set_.charts()[chart];
    traces_.clear();
    for (const ChartLine& line : choice.lines) {
        traces_.push_back({.name = line.title,
                           .run = run.history().series(line.reading, window_.from, window_.to),
                           .twin = {},
                           .scale = 1.0 / line.readout.factor,
                           .offset = -line.readout.offset / line.readout.factor,
                           .decimals = line.readout.decimals,
                           .axis = line.axis});
        if (desk.view.shows_twin) {
            traces_.back().twin = run.twin_history().series(line.reading, window_.from, window_.to);
        }
    }
    axes_.clear();
    for (std::size_t i = 0; i < ChartChoice::most_units; ++i) {
        if (const Readout* readout = choice.axis(i)) {
            axes_.push_back(
                {.unit = readout->sign, .range = {}, .least_span = readout->least_span});
        }
    }
    std::optional<double> cursor = pointed_at_;
    if (!cursor && !desk.model.is_at_end()) {
        cursor = desk.model.seconds();
    }
    sheet.mesh.clear();
    sheet.text.clear();
    const std::string name = title(chart);
    sheet.strip.draw(sheet.mesh, sheet.text, look,
                     {.box = sheet.box,
                      .title = name,
                      .from = window_.from,
                      .to = window_.to,
                      .cursor = cursor,
                      .axes = axes_,
                      .traces = traces_,
                      .time_unit = "s"});
}

void ChartBoard::draw(sf::RenderTarget& target, const BenchLayout& layout, const BenchDesk& desk,
                      bool is_complete)
{
    if (layout.charts.front().height <= 0.0F) {
        return;
    }
    lay_out(layout, desk.ui.look());
    follow_time(desk);
    const std::string_view theme = desk.ui.look().theme.id;
    if (wording_age_ != wording_age()) {
        wording_age_ = wording_age();
        set_.name_again();
        is_stale_ = true;
    }
    is_complete =
        is_complete || is_stale_ || theme != theme_id_ || pointed_at_ != drawn_pointed_at_;
    theme_id_ = theme;
    drawn_pointed_at_ = pointed_at_;
    is_stale_ = false;
    if (is_complete) {
        for (std::size_t i = 0; i < sheets_.size(); ++i) {
            draw_chart(i, desk);
        }
    } else if (++frame_ % frames_per_chart == 0) {
        next_ = (next_ + 1) % sheets_.size();
        draw_chart(next_, desk);
    }
    for (const auto& sheet : sheets_) {
        if (sheet->box.height <= 0.0F) {
            continue;
        }
        if (sheet->picture.is_usable()) {
            sheet->picture.show(target);
        } else {
            target.draw(sheet->mesh);
            target.draw(sheet->text);
        }
    }
}

void ChartBoard::show_handles(BenchDesk& desk, const BenchLayout& layout)
{
    pointed_at_.reset();
    if (layout.charts.front().height <= 0.0F || sheets_.empty()) {
        return;
    }
    const Overlay overlay(desk.ui, words::page_charts, around(layout));
    for (std::size_t i = 0; i < std::min(sheets_.size(), set_.charts().size()); ++i) {
        const sf::FloatRect& box = sheets_[i]->box;
        if (box.height <= 0.0F) {
            continue;
        }
        const std::string name = filled(words::chart, {std::to_string(i + 1)});
        const std::string shown = title(i);
        const Handle head =
            handle(desk.ui, {.name = name,
                             .value = shown,
                             .box = {box.left, box.top, box.width,
                                     std::min(box.height, desk.ui.look().whole(head_height))}});
        tip(desk.ui, words::choose_by_press);
        if (head.is_pressed) {
            open_choice(i, desk.model);
        }
        show_plot(desk, i);
    }
}

} // namespace scenes
