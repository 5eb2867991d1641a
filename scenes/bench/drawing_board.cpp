#include "scenes/bench/drawing_board.hpp"

#include "scenes/present/readout.hpp"
#include "scenes/present/words.hpp"
#include "scenes/view/standpipe.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace scenes {
namespace {

/// A view that shows a box of the window in its own place and nothing outside it.
sf::View clipped_to(const sf::FloatRect& box, const sf::RenderTarget& target)
{
    const sf::Vector2f size(target.getSize());
    sf::View view(box);
    view.setViewport(
        {box.left / size.x, box.top / size.y, box.width / size.x, box.height / size.y});
    return view;
}

sf::FloatRect whole(const sf::FloatRect& box)
{
    return {std::round(box.left), std::round(box.top), std::round(box.width),
            std::round(box.height)};
}

} // namespace

DrawingBoard::DrawingBoard(const Fonts& fonts, const BenchModel& model)
    : section_(model.rig()),
      view_(model.run().machine()),
      still_text_(fonts),
      text_(fonts),
      figures_(fonts)
{
}

void DrawingBoard::zoom(double factor, sf::Vector2f about)
{
    const auto bounds = section_.bounds();
    const Camera least = Camera::framing(bounds.low, bounds.high, area_);
    const double size = camera_.pixels_per_metre() * factor / least.pixels_per_metre();
    if (size <= 1.0) {
        show_whole();
    } else if (size < 12.0) {
        camera_.zoom(factor, about);
        has_still_ = false;
    }
}

void DrawingBoard::pan(sf::Vector2f pixels)
{
    camera_.pan(pixels);
    has_still_ = false;
}

void DrawingBoard::frame_camera(const Scene& scene)
{
    const sf::FloatRect area = whole(scene.layout.section);
    if (area != area_ || !is_framed_) {
        const auto bounds = section_.bounds();
        area_ = area;
        camera_ = Camera::framing(bounds.low, bounds.high, area_);
        is_framed_ = true;
        has_still_ = false;
    }
    if (scene.look.theme.id != theme_id_ || scene.look.scale != scale_ ||
        wording_age_ != wording_age()) {
        wording_age_ = wording_age();
        theme_id_ = scene.look.theme.id;
        scale_ = scene.look.scale;
        has_still_ = false;
    }
}

void DrawingBoard::draw_section(sf::RenderTarget& target, const Scene& scene)
{
    frame_camera(scene);
    if (!has_still_) {
        still_mesh_.clear();
        still_text_.clear();
        section_.draw_still(still_mesh_, still_text_, scene.look, camera_);
        still_.take(area_, scene.look.theme.ground, {&still_mesh_, &still_text_});
        has_still_ = true;
    }
    mesh_.clear();
    text_.clear();
    section_.draw_moving(mesh_, text_, scene.look, camera_, view_, scene.seconds);
    const sf::View window = target.getView();
    still_.show(target);
    target.setView(clipped_to(area_, target));
    if (!still_.is_usable()) {
        target.draw(still_mesh_);
        target.draw(still_text_);
    }
    target.draw(mesh_);
    target.draw(text_);
    target.setView(window);
}

void DrawingBoard::draw_standpipes(const Scene& scene, const FuelHeads& heads,
                                   const FuelHeads* twin)
{
    const Look& look = scene.look;
    const sf::FloatRect& box = scene.layout.standpipes;
    // The last ones of the path say most about the mixture: they stay where it is narrow.
    const float room = box.width - look.px(14.0F); // the rest is for the last scale's numbers
    const auto fitting = static_cast<std::size_t>(room / look.px(70.0F));
    const std::size_t count = std::clamp<std::size_t>(fitting, 1, heads.gauges.size());
    const float step = room / static_cast<float>(count);
    const float head = look.px(52.0F); // name, value, lip of the glass
    const float foot = look.px(12.0F);
    const std::size_t left_out = heads.gauges.size() - count;
    for (std::size_t i = 0; i < count; ++i) {
        const HeadGauge& gauge = heads.gauges[left_out + i];
        draw_standpipe(instruments_, figures_, look,
                       {.foot = {box.left + step * (static_cast<float>(i) + 0.36F),
                                 box.top + box.height - foot},
                        .height = std::max(look.px(20.0F), box.height - head - foot),
                        .bore = look.px(14.0F),
                        .low = gauge.low,
                        .high = gauge.high,
                        .column = gauge.head,
                        .twin = twin == nullptr ? std::nullopt
                                                : std::optional(twin->gauges[left_out + i].head),
                        .name = gauge.name,
                        .unit = head_unit_,
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
                 .least_named = readout_of("mm").shown(1e-3),
                 .decimals = head_decimals()});
}

void DrawingBoard::draw(sf::RenderTarget& target, const Scene& scene)
{
    BenchRun& run = scene.model.run();
    if (scene.model.run_number() != run_number_) {
        view_ = MachineView(run.machine());
        run_number_ = scene.model.run_number();
    }
    view_.take(run.machine());
    if (scene.layout.section.height > 0.0F) {
        draw_section(target, scene);
    }
    const FuelHeads heads = in_shown_units(run.heads());
    const FuelHeads twin_heads = in_shown_units(run.twin_heads());
    head_unit_ = readout_of("mm").sign;
    const FuelHeads* twin = scene.shows_twin && run.has_twin() ? &twin_heads : nullptr;
    instruments_.clear();
    figures_.clear();
    if (scene.layout.standpipes.height > 0.0F) {
        draw_standpipes(scene, heads, twin);
    }
    if (scene.layout.grade.height > 0.0F) {
        draw_grade(scene, heads, twin);
    }
    target.draw(instruments_);
    target.draw(figures_);
}

} // namespace scenes
