#include "scenes/bench/drawing_board.hpp"

#include "scenes/present/readout.hpp"
#include "scenes/present/words.hpp"

#include <algorithm>
#include <cmath>

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

} // namespace

DrawingBoard::DrawingBoard(const Fonts& fonts, const sim::Simulator& machine)
    : section_(machine.rig()),
      drips_(machine.rig()),
      view_(machine),
      still_text_(fonts),
      text_(fonts),
      figures_(fonts),
      names_(fonts)
{
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
    drips_.lay_out(mesh_, scene.look, camera_, area_);
    const sf::View window = target.getView();
    still_.show(target);
    target.setView(clipped_to(area_, target));
    if (!still_.is_usable()) {
        target.draw(still_mesh_);
        target.draw(still_text_);
    }
    target.draw(mesh_);
    drips_.draw(target);
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

void DrawingBoard::draw(sf::RenderTarget& target, const Scene& scene)
{
    if (scene.run_number != run_number_) {
        view_ = MachineView(scene.machine);
        run_number_ = scene.run_number;
    }
    view_.take(scene.machine);
    view_.hold_cord(scene.cord_in_hand);
    drips_.follow(scene.machine, scene.values, scene.run_number);
    if (scene.layout.section.height > 0.0F) {
        draw_section(target, scene);
    }
    if (scene.heads) {
        draw_heads(target, scene);
    }
}

void DrawingBoard::draw_heads(sf::RenderTarget& target, const Scene& scene)
{
    const FuelHeads heads = in_shown_units(*scene.heads);
    const std::optional<FuelHeads> shown_twin =
        scene.twin_heads ? std::optional(in_shown_units(*scene.twin_heads)) : std::nullopt;
    const FuelHeads* twin = shown_twin ? &*shown_twin : nullptr;
    head_unit_ = readout_of("mm").sign;
    loss_unit_ = filled(words::of_fuel, {head_unit_});
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
