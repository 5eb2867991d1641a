#include "scenes/bench/bench_scene.hpp"

#include <cmath>

// What the window tells: keys let go of, the pointer on drawing and charts.

namespace scenes {
namespace {

constexpr float double_press = 0.4F; ///< s between the presses that count as two

} // namespace

void BenchScene::handle(const sf::Event& event)
{
    ui_.handle(event);
    if (event.type == sf::Event::Closed) {
        view_.wants_to_quit = true;
    } else if (event.type == sf::Event::Resized) {
        const sf::Vector2f size(static_cast<float>(event.size.width),
                                static_cast<float>(event.size.height));
        window_.setView(sf::View(sf::FloatRect({}, size)));
    } else if (event.type == sf::Event::KeyReleased) {
        keys_->release(desk_, event.key.code);
    } else if (event.type == sf::Event::LostFocus) {
        keys_->release_all(desk_);
    }
    if (view_.shows_orders) {
        orders_.handle(event);
    } else if (!view_.shows_builder) {
        handle_drawing(event);
    }
}

void BenchScene::handle_drawing(const sf::Event& event)
{
    if (event.type == sf::Event::MouseMoved) {
        desk_.pointer = {static_cast<float>(event.mouseMove.x),
                         static_cast<float>(event.mouseMove.y)};
    } else if (event.type == sf::Event::MouseWheelScrolled && !ui_.has_dialog() &&
               charts_->has_point(desk_.pointer)) {
        charts_->zoom_time(std::pow(1.25, -static_cast<double>(event.mouseWheelScroll.delta)));
        return;
    }
    if (event.type == sf::Event::MouseButtonReleased) {
        drag_from_.reset();
    } else if (event.type == sf::Event::MouseMoved && drag_from_) {
        const sf::Vector2f at(static_cast<float>(event.mouseMove.x),
                              static_cast<float>(event.mouseMove.y));
        drawing_->pan(at - *drag_from_);
        drag_from_ = at;
    }
    if (event.type == sf::Event::MouseLeft) {
        drawing_->point_at(std::nullopt);
    }
    if (event.type == sf::Event::MouseMoved) {
        const sf::Vector2f at(static_cast<float>(event.mouseMove.x),
                              static_cast<float>(event.mouseMove.y));
        const bool is_over = drawing_->area().contains(at) && !drag_from_ && !ui_.has_dialog();
        drawing_->point_at(is_over ? std::optional(at) : std::nullopt);
    }
    if (ui_.has_mouse() || ui_.has_dialog()) {
        return;
    }
    if (event.type == sf::Event::MouseButtonPressed &&
        event.mouseButton.button == sf::Mouse::Left) {
        const sf::Vector2f at(static_cast<float>(event.mouseButton.x),
                              static_cast<float>(event.mouseButton.y));
        if (drawing_->area().contains(at) && !hands_->is_over(*drawing_, at, ui_.look())) {
            const bool is_second = press_clock_.getElapsedTime().asSeconds() < double_press &&
                                   std::hypot(at.x - press_at_.x, at.y - press_at_.y) < 6.0F;
            press_clock_.restart();
            press_at_ = is_second ? sf::Vector2f(-100.0F, -100.0F) : at;
            if (is_second) {
                drawing_->frame_part(at);
            } else {
                drag_from_ = at;
            }
        }
    } else if (event.type == sf::Event::MouseWheelScrolled) {
        const sf::Vector2f at(static_cast<float>(event.mouseWheelScroll.x),
                              static_cast<float>(event.mouseWheelScroll.y));
        if (drawing_->area().contains(at)) {
            drawing_->zoom(std::pow(1.15, static_cast<double>(event.mouseWheelScroll.delta)), at);
        }
    }
}

} // namespace scenes
