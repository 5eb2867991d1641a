#include "scenes/bench/projector_layout.hpp"

#include <algorithm>
#include <cmath>

// Sizes are pixels at text scale 1, chosen for looks.

namespace scenes {
namespace {

constexpr float margin = 8.0F;

/// Cuts a piece off the box's top or bottom and gives it; nothing when too little would be left.
sf::FloatRect cut(sf::FloatRect& box, float height, bool from_top, float gap)
{
    height = std::round(height);
    const float least = 0.4F * box.height;
    if (box.height - height - gap < least) {
        return {};
    }
    const sf::FloatRect piece{box.left, from_top ? box.top : box.top + box.height - height,
                              box.width, height};
    box.top += from_top ? height + gap : 0.0F;
    box.height -= height + gap;
    return piece;
}

} // namespace

BenchLayout lay_out_projector(sf::Vector2f window, const Look& look, const ProjectorParts& parts,
                              const BenchNeeds& needs)
{
    const float gap = look.whole(margin);
    BenchLayout layout;
    layout.status = {gap, window.y - gap - needs.status_height, window.x - 2.0F * gap,
                     needs.status_height};
    sf::FloatRect body{gap, gap, window.x - 2.0F * gap, layout.status.top - 2.0F * gap};
    const float panel = std::round(look.px(320.0F));
    if (parts.panel && panel < 0.5F * body.width) {
        body.width -= panel + gap;
        layout.panel = {body.left + body.width + gap, body.top, panel, body.height};
    }
    if (parts.grade && needs.standpipes > 0) {
        layout.grade =
            cut(body, std::clamp(0.24F * window.y, look.px(110.0F), look.px(240.0F)), true, 0.0F);
    }
    if (parts.charts) {
        const float legend = look.px(20.0F) * static_cast<float>(needs.chart_lines);
        const sf::FloatRect row = cut(body, look.px(100.0F) + legend, false, gap);
        const auto fitting = static_cast<std::size_t>(row.width / look.px(230.0F));
        const std::size_t count = std::clamp<std::size_t>(fitting, 1, layout.charts.size());
        const float step = (row.width + gap) / static_cast<float>(count);
        for (std::size_t i = 0; i < count && row.height > 0.0F; ++i) {
            layout.charts[i] = {std::round(row.left + step * static_cast<float>(i)), row.top,
                                std::round(step - gap), row.height};
        }
    }
    // Shorter ones would be all head and no glass.
    const bool has_glass = body.height > look.px(130.0F);
    if (parts.standpipes && needs.standpipes > 0 && has_glass) {
        const auto count = static_cast<float>(needs.standpipes);
        const float width = std::round(std::min(look.px(86.0F) * count, 0.4F * body.width));
        body.width -= width + gap;
        layout.standpipes = {body.left + body.width + gap, body.top, width, body.height};
    }
    layout.section = body;
    return layout;
}

float projector_status_width(sf::Vector2f window, const Look& look)
{
    return window.x - 2.0F * look.whole(margin);
}

} // namespace scenes
