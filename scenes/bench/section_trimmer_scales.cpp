#include "scenes/bench/section_trimmer_parts.hpp"

#include "scenes/present/phrase.hpp"
#include "scenes/view/number.hpp"

namespace scenes {
namespace {

constexpr double bar = 5.0; ///< mm

Spot bar_left(const TrimmerPlan& plan)
{
    return {plan.wall - 1.0, plan.top + 5.4};
}

} // namespace

void draw_scales(const Sheet& sheet, const TrimmerPlan& plan)
{
    const Spot left = bar_left(plan);
    const Spot right = left + Spot{bar, 0.0};
    const Spot rim{0.4, 0.8};
    sheet.cover(box_outline(left - rim, right + rim), LabelGround::Cover::words);
    sheet.mesh.stroke({sheet.at(left + Spot{0.0, 0.4}), sheet.at(left), sheet.at(right),
                       sheet.at(right + Spot{0.0, 0.4})},
                      {.colour = sheet.theme().ink_soft, .width = sheet.look.px(1.4F)});
    sheet.note(bar_words(bar * 1e-3), left - Spot{0.6, 0.0}, 12.0, Align::right);
}

void draw_travels_note(const Sheet& sheet, const TrimmerPlan& plan)
{
    const std::string words =
        filled(phrase("travels {0}:1"), {fixed_text(TrimmerPlan::travel_scale, 0)});
    const TextStyle style{.size = sheet.lettering.small(), .colour = sheet.theme().ink_soft};
    const float beside = sheet.text.width(bar_words(bar * 1e-3), style) + sheet.lettering.px(16.0F);
    const double reach = static_cast<double>(beside) / static_cast<double>(sheet.pixels(1.0));
    sheet.note(words, bar_left(plan) - Spot{0.6 + reach, 0.0}, 24.0, Align::right);
}

} // namespace scenes
