#include "scenes/bench/bench_layout.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

// Sizes are pixels at text scale 1, chosen for looks.

namespace scenes {
namespace {

constexpr float margin = 8.0F;

bool is_small(sf::Vector2f window, const Look& look)
{
    return window.x / look.scale < 860.0F || window.y / look.scale < 500.0F;
}

/// Wide enough for its words, as far as that leaves room for the drawing.
float panel_width(sf::Vector2f window, const Look& look, float row_width)
{
    constexpr float frame_and_scroll_bar = 44.0F;
    const float usual = look.px(std::clamp(0.25F * window.x / look.scale, 290.0F, 340.0F));
    const float wanted = row_width + look.px(frame_and_scroll_bar);
    return std::round(std::max(usual, std::min(wanted, 0.26F * window.x)));
}

/// Splits the place of drawing and standpipes.
void share_machine(BenchLayout& layout, const sf::FloatRect& box, const Look& look,
                   std::size_t standpipes)
{
    if (standpipes == 0) {
        layout.section = box;
        return;
    }
    // As wide as their scales' figures ask for; where it is narrow, two are left.
    const auto count = static_cast<float>(standpipes);
    const float step = look.px(std::clamp(0.065F * box.width / look.scale, 68.0F, 86.0F));
    const float pipes = std::round(step * (box.width > count * step * 2.6F ? count : 2.0F));
    layout.section = {box.left, box.top, box.width - pipes - look.whole(10.0F), box.height};
    layout.standpipes = {box.left + box.width - pipes, box.top, pipes, box.height};
}

/// Charts side by side, or below each other where that shows them better; as many as can be read.
void share_charts(BenchLayout& layout, const sf::FloatRect& box, const Look& look)
{
    const float gap = look.whole(margin);
    const bool is_column = box.width / 3.0F < look.px(250.0F) && box.height > look.px(360.0F);
    const auto fitting =
        is_column ? std::size_t{3} : static_cast<std::size_t>(box.width / look.px(190.0F));
    const std::size_t shown = std::clamp<std::size_t>(fitting, 1, layout.charts.size());
    const auto count = static_cast<float>(shown);
    for (std::size_t i = 0; i < shown; ++i) {
        const auto at = static_cast<float>(i);
        const float width = is_column ? box.width : (box.width - gap * (count - 1.0F)) / count;
        const float height = is_column ? (box.height - gap * (count - 1.0F)) / count : box.height;
        layout.charts[i] = {std::round(box.left + (is_column ? 0.0F : at * (width + gap))),
                            std::round(box.top + (is_column ? at * (height + gap) : 0.0F)),
                            std::round(width), std::round(height)};
    }
}

void lay_out_pages(BenchLayout& layout, sf::Vector2f window, const Look& look, Page page,
                   const BenchNeeds& needs)
{
    const float gap = look.whole(margin);
    const float rows = window.x / look.scale < 640.0F ? 2.0F : 1.0F;
    layout.pages = {gap, gap, window.x - 2.0F * gap, look.whole(24.0F) + rows * look.whole(32.0F)};
    layout.status = {gap, window.y - gap - needs.status_height, window.x - 2.0F * gap,
                     needs.status_height};
    const float top = layout.pages.top + layout.pages.height + gap;
    const sf::FloatRect body{gap, top, window.x - 2.0F * gap, layout.status.top - gap - top};
    switch (page) {
    case Page::machine:
        layout.section = body;
        break;
    case Page::grade:
        share_machine(layout, body, look, needs.standpipes);
        if (needs.standpipes > 0) {
            layout.grade = std::exchange(layout.section, {});
        }
        break;
    case Page::charts:
        share_charts(layout, body, look);
        break;
    case Page::controls:
    case Page::faults:
    case Page::run:
    case Page::changes:
        layout.panel = body;
        break;
    }
}

void lay_out_all(BenchLayout& layout, sf::Vector2f window, const Look& look,
                 const BenchNeeds& needs)
{
    const float gap = look.whole(margin);
    const float panel = panel_width(window, look, needs.row_width);
    layout.panel = {window.x - panel - gap, gap, panel, window.y - 2.0F * gap};
    layout.is_tall = layout.panel.height > look.px(980.0F);
    const float width = layout.panel.left - 2.0F * gap;
    layout.status = {gap, window.y - gap - needs.status_height, width, needs.status_height};
    const float room = layout.status.top - gap;
    const float grade =
        needs.standpipes == 0
            ? 0.0F
            : std::round(std::clamp(room * 0.18F, look.px(116.0F), look.px(200.0F)));
    const float legend = look.px(20.0F) * static_cast<float>(needs.chart_lines);
    const float charts =
        std::round(std::clamp(room * 0.22F, look.px(92.0F) + legend, look.px(280.0F)));
    layout.grade = {gap, gap, width, grade};
    const float top = layout.grade.top + grade;
    const float charts_top = layout.status.top - gap - charts;
    share_machine(layout, {gap, top, width, charts_top - gap - top}, look, needs.standpipes);
    share_charts(layout, {gap, charts_top, width, charts}, look);
}

} // namespace

BenchLayout lay_out_bench(sf::Vector2f window, const Look& look, Page page, const BenchNeeds& needs)
{
    BenchLayout layout;
    layout.is_compact = is_small(window, look);
    if (layout.is_compact) {
        lay_out_pages(layout, window, look, page, needs);
    } else {
        lay_out_all(layout, window, look, needs);
    }
    return layout;
}

sf::FloatRect tilt_dial_box(const sf::FloatRect& section, const Look& look)
{
    const float size = look.px(36.0F);
    return {section.left + look.px(2.0F), section.top + look.px(2.0F), size, size};
}

float status_width(sf::Vector2f window, const Look& look, float row_width)
{
    const float gap = look.whole(margin);
    return is_small(window, look) ? window.x - 2.0F * gap
                                  : window.x - panel_width(window, look, row_width) - 3.0F * gap;
}

} // namespace scenes
