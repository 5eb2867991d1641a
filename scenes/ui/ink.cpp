#include "scenes/ui/ink.hpp"

#include <algorithm>
#include <array>
#include <cfloat>
#include <cmath>

namespace scenes {
namespace {

constexpr std::string_view ellipsis = "\u2026";

/// Where a line ends: the library also ends one after the comma or point within a number.
const char* at_a_space(const char* line, const char* stop, const char* end)
{
    if (stop >= end || *stop == ' ' || stop[-1] == ' ') {
        return stop;
    }
    const char* space = stop;
    while (space > line && *space != ' ') {
        --space;
    }
    return space > line ? space : stop;
}

} // namespace

void Ink::block(const sf::FloatRect& box, Rgba colour) const
{
    list_->AddRectFilled({std::round(box.left), std::round(box.top)},
                         {std::round(box.left + box.width), std::round(box.top + box.height)},
                         to_imgui(colour));
}

void Ink::line(float x1, float y1, float x2, float y2, Rgba colour, float width) const
{
    list_->AddLine({x1, y1}, {x2, y2}, to_imgui(colour), width);
}

void Ink::frame(const sf::FloatRect& box, Rgba colour, float width) const
{
    const float w = std::max(1.0F, std::round(width));
    block({box.left, box.top, box.width, w}, colour);
    block({box.left, box.top + box.height - w, box.width, w}, colour);
    block({box.left, box.top, w, box.height}, colour);
    block({box.left + box.width - w, box.top, w, box.height}, colour);
}

void Ink::plate(const sf::FloatRect& box, float cut, Rgba fill, Rgba outline, float width) const
{
    // An outline runs along the middle of the outermost pixels; a fill alone reaches their edge.
    const float inset = fill == outline ? 0.0F : 0.5F;
    const float left = std::round(box.left) + inset;
    const float top = std::round(box.top) + inset;
    const float right = std::round(box.left + box.width) - inset;
    const float bottom = std::round(box.top + box.height) - inset;
    const std::array<ImVec2, 6> points{{{left + cut, top},
                                        {right, top},
                                        {right, bottom - cut},
                                        {right - cut, bottom},
                                        {left, bottom},
                                        {left, top + cut}}};
    list_->AddConvexPolyFilled(points.data(), static_cast<int>(points.size()), to_imgui(fill));
    if (fill != outline) {
        list_->AddPolyline(points.data(), static_cast<int>(points.size()), to_imgui(outline),
                           ImDrawFlags_Closed, width);
    }
}

void Ink::triangle(ImVec2 a, ImVec2 b, ImVec2 c, Rgba colour) const
{
    list_->AddTriangleFilled(a, b, c, to_imgui(colour));
}

void Ink::polygon(const ImVec2* points, int count, Rgba colour) const
{
    list_->AddConvexPolyFilled(points, count, to_imgui(colour));
}

void Ink::circle(ImVec2 centre, float radius, Rgba colour, float width) const
{
    list_->AddCircle(centre, radius, to_imgui(colour), 0, width);
}

void Ink::ring(const sf::FloatRect& box) const
{
    const Look& look = state_->look;
    const float gap = look.whole(4.0F);
    const float width = look.whole(2.0F);
    frame({std::round(box.left) - gap, std::round(box.top) - gap,
           std::round(box.width) + 2.0F * gap, std::round(box.height) + 2.0F * gap},
          look.theme.accent, width);
}

float Ink::width(std::string_view text, Type type) const
{
    if (text.empty()) {
        return 0.0F; // the library does not take a null pointer
    }
    const ImFont* font = state_->typefaces.font(type);
    return font
        ->CalcTextSizeA(font->FontSize, FLT_MAX, 0.0F, text.data(), text.data() + text.size())
        .x;
}

std::size_t Ink::fitting_length(std::string_view text, Type type, float width) const
{
    const float room = width - this->width(ellipsis, type);
    std::size_t length = text.size();
    while (length > 0 && this->width(text.substr(0, length), type) > room) {
        --length;
        // Not into the middle of a character of several bytes.
        while (length > 0 && (static_cast<unsigned char>(text[length]) & 0xC0U) == 0x80U) {
            --length;
        }
    }
    return length;
}

bool Ink::write(std::string_view text, const sf::FloatRect& box, Type type, Rgba colour,
                float align) const
{
    ImFont* font = state_->typefaces.font(type);
    const float full = width(text, type);
    const bool fits = full <= box.width + 0.5F;
    std::string cut;
    if (!fits) {
        cut = std::string(text.substr(0, fitting_length(text, type, box.width)));
        cut += ellipsis;
        text = cut;
    }
    const float shown = fits ? full : width(text, type);
    const ImFontGlyph* capital = font->FindGlyph('H');
    const float middle = (capital->Y0 + capital->Y1) / 2.0F;
    const ImVec2 at{std::round(box.left + (box.width - shown) * align),
                    std::round(box.top + box.height / 2.0F - middle)};
    list_->AddText(font, font->FontSize, at, to_imgui(colour), text.data(),
                   text.data() + text.size());
    return fits;
}

template <class Use>
float Ink::each_line(std::string_view text, Type type, float width, Use use) const
{
    // The library's own line height is a fraction of a pixel; every second line would be blurred.
    const ImFont* font = state_->typefaces.font(type);
    const float line_height = std::round(font->FontSize * 1.12F);
    float y = 0.0F;
    const char* at = text.data();
    const char* end = text.data() + text.size();
    while (at < end) {
        const char* line_end = std::find(at, end, '\n');
        const char* stop =
            std::min(line_end, font->CalcWordWrapPositionA(1.0F, at, line_end, width));
        stop = at_a_space(at, std::max(stop, at + (line_end > at ? 1 : 0)), line_end);
        use(std::string_view(at, static_cast<std::size_t>(stop - at)), y);
        y += line_height;
        at = stop;
        while (at < line_end && *at == ' ') {
            ++at;
        }
        if (at == line_end) {
            at = line_end + (line_end < end ? 1 : 0);
        }
    }
    return y;
}

float Ink::wrapped_height(std::string_view text, Type type, float width) const
{
    return each_line(text, type, width, [](std::string_view, float) {});
}

void Ink::write_wrapped(std::string_view text, const sf::FloatRect& box, Type type,
                        Rgba colour) const
{
    ImFont* font = state_->typefaces.font(type);
    each_line(text, type, box.width, [&](std::string_view line, float y) {
        list_->AddText(font, font->FontSize, {std::round(box.left), std::round(box.top) + y},
                       to_imgui(colour), line.data(), line.data() + line.size());
    });
}

} // namespace scenes
