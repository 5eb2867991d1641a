#include "scenes/view/standpipe.hpp"

#include "scenes/view/number.hpp"
#include "scenes/view/shapes.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

namespace scenes {
namespace {

/// A pipe with its edges worked out in pixels.
struct Tube {
    float left;
    float right;
    float top;
    float bottom;
    double low;
    double high;

    [[nodiscard]] float y_of(double head) const
    {
        const double share = std::clamp((head - low) / (high - low), 0.0, 1.0);
        return bottom - (bottom - top) * static_cast<float>(share);
    }
};

Tube tube_of(const Standpipe& pipe)
{
    const float half = std::round(pipe.bore / 2.0F);
    const float middle = std::round(pipe.foot.x);
    const float bottom = std::round(pipe.foot.y);
    return {middle - half, middle + half, bottom - std::round(pipe.height),
            bottom,        pipe.low,      pipe.high};
}

void draw_column(Mesh& mesh, const Look& look, const Tube& tube, const Standpipe& pipe)
{
    const float level = tube.y_of(pipe.column);
    mesh.fill({{tube.left, tube.top},
               {tube.right, tube.top},
               {tube.right, tube.bottom},
               {tube.left, tube.bottom}},
              look.theme.air);
    if (tube.bottom - level < 0.5F) {
        return;
    }
    const std::array<Point, 4> column{{{tube.left, level},
                                       {tube.right, level},
                                       {tube.right, tube.bottom},
                                       {tube.left, tube.bottom}}};
    draw_content(mesh, column, Content::fuel, look,
                 {.origin = {tube.left, tube.bottom}, .phase = pipe.phase});
    if (pipe.column <= pipe.high) {
        // The meniscus creeps up the glass at both sides.
        const float rise = look.px(2.5F);
        const float middle = (tube.left + tube.right) / 2.0F;
        mesh.stroke({{tube.left, level - rise},
                     {tube.left + rise, level - rise * 0.2F},
                     {middle, level},
                     {tube.right - rise, level - rise * 0.2F},
                     {tube.right, level - rise}},
                    {.colour = look.theme.fuel_mark, .width = look.medium()});
    }
}

void draw_glass(Mesh& mesh, const Look& look, const Tube& tube)
{
    const Pen pen{.colour = look.theme.ink, .width = look.px(1.6F), .round = true};
    const float lip = look.px(3.0F);
    mesh.stroke(
        {{tube.left - lip, tube.top - lip}, {tube.left, tube.top}, {tube.left, tube.bottom}}, pen);
    mesh.stroke(
        {{tube.right + lip, tube.top - lip}, {tube.right, tube.top}, {tube.right, tube.bottom}},
        pen);
}

/// Draws the scale right of the tube and returns the right edge of its numbers.
float draw_scale(Mesh& mesh, Text& text, const Look& look, const Tube& tube, bool has_numbers)
{
    const int most = std::max(2, static_cast<int>((tube.bottom - tube.top) / look.px(26.0F)));
    const Ticks ticks = nice_ticks(tube.low, tube.high, most);
    const float edge = tube.right + look.whole(3.0F);
    float right = edge + look.px(7.0F);
    TextStyle style{.size = look.small(), .colour = look.theme.ink_soft};
    style.anchor = Anchor::middle;
    const float line = std::max(1.0F, std::round(look.thin()));
    const double minor = ticks.step / 5.0;
    for (double k = std::ceil(tube.low / minor - 1e-6); k * minor <= tube.high + minor * 1e-6;
         ++k) {
        mesh.block({edge, std::round(tube.y_of(k * minor)), look.whole(4.0F), line},
                   look.theme.ink_soft);
    }
    for (const double value : ticks.values) {
        const float y = std::round(tube.y_of(value));
        const bool is_zero = std::abs(value) < ticks.step * 1e-6;
        mesh.block({edge, y, look.whole(7.0F), is_zero ? 2.0F * line : line}, look.theme.ink);
        if (has_numbers) {
            const sf::FloatRect box =
                text.write(fixed_text(value, ticks.decimals), {edge + look.px(9.0F), y}, style);
            right = std::max(right, box.left + box.width);
        }
    }
    return right;
}

void draw_twin(Mesh& mesh, const Look& look, const Tube& tube, double twin)
{
    const float y = tube.y_of(twin);
    const float size = look.px(7.0F);
    const float edge = tube.left - look.px(2.0F);
    mesh.stroke(
        std::array<Point, 3>{
            {{edge, y}, {edge - size, y - size * 0.6F}, {edge - size, y + size * 0.6F}}},
        {.colour = look.theme.ink_soft, .width = look.px(1.3F), .closed = true});
    mesh.stroke({{tube.left, y}, {tube.right, y}},
                {.colour = look.theme.ink_soft, .width = look.thin()});
}

/// Draws the arrow that says a column is off the scale, left of the tube's end.
void draw_off_scale(Mesh& mesh, const Look& look, const Tube& tube, bool is_above)
{
    const float x = tube.left - look.px(9.0F);
    const float size = look.px(20.0F);
    const Pen pen{.colour = look.theme.warning, .width = look.px(2.2F)};
    const float end = is_above ? tube.top - look.px(4.0F) : tube.bottom;
    arrow(mesh, {x, is_above ? end + size : end - size}, {x, end}, pen, look.px(12.0F));
}

} // namespace

sf::FloatRect draw_standpipe(Mesh& mesh, Text& text, const Look& look, const Standpipe& pipe)
{
    const Tube tube = tube_of(pipe);
    draw_column(mesh, look, tube, pipe);
    draw_glass(mesh, look, tube);
    const float right = draw_scale(mesh, text, look, tube, pipe.has_numbers);
    if (pipe.twin) {
        draw_twin(mesh, look, tube, *pipe.twin);
    }
    if (pipe.column > pipe.high || pipe.column < pipe.low) {
        draw_off_scale(mesh, look, tube, pipe.column > pipe.high);
    }
    const float left = tube.left - look.px(3.0F);
    TextStyle style{.face = Face::bold, .size = look.body(), .colour = look.theme.ink};
    const float baseline = tube.top - look.px(10.0F);
    const sf::FloatRect value =
        text.write(fixed_text(pipe.column, pipe.decimals), {left, baseline}, style);
    style = {.size = look.small(), .colour = look.theme.ink_soft};
    // The name in one or two lines, its last one over the value.
    const float line = std::round(Text::line_height(style));
    const auto lines = text.wrap(pipe.name, pipe.width, style);
    float y = baseline - look.px(19.0F) - line * static_cast<float>(lines.size() - 1);
    sf::FloatRect whole = value;
    for (const std::string_view words : lines) {
        const sf::FloatRect box = text.write(words, {left, y}, style);
        whole.top = std::min(whole.top, box.top);
        whole.width = std::max(whole.width, box.width);
        y += line;
    }
    const float far = std::max(right, whole.left + whole.width);
    return {left, whole.top, far - left, tube.bottom - whole.top};
}

} // namespace scenes
