#include "scenes/bench/bench_scene.hpp"

#include "scenes/bench/projector_layout.hpp"
#include "scenes/present/hand_words.hpp"
#include "scenes/present/time_words.hpp"
#include "scenes/present/wording.hpp"
#include "scenes/present/words.hpp"
#include "scenes/view/clip.hpp"
#include "scenes/view/number.hpp"

#include <algorithm>
#include <cmath>

// The line of messages with its clock, and captions.

namespace scenes {

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
            if (control.is_workshop) {
                continue;
            }
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

} // namespace scenes
