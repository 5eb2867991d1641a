#include "scenes/bench/drawing_board.hpp"

#include "scenes/present/readout.hpp"
#include "scenes/present/words.hpp"
#include "scenes/view/standpipe.hpp"

#include <algorithm>
#include <array>
#include <cmath>

// The instruments beside the drawing: standpipes and grade line.

namespace scenes {
namespace {

constexpr float least_pipe_step = 62.0F; ///< pixels at text scale 1: glass, scale of four figures

} // namespace

void DrawingBoard::draw_standpipes(const Scene& scene, const FuelHeads& heads,
                                   const FuelHeads* twin)
{
    const Look& look = scene.look;
    const sf::FloatRect& box = scene.layout.standpipes;
    // The last ones of the path say most about the mixture: they stay where it is narrow.
    const auto fitting = static_cast<std::size_t>(box.width / look.px(least_pipe_step));
    const std::size_t count = std::clamp<std::size_t>(fitting, 1, heads.gauges.size());
    const float step = box.width / static_cast<float>(count);
    const float head = look.whole(82.0F); // title, name in two lines, value, lip of the glass
    const float foot = look.px(8.0F);
    TextStyle title{.face = Face::bold, .size = look.small(), .colour = look.theme.ink};
    title.anchor = Anchor::top;
    const float unit_width = look.px(12.0F) + figures_.width(head_unit_, title);
    const bool has_room = figures_.width(words::standpipes, title) + unit_width < box.width;
    const sf::FloatRect words =
        figures_.write(has_room ? words::standpipes : words::standpipes_short,
                       {box.left + look.px(4.0F), box.top}, title);
    title.face = Face::regular;
    title.colour = look.theme.ink_soft;
    figures_.write(head_unit_, {words.left + words.width + look.px(8.0F), box.top}, title);
    const std::size_t left_out = heads.gauges.size() - count;
    for (std::size_t i = 0; i < count; ++i) {
        const HeadGauge& gauge = heads.gauges[left_out + i];
        draw_standpipe(instruments_, figures_, look,
                       {.foot = {box.left + step * static_cast<float>(i) + look.px(15.0F),
                                 box.top + box.height - foot},
                        .height = std::max(look.px(20.0F), box.height - head - foot),
                        .bore = look.px(12.0F),
                        .width = step - look.px(6.0F),
                        .low = gauge.low,
                        .high = gauge.high,
                        .column = gauge.head,
                        .twin = twin == nullptr ? std::nullopt
                                                : std::optional(twin->gauges[left_out + i].head),
                        .name = gauge.name,
                        .decimals = head_decimals()});
    }
}

void DrawingBoard::draw_grade(const Scene& scene, const FuelHeads& heads, const FuelHeads* twin)
{
    const Look& look = scene.look;
    const sf::FloatRect& box = scene.layout.grade;
    const float left = look.whole(52.0F);
    const float top = look.whole(36.0F);
    const sf::FloatRect plot{box.left + left, box.top + top, box.width - left - look.px(12.0F),
                             box.height - top - look.whole(26.0F)};
    const std::size_t count = heads.stations.size();
    std::vector<GradeStation> stations(count);
    std::vector<GradeStation> healthy(count);
    for (std::size_t i = 0; i < count; ++i) {
        const float share = (static_cast<float>(i) + 0.35F) / static_cast<float>(count);
        const float x = std::round(plot.left + plot.width * share);
        stations[i] = {heads.stations[i].name, x, heads.stations[i].before,
                       heads.stations[i].after};
        if (twin != nullptr) {
            healthy[i] = {twin->stations[i].name, x, twin->stations[i].before,
                          twin->stations[i].after};
        }
    }
    const std::array levels{GradeLevel{heads.lip_name, heads.lip,
                                       (stations[count - 3].x + stations[count - 2].x) / 2.0F,
                                       plot.left + plot.width}};
    grade_.draw(instruments_, figures_, look,
                {.box = plot,
                 .stations = stations,
                 .twin = twin != nullptr ? std::span<const GradeStation>(healthy)
                                         : std::span<const GradeStation>(),
                 .levels = levels,
                 .low = heads.low,
                 .high = heads.high,
                 .title = words::grade_line,
                 .unit = head_unit_,
                 .loss_unit = loss_unit_,
                 .least_named = readout_of("mm").shown(1e-3),
                 .decimals = head_decimals()});
}

} // namespace scenes
