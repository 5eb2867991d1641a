#include "scenes/bench/bench_scene.hpp"

#include "scenes/bench/bench_dialogs.hpp"
#include "scenes/bench/bench_panels.hpp"
#include "scenes/bench/chart_dialogs.hpp"
#include "scenes/bench/projector_layout.hpp"
#include "scenes/bench/settings_dialog.hpp"
#include "scenes/bench/time_dialogs.hpp"
#include "scenes/command_line/csv.hpp"
#include "scenes/present/hand_words.hpp"
#include "scenes/present/part_finder.hpp"
#include "scenes/present/time_words.hpp"
#include "scenes/present/wording.hpp"
#include "scenes/present/words.hpp"
#include "scenes/view/clip.hpp"
#include "scenes/view/number.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace scenes {
namespace {

constexpr float double_press = 0.4F; ///< s between the presses that count as two

/// What to try first with a machine, told by the kind of one of its parts.
struct Hint {
    std::string_view kind;
    Phrase words;
};
constexpr std::array hints{Hint{"float_needle", words::float_hint},
                           Hint{"metering_needle", words::diaphragm_hint}};

std::string_view hint_of(const sim::Rig& rig)
{
    const auto* const found =
        std::ranges::find_if(hints, [&](const Hint& hint) { return has_kind(rig, hint.kind); });
    return found == hints.end() ? std::string_view() : std::string_view(found->words);
}

} // namespace

BenchScene::BenchScene(sf::RenderWindow& window, const FontFiles& files, const Fonts& fonts,
                       BenchModel& model, SettingsKeeper& settings, bool is_projector)
    : window_(window),
      fonts_(fonts),
      model_(model),
      ui_(window, files, look_of(settings.now(), 0.0F)),
      status_text_(fonts),
      caption_text_(fonts),
      time_bar_(fonts),
      desk_{model_, view_, settings, ui_, {}, status_text_}
{
    view_.is_projector = is_projector;
    take_machine();
    take_settings();
    take_wording();
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
    view_.is_held_in_drawing = false;
    drawing_.emplace(fonts_, model_);
    hands_.emplace(*rig_);
    charts_.emplace(fonts_, model_);
    keys_.emplace(desk_.actions);
    row_scale_ = 0.0F;
    view_.notice = hint_ = hint_of(*rig_);
    if (desk_.settings.now().machine != rig_->id) {
        desk_.settings.change([this](Settings& settings) { settings.machine = rig_->id; });
    }
}

void BenchScene::take_settings()
{
    const float height = view_.is_projector ? static_cast<float>(window_.getSize().y) : 0.0F;
    if (settings_age_ != desk_.settings.age() || projector_height_ != height) {
        apply_settings(desk_.settings, height, ui_);
        settings_age_ = desk_.settings.age();
        projector_height_ = height;
    }
    const bool was_hint = view_.notice == hint_;
    for (const Without& without : std::exchange(desk_.settings.without(), {})) {
        // What to try first stays: somebody without a loudspeaker wants to know it too.
        view_.notice += (view_.notice.empty() ? "" : " ") + without.line();
    }
    hint_ = was_hint ? view_.notice : hint_; // nothing was done yet: other words may take its place
}

void BenchScene::open_sound()
{
    if (!sound_.open()) {
        desk_.settings.without().push_back({words::no_sound_device, ""});
    }
}

