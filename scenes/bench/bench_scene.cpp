#include "scenes/bench/bench_scene.hpp"

#include "scenes/bench/bench_dialogs.hpp"
#include "scenes/bench/bench_panels.hpp"
#include "scenes/bench/chart_dialogs.hpp"
#include "scenes/bench/time_dialogs.hpp"
#include "scenes/present/part_finder.hpp"
#include "scenes/present/time_words.hpp"
#include "scenes/present/words.hpp"
#include "scenes/view/number.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace scenes {
namespace {

/// What to try first with a machine, told by the kind of one of its parts.
struct Hint {
    std::string_view kind;
    std::string_view words;
};
constexpr std::array hints{Hint{"float_needle", words::float_hint},
                           Hint{"metering_needle", words::diaphragm_hint}};

std::string_view hint_of(const sim::Rig& rig)
{
    const auto* const found =
        std::ranges::find_if(hints, [&](const Hint& hint) { return has_kind(rig, hint.kind); });
    return found == hints.end() ? std::string_view() : found->words;
}

} // namespace

BenchScene::BenchScene(sf::RenderWindow& window, const FontFiles& files, const Fonts& fonts,
                       BenchModel& model, const Look& look)
    : window_(window),
      fonts_(fonts),
      model_(model),
      ui_(window, files, look),
      status_text_(fonts),
      time_bar_(fonts),
      desk_{model_, view_, ui_, {}, status_text_, 720.0F, 340.0F, {}}
{
    take_machine();
}

void BenchScene::take_machine()
{
    if (rig_ == &model_.rig()) {
        return;
    }
    rig_ = &model_.rig();
    desk_.actions = actions_of(*rig_);
    view_.held.clear();
    view_.is_held_by_key = false;
    drawing_.emplace(fonts_, model_);
    charts_.emplace(fonts_, model_);
    keys_.emplace(desk_.actions);
    row_scale_ = 0.0F;
    view_.notice = hint_of(*rig_);
}

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
    handle_drawing(event);
}

