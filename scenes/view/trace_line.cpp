#include "scenes/view/trace_line.hpp"

#include "scenes/view/shapes.hpp"

#include <cmath>

namespace scenes {
namespace {

/// Pixels that one bucket of samples is drawn over.
constexpr float bucket_width = 2.0F;

/// Whether a style's dashes show at a bucket; otherwise the line pauses after it.
bool is_inked(std::size_t bucket, LineStyle style)
{
    const std::size_t place = bucket % 8;
    switch (style) {
    case LineStyle::full:
        return true;
    case LineStyle::broken:
        return place < 5;
    case LineStyle::dash_dot:
        return place < 4 || place == 6;
    }
    return true;
}

} // namespace

void stroke_in_style(Mesh& mesh, std::span<const Point> points, const Pen& pen, LineStyle style,
                     const Look& look)
{
    switch (style) {
    case LineStyle::full:
        mesh.stroke(points, pen);
        break;
    case LineStyle::broken:
        dash(mesh, points, pen, {.on = look.px(9.0F), .off = look.px(5.0F)});
        break;
    case LineStyle::dash_dot:
        dash(mesh, points, pen, {.on = look.px(12.0F), .off = look.px(9.0F), .dot = look.px(2.0F)});
        break;
    }
}

void TraceLine::draw(Mesh& mesh, const Look& look, const PlotScale& plot, const Series& series,
                     const TraceInk& ink)
{
    line_.clear();
    slices_.clear();
    if (series.is_empty() || series.time_of(series.first()) > plot.to) {
        return;
    }
    const Sheet sheet{mesh, look, plot, series, ink};
    const double seconds_per_bucket =
        (plot.to - plot.from) * static_cast<double>(bucket_width / std::max(1.0F, plot.box.width));
    const auto stride = static_cast<std::size_t>(seconds_per_bucket / series.interval());
    if (stride > 1) {
        draw_buckets(sheet, stride);
    } else {
        draw_samples(sheet);
    }
}

void TraceLine::finish_samples(const Sheet& sheet)
{
    if (line_.size() == 1) {
        sheet.mesh.disc(line_.front(), sheet.ink.pen.width, sheet.ink.pen.colour);
    } else {
        stroke_in_style(sheet.mesh, line_, sheet.ink.pen, sheet.ink.style, sheet.look);
    }
    line_.clear();
}

void TraceLine::draw_samples(const Sheet& sheet)
{
    const PlotScale& plot = sheet.plot;
    const std::size_t last = sheet.series.nearest(plot.to);
    for (std::size_t i = sheet.series.nearest(plot.from); i <= last; ++i) {
        const float sample = sheet.series.at(i);
        if (!std::isfinite(sample)) {
            finish_samples(sheet);
            continue;
        }
        const double time = std::clamp(sheet.series.time_of(i), plot.from, plot.to);
        line_.push_back({plot.x_of(time), sheet.y_of(sample)});
    }
    finish_samples(sheet);
}

void TraceLine::finish_buckets(const Sheet& sheet)
{
    // A sloping line is as thick as a level one when it is taller by the secant of its slope.
    const std::size_t count = slices_.size();
    secants_.clear();
    for (std::size_t i = 0; i < count; ++i) {
        const Slice& before = slices_[i == 0 ? 0 : i - 1];
        const Slice& after = slices_[i + 1 == count ? i : i + 1];
        const float run = std::max(1.0F, after.x - before.x);
        const float rise = (after.top + after.bottom - before.top - before.bottom) / 2.0F;
        secants_.push_back(std::min(2.0F, std::hypot(1.0F, rise / run)));
    }
    const float half = std::max(0.0F, (sheet.ink.pen.width - 1.0F) / 2.0F);
    for (std::size_t i = 0; i < count; ++i) {
        slices_[i].top -= half * secants_[i];
        slices_[i].bottom += half * secants_[i];
    }
    sheet.mesh.ribbon(slices_, sheet.ink.pen.colour);
    slices_.clear();
}

void TraceLine::draw_buckets(const Sheet& sheet, std::size_t stride)
{
    const PlotScale& plot = sheet.plot;
    const Series& series = sheet.series;
    // Buckets and dashes are counted from the beginning of the run: the picture scrolls as one.
    const std::size_t last = series.nearest(plot.to) / stride;
    for (std::size_t bucket = series.nearest(plot.from) / stride; bucket <= last; ++bucket) {
        const std::size_t begin = bucket * stride;
        // One sample more, so that a jump between buckets belongs to one of them.
        const Extremes seen = series.extremes(begin, begin + stride + 1);
        if (seen.is_empty()) {
            finish_buckets(sheet);
            continue;
        }
        const double middle =
            series.time_of(begin) + 0.5 * series.interval() * static_cast<double>(stride);
        const float y1 = sheet.y_of(seen.low);
        const float y2 = sheet.y_of(seen.high);
        slices_.push_back({plot.x_of(std::clamp(middle, plot.from, plot.to)), std::min(y1, y2),
                           std::max(y1, y2)});
        if (!is_inked(bucket, sheet.ink.style)) {
            finish_buckets(sheet);
        }
    }
    finish_buckets(sheet);
}

} // namespace scenes
