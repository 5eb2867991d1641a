#include "scenes/bench/section_parts.hpp"

#include "scenes/view/number.hpp"
#include "scenes/view/shapes.hpp"

#include <cmath>

namespace scenes {

void draw_plumb_line(const Sheet& sheet, const SectionPlan& plan, const Moment& moment)
{
    const double forward = moment.machine.control("tilt_forward");
    const double side = moment.machine.control("tilt_side");
    if (std::abs(forward) < 0.5 && std::abs(side) < 0.5) {
        return;
    }
    const Spot hook{plan.mouth + 2.0, plan.high().y - 2.5};
    const Spot bob = hook - Spot{moment.up.x, moment.up.z} * 9.0;
    sheet.mesh.disc(sheet.at(hook), sheet.look.px(2.5F), sheet.theme().accent);
    arrow(sheet.mesh, sheet.at(hook), sheet.at(bob),
          {.colour = sheet.theme().accent, .width = sheet.look.medium()}, sheet.look.px(13.0F));
    std::string words;
    if (std::abs(forward) >= 0.5) {
        words = fixed_text(std::abs(forward), 0) + "\u00B0 " + (forward > 0.0 ? "forward" : "back");
    }
    if (std::abs(side) >= 0.5) {
        words += words.empty() ? "" : ", ";
        words += fixed_text(std::abs(side), 0) + "\u00B0 to the " + (side > 0.0 ? "left" : "right");
    }
    const TextStyle style{.face = Face::bold,
                          .size = sheet.look.body(),
                          .colour = sheet.theme().accent,
                          .anchor = Anchor::middle};
    const Spot beside = hook + Spot{3.0, 0.0};
    const double room = plan.end - 26.0 - beside.x; // the cord's own words follow
    if (sheet.text.width("tipped " + words, style) < sheet.pixels(room)) {
        words = "tipped " + words;
    }
    if (sheet.text.width(words, style) < sheet.pixels(room)) {
        sheet.text.write(words, sheet.at(beside), style);
    }
}

} // namespace scenes