void BenchScene::handle_drawing(const sf::Event& event)
{
    if (event.type == sf::Event::MouseMoved) {
        view_.pointer = {static_cast<float>(event.mouseMove.x),
                         static_cast<float>(event.mouseMove.y)};
    } else if (event.type == sf::Event::MouseWheelScrolled && !ui_.has_dialog() &&
               charts_->has_point(view_.pointer)) {
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
    if (ui_.has_mouse() || ui_.has_dialog()) {
        return;
    }
    if (event.type == sf::Event::MouseButtonPressed &&
        event.mouseButton.button == sf::Mouse::Left) {
        const sf::Vector2f at(static_cast<float>(event.mouseButton.x),
                              static_cast<float>(event.mouseButton.y));
        if (drawing_->area().contains(at)) {
            drag_from_ = at;
        }
    } else if (event.type == sf::Event::MouseWheelScrolled) {
        const sf::Vector2f at(static_cast<float>(event.mouseWheelScroll.x),
                              static_cast<float>(event.mouseWheelScroll.y));
        if (drawing_->area().contains(at)) {
            drawing_->zoom(std::pow(1.15, static_cast<double>(event.mouseWheelScroll.delta)), at);
        }
    }
}

std::string BenchScene::message() const
{
    if (model_.is_frozen()) {
        return std::string(words::frozen) + model_.trouble() + view_.notice;
    }
    if (!model_.is_at_end() && !model_.is_busy() && view_.notice == hint_of(*rig_)) {
        return std::string(words::in_the_past);
    }
    if (model_.pace.is_late() && !model_.is_busy()) {
        const double reached = model_.pace.speed() * model_.pace.reached();
        return std::string(words::late_begin) + fixed_text(reached, reached < 10.0 ? 1 : 0) +
               std::string(words::late_end);
    }
    return model_.run().has_twin() ? view_.notice : std::string(words::twin_lost);
}

std::string BenchScene::clock() const
{
    const Pace& pace = model_.pace;
    std::string text = clock_text(model_.seconds());
    if (!model_.is_at_end()) {
        text += std::string(words::clock_of) + clock_text(model_.end_seconds());
    }
    text += "  ";
    if (pace.is_paused) {
        text += words::paused;
    } else if (pace.chosen() == Pace::real_time) {
        text += words::real_time;
    } else {
        text +=
            std::string(words::speeds[pace.chosen()]) + " " + std::string(words::times_real_time);
    }
    return text;
}

TextStyle BenchScene::status_style() const
{
    const Look& look = ui_.look();
    return {.size = look.body(), .colour = look.theme.ink};
}

float BenchScene::measure_status(const std::string& message, const std::string& clock)
{
    const TextStyle style = status_style();
    const float width = status_width(sf::Vector2f(window_.getSize()), ui_.look(), widest_row()) -
                        status_text_.width(clock, style) - ui_.look().px(24.0F);
    const std::size_t lines = status_text_.wrap(message, width, style).size();
    return Text::line_height(style) * static_cast<float>(std::max<std::size_t>(1, lines));
}

float BenchScene::widest_row()
{
    if (row_scale_ != ui_.look().scale) {
        row_scale_ = ui_.look().scale;
        const TextStyle style = status_style();
        float widest = 0.0F;
        for (const sim::Fault& fault : model_.rig().faults) {
            widest = std::max(widest, status_text_.width(fault.title, style));
        }
        for (const sim::Control& control : model_.rig().controls) {
            widest = std::max(widest, status_text_.width(control.title, style));
        }
        row_width_ = widest + status_text_.width("100 %", style) + ui_.look().px(8.0F);
    }
    return row_width_;
}

void BenchScene::draw_status(const BenchLayout& layout, const std::string& message,
                             const std::string& clock)
{
    const Look& look = ui_.look();
    TextStyle style = status_style();
    style.anchor = Anchor::top;
    status_text_.clear();
    sf::FloatRect box = layout.status;
    style.align = Align::right;
    status_text_.write(clock, {box.left + box.width - look.px(4.0F), box.top}, style);
    box.width -= status_text_.width(clock, style) + look.px(24.0F);
    style.align = Align::left;
    style.colour =
        model_.is_frozen() || model_.pace.is_late() ? look.theme.warning : look.theme.accent;
    box.left += look.px(4.0F);
    status_text_.write_wrapped(message, box, style);
    window_.draw(status_text_);
}

void BenchScene::tell_of_branches()
{
    const std::size_t count = model_.branches().size();
    if (count > branch_count_ && model_.active_branch() + 1 == count) {
        view_.notice = words::branch_begun;
    }
    branch_count_ = count;
}

void BenchScene::show_wanted_reading()
{
    if (view_.reading_to_show) {
        charts_->show(*view_.reading_to_show);
        view_.reading_to_show.reset();
    }
}

void BenchScene::build(const BenchLayout& layout, const sf::FloatRect& time_box)
{
    if (layout.is_compact) {
        show_pages(desk_, layout);
    }
    charts_->show_handles(desk_, layout);
    time_bar_.show_handle(desk_, time_box);
    if (layout.panel.height > 0.0F) {
        show_panel(desk_, layout);
    }
    show_wanted_reading();
    tell_of_branches();
    show_chart_dialogs(desk_, *charts_);
    show_time_dialogs(desk_);
    show_dialogs(desk_, keys_->lines());
    keys_->take(desk_, *charts_, *drawing_);
}

void BenchScene::draw(float seconds)
{
    take_machine();
    if (model_.is_frozen() && !was_frozen_) {
        keep_frozen_run(desk_);
    }
    was_frozen_ = model_.is_frozen();
    if (!model_.pace.is_paused && model_.is_ready()) {
        flow_seconds_ += static_cast<double>(seconds) * std::min(1.0, model_.pace.speed());
    }
    const sf::Vector2f size(window_.getSize());
    desk_.window_height = size.y;
    ui_.begin_frame(seconds);
    const std::string message = this->message();
    const std::string clock = this->clock();
    const float time_height = TimeBar::height(ui_.look());
    BenchLayout layout =
        lay_out_bench(size, ui_.look(), view_.page,
                      {.status_height = time_height + measure_status(message, clock),
                       .row_width = widest_row(),
                       .chart_lines = charts_->most_lines(),
                       .standpipes = model_.run().gauge_count()});
    desk_.panel_width = layout.panel.width;
    // The rail of time lies above the line of messages.
    sf::FloatRect time_box = layout.status;
    time_box.height = time_height;
    layout.status.top += time_height;
    layout.status.height -= time_height;
    desk_.changes.follow(model_.run(), model_.run_number());
    build(layout, time_box);
    const Rgba ground = ui_.look().theme.ground;
    window_.clear(to_sfml(ground));
    drawing_->draw(window_, {layout, ui_.look(), model_, view_.shows_twin, flow_seconds_});
    // A step of a paused machine shows at once.
    const bool has_stepped = model_.pace.is_paused && model_.seconds() != shown_seconds_;
    shown_seconds_ = model_.seconds();
    charts_->draw(window_, layout, desk_, has_stepped);
    time_bar_.draw(window_, desk_, time_box);
    draw_status(layout, message, clock);
    ui_.draw();
}

} // namespace scenes
