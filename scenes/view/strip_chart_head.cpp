#include "scenes/view/strip_chart.hpp"

#include "scenes/view/number.hpp"
#include "scenes/view/shapes.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

// A chart's head: its title and the legend of its lines.

namespace scenes {
namespace {

/// Length of the piece of line that a legend shows.
constexpr float sample_width = 22.0F;

/// The value of a trace at the cursor, or the latest one.
std::string value_text(const ChartView& view, const ChartTrace& trace)
{
    if (trace.run.is_empty()) {
        return fixed_text(std::nan(""), 0);
    }
    const float sample = trace.run.at(trace.run.nearest(view.cursor.value_or(view.to)));
    std::string text =
        fixed_text(static_cast<double>(sample) * trace.scale + trace.offset, trace.decimals);
    if (view.axes.size() > 1 && !view.axes[trace.axis].unit.empty()) {
        text += " " + std::string(view.axes[trace.axis].unit);
    }
    return text;
}

float entry_width(const Text& text, const Look& look, const ChartView& view,
                  const ChartTrace& trace)
{
    const TextStyle style = small_text(look, {});
    // Room for four figures at least, so that the legend does not move with the value.
    const float value =
        std::max(text.width(value_text(view, trace), style), text.width("0000.0", style));
    if (view.traces.size() < 2) {
        return value;
    }
    return look.px(sample_width + 6.0F + 6.0F) + text.width(trace.name, style) + value;
}

} // namespace

void StripChart::draw_legend_entry(const Sheet& sheet, std::size_t index, float left, float right,
                                   float baseline)
{
    const Look& look = sheet.look;
    const ChartTrace& trace = sheet.view.traces[index];
    TextStyle style = small_text(look, look.theme.ink);
    style.align = Align::right;
    const sf::FloatRect value =
        sheet.text.write(value_text(sheet.view, trace), {right, baseline}, style);
    if (sheet.view.traces.size() > 1) {
        const float y = std::round(baseline - look.px(5.0F)) + 0.5F;
        const float end = left + look.px(sample_width);
        const std::array<Point, 2> sample{{{left, y}, {end, y}}};
        stroke_in_style(sheet.mesh, sample,
                        {.colour = look.theme.traces[index], .width = look.px(2.4F)},
                        line_style(index), look);
        style = small_text(look, look.theme.ink_soft);
        const float from = end + look.px(6.0F);
        sheet.text.write(sheet.text.shortened(trace.name, value.left - look.px(8.0F) - from, style),
                         {from, baseline}, style);
    }
}

float StripChart::draw_head(const Sheet& sheet)
{
    const Look& look = sheet.look;
    const ChartView& view = sheet.view;
    const float line = look.whole(20.0F);
    float baseline = std::round(view.box.top + look.px(18.0F));
    const float left = view.box.left + look.px(10.0F);
    const float right = view.box.left + view.box.width - look.px(14.0F);
    const sf::FloatRect title = sheet.text.write(view.title, {left, baseline},
                                                 small_text(look, look.theme.ink, Face::bold));
    const sf::FloatRect unit =
        sheet.text.write(view.axes.size() > 1 ? std::string_view() : view.axes.front().unit,
                         {title.left + title.width + look.px(8.0F), baseline},
                         small_text(look, look.theme.ink_soft));
    std::array<float, 3> widths{};
    float total = 0.0F;
    for (std::size_t i = 0; i < view.traces.size(); ++i) {
        widths[i] = entry_width(sheet.text, look, view, view.traces[i]);
        total += widths[i] + look.px(18.0F);
    }
    if (unit.left + unit.width + total <= right) {
        float end = right;
        for (std::size_t i = view.traces.size(); i-- > 0;) {
            draw_legend_entry(sheet, i, end - widths[i], end, baseline);
            end -= widths[i] + look.px(18.0F);
        }
    } else {
        // Too narrow for one line: the first beside the title where it fits, the others below.
        const float beside = unit.left + unit.width + look.px(14.0F);
        std::size_t first = 0;
        if (!view.traces.empty() && beside + widths[0] <= right) {
            draw_legend_entry(sheet, first++, right - widths[0], right, baseline);
        }
        for (std::size_t i = first; i < view.traces.size(); ++i) {
            baseline += line;
            draw_legend_entry(sheet, i, std::max(left, right - widths[i]), right, baseline);
        }
    }
    return baseline + look.px(11.0F) - view.box.top;
}

} // namespace scenes
