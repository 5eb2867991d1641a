#include "scenes/bench/drawing_board.hpp"

#include "scenes/present/phrase.hpp"
#include "sim/error.hpp"
#include "sim/printable.hpp"
#include "sim/words.hpp"

#include <algorithm>
#include <cmath>

// What of the drawing is in view: the camera's goal, and its way there.

namespace scenes {
namespace {

constexpr double most_zoom = 40.0; ///< one jet then fills the drawing

sf::FloatRect whole(const sf::FloatRect& box)
{
    return {std::round(box.left), std::round(box.top), std::round(box.width),
            std::round(box.height)};
}

} // namespace

Camera DrawingBoard::whole_camera() const
{
    const auto bounds = section_.bounds();
    // Words over the topmost parts and by the floor stay on the page, and the dial in its corner
    // stands over or beside the drawing: as the drawing comes out larger.
    constexpr float dial = 40.0F;
    constexpr float over = 12.0F;
    constexpr float under = 4.0F;
    const auto framed = [&](float left, float top) {
        const sf::FloatRect inner{area_.left + left * scale_, area_.top + top * scale_,
                                  std::max(1.0F, area_.width - left * scale_),
                                  std::max(1.0F, area_.height - (top + under) * scale_)};
        return Camera::framing(bounds.low, bounds.high, inner);
    };
    const Camera below = framed(0.0F, dial);
    const Camera beside = framed(dial, over);
    return beside.pixels_per_metre() > below.pixels_per_metre() ? beside : below;
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

void DrawingBoard::frame_pointed()
{
    if (chosen_) {
        const Mark& mark = section_.marks()[*chosen_];
        if (const auto place = section_.place_of(mark, {view_, 0.0, is_open_})) {
            frame_mark(mark, *place);
        }
    }
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

} // namespace scenes