void BenchScene::take_wording()
{
    if (wording_age_ != wording_age()) {
        wording_age_ = wording_age();
        keys_->name_lines(desk_.actions);
        row_scale_ = 0.0F;
        const bool shows_hint = view_.notice == hint_;
        hint_ = hint_of(*rig_);
        view_.notice = shows_hint ? hint_ : view_.notice;
    }
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

std::string BenchScene::message() const
{
    if (model_.is_frozen()) {
        return filled(words::frozen, {worded(model_.trouble()), view_.notice});
    }
    if (!model_.is_at_end() && !model_.is_busy() && view_.notice == hint_) {
        return std::string(words::in_the_past);
    }
    if (model_.pace.is_late() && !model_.is_busy()) {
        const double reached = model_.pace.speed() * model_.pace.reached();
        return filled(words::late, {fixed_text(reached, reached < 10.0 ? 1 : 0)});
    }
    return model_.run().has_twin() ? view_.notice : std::string(words::twin_lost);
}

std::string BenchScene::clock() const
{
    const Pace& pace = model_.pace;
    std::string text = clock_text(model_.seconds());
    if (!model_.is_at_end()) {
        text = filled(words::clock_of, {text, clock_text(model_.end_seconds())});
    }
    text += "  ";
    if (pace.is_paused) {
        text += words::paused;
    } else if (pace.chosen() == Pace::real_time) {
        text += words::real_time;
    } else {
        text += filled(words::times_real_time, {words::speeds[pace.chosen()]});
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
    const sf::Vector2f size(window_.getSize());
    const float whole = view_.is_projector ? projector_status_width(size, ui_.look())
                                           : status_width(size, ui_.look(), widest_row());
    const float width = whole - status_text_.width(clock, style) - ui_.look().px(24.0F);
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
            widest = std::max(widest, status_text_.width(translated(fault.title), style));
        }
        for (const sim::Control& control : model_.rig().controls) {
            widest = std::max(widest, status_text_.width(translated(control.title), style));
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

void BenchScene::draw_caption(const BenchLayout& layout)
{
    const std::string_view caption = sound_.caption();
    const sf::FloatRect& box = layout.section;
    if (!desk_.settings.now().has_captions || caption.empty() || box.height <= 0.0F) {
        return;
    }
    const Look& look = ui_.look();
    const TextStyle style{.face = Face::bold,
                          .size = look.body(),
                          .colour = look.theme.ink,
                          .align = Align::centre,
                          .anchor = Anchor::top};
    const float width = caption_text_.width(caption, style) + look.px(24.0F);
    const float height = look.px(30.0F);
    const Point low{std::round(box.left + (box.width - width) / 2.0F),
                    std::round(box.top + box.height - height - look.px(4.0F))};
    const Polygon sheet{low, low + Point{width, 0.0F}, low + Point{width, height},
                        low + Point{0.0F, height}};
    caption_mesh_.clear();
    caption_mesh_.fill(sheet, look.theme.ground);
    caption_mesh_.stroke(sheet, {.colour = look.theme.ink, .width = look.thin(), .closed = true});
    caption_text_.clear();
    caption_text_.write(caption, {low.x + width / 2.0F, low.y + look.px(6.0F)}, style);
    window_.draw(caption_mesh_);
    window_.draw(caption_text_);
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

void BenchScene::build(const BenchLayout& layout, const sf::FloatRect& time_box, float seconds)
{
    if (layout.is_compact) {
        show_pages(desk_, layout);
    }
    if (layout.section.height > 0.0F) {
        hands_->show(desk_, *drawing_, seconds);
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

void BenchScene::show_drawing(std::string_view part, bool is_shut)
{
    view_.is_shut = is_shut;
    draw(0.0F);
    if (!part.empty()) {
        drawing_->frame_part_named(part);
    }
    constexpr int frames = 4; // of 2 s: the camera arrives, and names come back
    for (int i = 0; i < frames; ++i) {
        draw(2.0F);
    }
}

std::string BenchScene::boxes() const
{
    std::string text = csv_line({"what", "text", "left", "top", "width", "height"});
    const auto add = [&](std::string_view what, std::string_view words, const sf::FloatRect& box) {
        const auto number = [](float value) { return csv_number(static_cast<double>(value)); };
        text += csv_line({csv_cell(what), csv_cell(words), number(box.left), number(box.top),
                          number(box.width), number(box.height)});
    };
    add("drawing", "", drawing_->area());
    add("panel", "", panel_);
    for (const SectionNames::Shown& name : drawing_->names()) {
        add("name", name.name, name.box);
    }
    for (const sf::FloatRect& box : drawing_->notes().boxes()) {
        add("note", "", box);
    }
    for (const sf::FloatRect& box : drawing_->figures().boxes()) {
        add("figure", "", box);
    }
    return text;
}

void BenchScene::draw(float seconds)
{
    take_machine();
    take_settings();
    take_wording();
    if (model_.is_frozen() && !was_frozen_) {
        keep_frozen_run(desk_);
    }
    was_frozen_ = model_.is_frozen();
    if (!model_.pace.is_paused && model_.is_ready()) {
        // With reduced motion the marks of a flow stand still; its readings and heads tell it.
        const double motion = desk_.settings.now().is_motion_reduced ? 0.0 : 1.0;
        flow_seconds_ += static_cast<double>(seconds) * std::min(motion, model_.pace.speed());
    }
    const sf::Vector2f size(window_.getSize());
    desk_.window_height = size.y;
    ui_.begin_frame(seconds);
    const std::string message = this->message();
    const std::string clock = this->clock();
    const float time_height = TimeBar::height(ui_.look());
    const bool is_hidden = view_.hidden.count(model_.run().machine()) > 0;
    const BenchNeeds needs{.status_height = time_height + measure_status(message, clock),
                           .row_width = widest_row(),
                           .chart_lines = charts_->most_lines(),
                           .standpipes = is_hidden ? 0 : model_.run().gauge_count()};
    BenchLayout layout =
        view_.is_projector
            ? lay_out_projector(size, ui_.look(), desk_.settings.now().projector, needs)
            : lay_out_bench(size, ui_.look(), view_.page, needs);
    desk_.panel_width = layout.panel.width;
    // The rail of time lies above the line of messages.
    sf::FloatRect time_box = layout.status;
    time_box.height = time_height;
    layout.status.top += time_height;
    layout.status.height -= time_height;
    desk_.changes.follow(model_.run(), model_.run_number());
    panel_ = layout.panel;
    build(layout, time_box, seconds);
    const Rgba ground = ui_.look().theme.ground;
    window_.clear(to_sfml(ground));
    drawing_->draw(window_, {.layout = layout,
                             .look = ui_.look(),
                             .model = model_,
                             .shows_twin = view_.shows_twin,
                             .seconds = flow_seconds_,
                             .frame_seconds = seconds,
                             .is_open = !view_.is_shut && !is_hidden,
                             .reduces_motion = desk_.settings.now().is_motion_reduced,
                             .cord_in_hand = hands_->cord_in_hand()});
    // A step of a paused machine shows at once.
    const bool has_stepped = model_.pace.is_paused && model_.seconds() != shown_seconds_;
    shown_seconds_ = model_.seconds();
    charts_->draw(window_, layout, desk_, has_stepped);
    sound_.go_on(model_, desk_.settings.now().loudness());
    if (layout.section.height > 0.0F) {
        hands_->draw(window_);
    }
    draw_caption(layout);
    time_bar_.draw(window_, desk_, time_box);
    draw_status(layout, message, clock);
    ui_.draw();
}

} // namespace scenes
