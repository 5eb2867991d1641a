#include "scenes/bench/drawing_board.hpp"

#include "scenes/present/readout.hpp"
#include "scenes/present/words.hpp"
#include "scenes/view/standpipe.hpp"

#include "sim/error.hpp"
#include "sim/printable.hpp"
#include "sim/words.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace scenes {
namespace {

constexpr float least_pipe_step = 62.0F; ///< pixels at text scale 1: glass, scale of four figures
constexpr double most_zoom = 40.0;       ///< one jet then fills the drawing

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
      drips_(model.rig()),
      view_(model.run().machine()),
      still_text_(fonts),
      text_(fonts),
      figures_(fonts),
      names_(fonts)
{
}

Camera DrawingBoard::whole_camera() const
{
    const auto bounds = section_.bounds();
    sf::FloatRect inner = area_; // words over the topmost parts and by the floor stay on the page
    inner.top += 12.0F * scale_;
    inner.height = std::max(1.0F, inner.height - 16.0F * scale_);
    return Camera::framing(bounds.low, bounds.high, inner);
}

void DrawingBoard::zoom(double factor, sf::Vector2f about)
{
    const double size = goal_.pixels_per_metre() * factor / whole_camera().pixels_per_metre();
    if (size <= 1.0) {
        show_whole();
    } else if (size <= most_zoom) {
        goal_.zoom(factor, about);
        is_whole_ = false;
        is_moving_ = true;
    }
}

void DrawingBoard::pan(sf::Vector2f pixels)
{
    goal_.pan(pixels);
    camera_.pan(pixels);
    is_whole_ = false;
    is_moving_ = true;
    has_still_ = false;
}

void DrawingBoard::show_whole()
{
    goal_ = whole_camera();
    is_whole_ = true;
    is_moving_ = true;
}

void DrawingBoard::frame_mark(const Mark& mark, Place place)
{
    constexpr double around = 3.2; // what of its surroundings shows
    const double wide = std::max(mark.half.x, 0.8) * around * 1e-3;
    const double high = std::max(mark.half.y, 0.8) * around * 1e-3;
    Camera close =
        Camera::framing({place.x - wide, place.y - high}, {place.x + wide, place.y + high}, area_);
    const double whole = whole_camera().pixels_per_metre();
    const sf::Vector2f middle{area_.left + area_.width / 2.0F, area_.top + area_.height / 2.0F};
    const double size = close.pixels_per_metre() / whole;
    if (size > most_zoom) {
        close.zoom(most_zoom / size, middle);
    }
    const sf::Vector2f drift = close.to_pixels(place) - goal_.to_pixels(place);
    const bool is_there =
        std::abs(close.pixels_per_metre() / goal_.pixels_per_metre() - 1.0) < 0.02 &&
        std::hypot(drift.x, drift.y) < 4.0F;
    if (size <= 1.0 || is_there) {
        show_whole();
        return;
    }
    goal_ = close;
    is_whole_ = false;
    is_moving_ = true;
}

void DrawingBoard::frame_part(sf::Vector2f at)
{
    const auto found = mark_at(at);
    pointer_.reset(); // its card would lie over what is framed
    if (!found) {
        show_whole();
        return;
    }
    const Mark& mark = section_.marks()[*found];
    if (const auto place = section_.place_of(mark, {view_, 0.0, is_open_})) {
        frame_mark(mark, *place);
    }
}

void DrawingBoard::frame_part_named(std::string_view name)
{
    const auto& marks = section_.marks();
    const auto found = std::ranges::find(marks, name, &Mark::name);
    if (found == marks.end()) {
        std::vector<std::string> names;
        for (const Mark& mark : marks) {
            names.emplace_back(mark.name);
        }
        throw sim::RequestError("the drawing has no part " + sim::in_quotes(std::string(name)) +
                                sim::choices_hint(std::string(name), names));
    }
    if (const auto place = section_.place_of(*found, {view_, 0.0, is_open_})) {
        frame_mark(*found, *place);
    }
}

void DrawingBoard::point_at(std::optional<sf::Vector2f> at)
{
    if (at && pointer_ != at) {
        chosen_.reset();
    }
    pointer_ = at;
}

void DrawingBoard::point_at_next(int step)
{
    const auto count = static_cast<int>(section_.marks().size());
    int next = chosen_ ? static_cast<int>(*chosen_) : (step > 0 ? -1 : count);
    for (int tried = 0; tried < count; ++tried) {
        next = (next + step + count) % count;
        const auto index = static_cast<std::size_t>(next);
        if (section_.place_of(section_.marks()[index], {view_, 0.0, is_open_})) {
            chosen_ = index;
            pointer_.reset();
            return;
        }
    }
}

void DrawingBoard::frame_pointed()
{
    if (chosen_) {
        const Mark& mark = section_.marks()[*chosen_];
        if (const auto place = section_.place_of(mark, {view_, 0.0, is_open_})) {
            frame_mark(mark, *place);
        }
    }
}

std::optional<std::size_t> DrawingBoard::mark_at(sf::Vector2f at) const
{
    std::optional<std::size_t> best;
    double least = 1e9;
    const auto& marks = section_.marks();
    for (std::size_t i = 0; i < marks.size(); ++i) {
        const auto place = section_.place_of(marks[i], {view_, 0.0, is_open_});
        if (!place) {
            continue;
        }
        // Of boxes one in another the smallest counts; a very small one is helped.
        const sf::Vector2f way = camera_.to_pixels(*place) - at;
        const float across = std::max(camera_.to_pixels(marks[i].half.x * 1e-3), 7.0F);
        const float up = std::max(camera_.to_pixels(marks[i].half.y * 1e-3), 7.0F);
        const double size = static_cast<double>(across) * static_cast<double>(up);
        if (std::abs(way.x) <= across && std::abs(way.y) <= up && size < least) {
            least = size;
            best = i;
        }
    }
    return best;
}

void DrawingBoard::frame_camera(const Scene& scene)
{
    const sf::FloatRect area = whole(scene.layout.section);
    const bool is_resized = area != area_ || scene.look.scale != scale_;
    if (is_resized || scene.look.theme.id != theme_id_ || scene.is_open != is_open_ ||
        wording_age_ != wording_age()) {
        area_ = area;
        wording_age_ = wording_age();
        theme_id_ = scene.look.theme.id;
        scale_ = scene.look.scale;
        has_still_ = false;
    }
    if (scene.is_open != is_open_) {
        is_open_ = scene.is_open;
        chosen_.reset();
    }
    if (is_resized && is_whole_) {
        camera_ = goal_ = whole_camera();
    }
    move_camera(scene);
}

void DrawingBoard::move_camera(const Scene& scene)
{
    if (!is_moving_) {
        rested_ += scene.frame_seconds;
        return;
    }
    constexpr double haste = 0.09; // s; time in which the way left shrinks to a third
    const double share = 1.0 - std::exp(-static_cast<double>(scene.frame_seconds) / haste);
    camera_ = scene.reduces_motion ? goal_ : camera_.toward(goal_, share);
    const Place middle =
        goal_.to_place({area_.left + area_.width / 2.0F, area_.top + area_.height / 2.0F});
    const sf::Vector2f left = camera_.to_pixels(middle) - goal_.to_pixels(middle);
    if (std::hypot(left.x, left.y) < 0.5F &&
        std::abs(camera_.pixels_per_metre() / goal_.pixels_per_metre() - 1.0) < 0.001) {
        camera_ = goal_;
        is_moving_ = false;
        rested_ = 0.0F;
    }
    has_still_ = false;
}

void DrawingBoard::draw_section(sf::RenderTarget& target, const Scene& scene)
{
    frame_camera(scene);
    if (!has_still_) {
        still_mesh_.clear();
        still_text_.clear();
        section_.draw_still({still_mesh_, still_text_, scene.look, camera_, area_}, is_open_);
        still_.take(area_, scene.look.theme.ground, {&still_mesh_, &still_text_});
        has_still_ = true;
        has_names_ = false;
    }
    mesh_.clear();
    text_.clear();
    const SectionDrawing::Canvas canvas{mesh_, text_, scene.look, camera_, area_};
    const SectionDrawing::State state{view_, scene.seconds, is_open_};
    section_.draw_moving(canvas, state);
    drips_.draw(mesh_, scene.look, camera_);
    const sf::View window = target.getView();
    still_.show(target);
    target.setView(clipped_to(area_, target));
    if (!still_.is_usable()) {
        target.draw(still_mesh_);
        target.draw(still_text_);
    }
    target.draw(mesh_);
    target.draw(text_);
    draw_names(target, scene, canvas, state);
    target.setView(window);
}

void DrawingBoard::draw_names(sf::RenderTarget& target, const Scene& scene,
                              const SectionDrawing::Canvas& canvas,
                              const SectionDrawing::State& state)
{
    constexpr float settling = 0.12F; // s without motion before names come back
    if (is_moving_ || (!is_whole_ && rested_ < settling && !scene.reduces_motion)) {
        has_names_ = false;
    } else if (!has_names_ || names_.is_stale(section_, state)) {
        names_.lay_out(section_, canvas, state);
        has_names_ = true;
    }
    const auto pointed = chosen_ ? chosen_ : pointer_ ? mark_at(*pointer_) : std::nullopt;
    if (has_names_) {
        names_.refresh(section_, canvas, state, pointed);
        names_.draw(target);
    }
    if (pointed) {
        const Mark& mark = section_.marks()[*pointed];
        const auto place = section_.place_of(mark, state);
        if (place) {
            const Point at = pointer_ && !chosen_ ? *pointer_ : camera_.to_pixels(*place);
            names_.draw_card(target, canvas, state, mark, at);
        }
    }
}

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

void DrawingBoard::draw(sf::RenderTarget& target, const Scene& scene)
{
    BenchRun& run = scene.model.run();
    if (scene.model.run_number() != run_number_) {
        view_ = MachineView(run.machine());
        run_number_ = scene.model.run_number();
    }
    view_.take(run.machine());
    view_.hold_cord(scene.cord_in_hand);
    drips_.follow(scene.model);
    if (scene.layout.section.height > 0.0F) {
        draw_section(target, scene);
    }
    const FuelHeads heads = in_shown_units(run.heads());
    const FuelHeads twin_heads = in_shown_units(run.twin_heads());
    head_unit_ = readout_of("mm").sign;
    loss_unit_ = filled(words::of_fuel, {head_unit_});
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
