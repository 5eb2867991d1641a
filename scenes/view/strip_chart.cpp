#include "scenes/view/strip_chart.hpp"

#include "scenes/view/number.hpp"
#include "scenes/view/shapes.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

// strip_chart_head.cpp draws title and legend.

namespace scenes {
void StripChart::choose_range(const ChartView& view, std::size_t axis)
{
    ChartRange& range = plots_[axis].range;
    const double least_span = view.axes[axis].least_span;
    if (view.axes[axis].range) {
        range = *view.axes[axis].range;
        has_range_[axis] = true;
        return;
    }
    double low = 1e300;
    double high = -1e300;
    for (const ChartTrace& trace : view.traces) {
        for (const Series& series : {trace.run, trace.twin}) {
            if (trace.axis != axis || series.is_empty()) {
                continue;
            }
            const Extremes seen =
                series.extremes(series.nearest(view.from), series.nearest(view.to) + 1);
            if (!seen.is_empty()) {
                const double a = static_cast<double>(seen.low) * trace.scale + trace.offset;
                const double b = static_cast<double>(seen.high) * trace.scale + trace.offset;
                low = std::min({low, a, b});
                high = std::max({high, a, b});
            }
        }
    }
    if (low > high) {
        low = 0.0;
        high = least_span;
    }
    const double span = std::max(high - low, least_span);
    const bool still_fits = has_range_[axis] && low >= range.low && high <= range.high &&
                            span > 0.35 * (range.high - range.low);
    if (!still_fits) {
        const double middle = (low + high) / 2.0;
        const Ticks ticks = nice_ticks(middle - span * 0.6, middle + span * 0.6, 6);
        range.low = std::floor((middle - span * 0.55) / ticks.step) * ticks.step;
        range.high = std::ceil((middle + span * 0.55) / ticks.step) * ticks.step;
        // No room on the side of nothing where the readings never go.
        range.low = low >= 0.0 ? std::max(range.low, 0.0) : range.low;
        range.high = low < 0.0 && high <= 0.0 ? std::min(range.high, 0.0) : range.high;
        has_range_[axis] = true;
    }
}

void StripChart::lay_out(const Sheet& sheet, float head)
{
    const Look& look = sheet.look;
    const sf::FloatRect& box = sheet.view.box;
    const bool has_axis = !sheet.view.time_unit.empty();
    const TextStyle style = small_text(look, {});
    // Wide enough for any label, so that stacked charts share their left edge.
    const float axis_width = sheet.text.width("\u22120000.0", style) + look.whole(8.0F);
    const float foot = has_axis ? look.whole(24.0F) : look.whole(9.0F);
    const float right = sheet.view.axes.size() > 1 ? axis_width : look.whole(14.0F);
    for (PlotScale& plot : plots_) {
        plot.box = {std::round(box.left + axis_width), std::round(box.top + head),
                    std::round(box.width - axis_width - right),
                    std::round(box.height - head - foot)};
        plot.from = sheet.view.from;
        plot.to = std::max(sheet.view.to, sheet.view.from + 1e-6);
    }
}

void StripChart::draw_right_axis(const Sheet& sheet) const
{
    const Look& look = sheet.look;
    const PlotScale& plot = plots_[1];
    const float right = plot.box.left + plot.box.width;
    const int most = std::clamp(static_cast<int>(plot.box.height / look.px(20.0F)), 2, 8);
    const Ticks ticks = nice_ticks(plot.range.low, plot.range.high, most);
    TextStyle style = small_text(look, look.theme.ink_soft);
    style.anchor = Anchor::middle;
    for (const double value : ticks.values) {
        const float y = std::round(plot.y_of(value));
        sheet.mesh.block({right, y, look.whole(4.0F), 1.0F}, look.theme.ink_soft);
        sheet.text.write(fixed_text(value, ticks.decimals), {right + look.px(7.0F), y}, style);
    }
}

void StripChart::draw_grid(const Sheet& sheet) const
{
    const PlotScale& plot = plots_[0];
    const Look& look = sheet.look;
    const Theme& theme = look.theme;
    const int most = std::clamp(static_cast<int>(plot.box.height / look.px(20.0F)), 2, 8);
    const Ticks ticks = nice_ticks(plot.range.low, plot.range.high, most);
    TextStyle style = small_text(look, theme.ink_soft);
    style.align = Align::right;
    style.anchor = Anchor::middle;
    for (const double value : ticks.values) {
        const float y = std::round(plot.y_of(value));
        sheet.mesh.block({plot.box.left, y, plot.box.width, 1.0F}, theme.ink_grid);
        sheet.text.write(fixed_text(value, ticks.decimals), {plot.box.left - look.px(7.0F), y},
                         style);
    }
}

void StripChart::draw_time_axis(const Sheet& sheet) const
{
    const PlotScale& plot = plots_[0];
    const Look& look = sheet.look;
    const int most = std::max(2, static_cast<int>(plot.box.width / look.px(90.0F)));
    const Ticks ticks = nice_ticks(plot.from, plot.to, most);
    const float bottom = plot.box.top + plot.box.height;
    TextStyle style = small_text(look, look.theme.ink_soft);
    style.align = Align::centre;
    style.anchor = Anchor::top;
    const bool has_axis = !sheet.view.time_unit.empty();
    const float unit_left = plot.box.left + plot.box.width - look.px(14.0F);
    if (has_axis) {
        TextStyle unit = style;
        unit.align = Align::right;
        unit.face = Face::regular;
        sheet.text.write(sheet.view.time_unit,
                         {plot.box.left + plot.box.width, bottom + look.px(6.0F)}, unit);
    }
    for (const double time : ticks.values) {
        const float x = std::round(plot.x_of(time));
        sheet.mesh.block({x, plot.box.top, 1.0F, plot.box.height}, look.theme.ink_grid);
        const std::string label = fixed_text(time, ticks.decimals);
        const float half = sheet.text.width(label, style) / 2.0F;
        if (has_axis && x + half < unit_left && x - half > sheet.view.box.left) {
            sheet.text.write(label, {x, bottom + look.px(6.0F)}, style);
        }
    }
}

void StripChart::draw_traces(const Sheet& sheet)
{
    const Look& look = sheet.look;
    for (const ChartTrace& trace : sheet.view.traces) {
        if (!trace.twin.is_empty()) {
            const TraceInk ink{.scale = trace.scale,
                               .offset = trace.offset,
                               .pen = {.colour = look.theme.twin, .width = look.thin()},
                               .style = LineStyle::broken};
            line_.draw(sheet.mesh, look, plots_[trace.axis], trace.twin, ink);
        }
    }
    for (std::size_t i = 0; i < sheet.view.traces.size(); ++i) {
        const ChartTrace& trace = sheet.view.traces[i];
        if (!trace.run.is_empty()) {
            const TraceInk ink{.scale = trace.scale,
                               .offset = trace.offset,
                               .pen = {.colour = look.theme.traces[i], .width = look.px(1.8F)},
                               .style = line_style(i)};
            line_.draw(sheet.mesh, look, plots_[trace.axis], trace.run, ink);
        }
    }
}

void StripChart::draw_cursor(const Sheet& sheet) const
{
    const PlotScale& plot = plots_[0];
    if (!sheet.view.cursor || *sheet.view.cursor < plot.from || *sheet.view.cursor > plot.to) {
        return;
    }
    const Rgba colour = sheet.look.theme.accent;
    const float x = std::round(plot.x_of(*sheet.view.cursor));
    const float head = sheet.look.px(6.0F);
    sheet.mesh.block({x, plot.box.top, sheet.look.whole(1.0F), plot.box.height}, colour);
    sheet.mesh.fill({{x - head + 0.5F, plot.box.top - head},
                     {x + head + 0.5F, plot.box.top - head},
                     {x + 0.5F, plot.box.top + 1.0F}},
                    colour);
}

void StripChart::draw_frame(const Sheet& sheet) const
{
    const Look& look = sheet.look;
    const sf::FloatRect& plot = plots_[0].box;
    const float bottom = plot.top + plot.height;
    const float line = std::max(1.0F, std::round(look.thin()));
    sheet.mesh.block({plot.left, bottom, plot.width, line}, look.theme.ink_soft);
    sheet.mesh.block({plot.left, plot.top, line, plot.height}, look.theme.ink_soft);
    if (sheet.view.axes.size() > 1) {
        sheet.mesh.block({plot.left + plot.width, plot.top, line, plot.height},
                         look.theme.ink_soft);
    }
    const sf::FloatRect& box = sheet.view.box;
    const std::vector<Point> frame{{box.left + 0.5F, box.top + 0.5F},
                                   {box.left + box.width - 0.5F, box.top + 0.5F},
                                   {box.left + box.width - 0.5F, box.top + box.height - 0.5F},
                                   {box.left + 0.5F, box.top + box.height - 0.5F}};
    sheet.mesh.stroke(frame, {.colour = look.theme.ink_soft, .width = 1.0F, .closed = true});
}

void StripChart::draw(Mesh& mesh, Text& text, const Look& look, const ChartView& view)
{
    const Sheet sheet{mesh, text, look, view};
    for (std::size_t axis = 0; axis < view.axes.size(); ++axis) {
        choose_range(view, axis);
    }
    mesh.block(view.box, look.theme.sheet);
    lay_out(sheet, draw_head(sheet));
    draw_time_axis(sheet);
    draw_grid(sheet);
    if (view.axes.size() > 1) {
        draw_right_axis(sheet);
    }
    draw_traces(sheet);
    draw_frame(sheet);
    draw_cursor(sheet);
}

} // namespace scenes
