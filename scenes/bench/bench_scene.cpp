#include "scenes/bench/bench_scene.hpp"

#include "scenes/bench/bench_dialogs.hpp"
#include "scenes/bench/bench_panels.hpp"
#include "scenes/bench/chart_dialogs.hpp"
#include "scenes/bench/projector_layout.hpp"
#include "scenes/bench/settings_dialog.hpp"
#include "scenes/bench/time_dialogs.hpp"
#include "scenes/command_line/csv.hpp"
#include "scenes/present/builder_words.hpp"
#include "scenes/present/hand_words.hpp"
#include "scenes/present/part_finder.hpp"
#include "scenes/present/time_words.hpp"
#include "scenes/present/wording.hpp"
#include "scenes/present/words.hpp"

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <utility>

namespace scenes {
namespace {

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
      desk_{model_, view_, settings, ui_, {}, status_text_},
      orders_(fonts, desk_),
      builder_(fonts, desk_, orders_.workshops())
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
    drawing_.emplace(fonts_, model_.run().machine());
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

void BenchScene::draw_orders(float seconds)
{
    const sf::Vector2f size(window_.getSize());
    desk_.window_height = size.y;
    ui_.begin_frame(seconds);
    orders_.show(size);
    show_dialogs(desk_, keys_->lines());
    orders_.take_keys();
    BenchKeys::take_window(desk_);
    sound_.go_on(model_, 0.0); // the bench is paused and falls silent
    window_.clear(to_sfml(ui_.look().theme.ground));
    orders_.draw(window_, seconds);
    ui_.draw();
}

void BenchScene::draw_builder(float seconds)
{
    const sf::Vector2f size(window_.getSize());
    desk_.window_height = size.y;
    ui_.begin_frame(seconds);
    builder_.show(size, seconds);
    show_dialogs(desk_, keys_->lines());
    BenchKeys::take_window(desk_);
    sound_.go_on(model_, 0.0); // the bench is paused and falls silent
    window_.clear(to_sfml(ui_.look().theme.ground));
    builder_.draw(window_);
    ui_.draw();
    begin_preview();
}

bool BenchScene::wants_to_quit()
{
    view_.wants_to_quit = view_.wants_to_quit && builder_.lets_go();
    return view_.wants_to_quit;
}

void BenchScene::open_builder()
{
    const OrderDesk& desk = orders_.desk();
    if (desk.has_order() && !is_preview_ && !desk.attempt().is_handed_in()) {
        view_.notice = words::attempt_in_hand;
    } else {
        builder_.open();
    }
}

void BenchScene::begin_preview()
{
    if (!std::exchange(builder_.view().wants_preview, false)) {
        return;
    }
    try {
        const auto order = builder_.building().order();
        orders_.view() = {}; // nothing of another attempt
        orders_.desk().show(shop::Attempt(order, order->seed), nullptr);
        is_preview_ = true;
        view_.shows_orders = true;
    } catch (const std::runtime_error& error) { // what is put down is no order yet
        builder_.view().notice = worded(error.what());
        builder_.view().is_notice_warning = true;
    }
}

void BenchScene::end_preview()
{
    if (is_preview_ && (!view_.shows_orders || !orders_.desk().has_order())) {
        orders_.desk().put_away();
        view_.shows_orders = false;
        is_preview_ = false;
    }
}

void BenchScene::draw(float seconds)
{
    take_machine();
    take_settings();
    take_wording();
    if (view_.wants_orders) {
        view_.wants_orders = false;
        orders_.open();
    }
    if (view_.wants_builder) {
        view_.wants_builder = false;
        open_builder();
    }
    end_preview();
    if (view_.shows_orders) {
        draw_orders(seconds);
        return;
    }
    if (view_.shows_builder) {
        draw_builder(seconds);
        return;
    }
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
    if (!model_.is_busy()) {
        constexpr std::chrono::milliseconds most{2};
        const auto until = std::chrono::steady_clock::now() + most;
        desk_.changes.refine(model_.run(),
                             [until] { return std::chrono::steady_clock::now() < until; });
    }
    panel_ = layout.panel;
    build(layout, time_box, seconds);
    const Rgba ground = ui_.look().theme.ground;
    window_.clear(to_sfml(ground));
    drawing_->draw(window_, {.layout = layout,
                             .look = ui_.look(),
                             .machine = model_.run().machine(),
                             .values = model_.run().values(),
                             .run_number = model_.run_number(),
                             .heads = model_.run().heads(),
                             .twin_heads = view_.shows_twin && model_.run().has_twin()
                                               ? std::optional(model_.run().twin_heads())
                                               : std::nullopt,
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
