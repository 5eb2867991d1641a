#include "scenes/bench/section_shared.hpp"

#include "scenes/present/phrase.hpp"
#include "scenes/view/number.hpp"
#include "scenes/view/shapes.hpp"

#include <algorithm>
#include <cmath>

namespace scenes {

void draw_plumb_line(const Sheet& sheet, Spot hook, double end, const Moment& moment)
{
    const double forward = moment.machine.control("tilt_forward");
    const double side = moment.machine.control("tilt_side");
    if (std::abs(forward) < 0.5 && std::abs(side) < 0.5) {
        return;
    }
    const double length = 30.0 * static_cast<double>(sheet.lettering.scale / sheet.pixels(1.0));
    // The whole line stays on the page, also where it points upwards.
    const Spot reach = Spot{moment.up.x, moment.up.z} * length;
    const float top = std::min(sheet.at(hook).y, sheet.at(hook - reach).y);
    const float above = std::max(0.0F, sheet.page.top + sheet.lettering.px(6.0F) - top);
    const double lower = static_cast<double>(above) / static_cast<double>(sheet.pixels(1.0));
    const Spot hung = hook - Spot{0.0, lower};
    const Spot bob = hung - reach;
    sheet.mesh.disc(sheet.at(hung), sheet.look.px(2.5F), sheet.theme().accent);
    arrow(sheet.mesh, sheet.at(hung), sheet.at(bob),
          {.colour = sheet.theme().accent, .width = sheet.look.medium()}, sheet.look.px(13.0F));
    std::string words;
    if (std::abs(forward) >= 0.5) {
        words = filled(forward > 0.0 ? phrase("{0}\u00B0 forward") : phrase("{0}\u00B0 back"),
                       {fixed_text(std::abs(forward), 0)});
    }
    if (std::abs(side) >= 0.5) {
        words += words.empty() ? "" : ", ";
        words +=
            filled(side > 0.0 ? phrase("{0}\u00B0 to the left") : phrase("{0}\u00B0 to the right"),
                   {fixed_text(std::abs(side), 0)});
    }
    TextStyle style{.face = Face::bold,
                    .size = sheet.lettering.body(),
                    .colour = sheet.theme().accent,
                    .anchor = Anchor::middle};
    // Beside the hook on the side of `end`, clear of the line should it lie that way.
    const double way = end < hook.x ? -1.0 : 1.0;
    const double clear = std::max(length / 3.0, way * (bob.x - hook.x) + length / 4.0);
    const Spot beside = hook + Spot{way * clear, 0.4 * length}; // and clear of names under it
    style.align = way < 0.0 ? Align::right : Align::left;
    const float room = sheet.pixels(way * (end - beside.x));
    const std::string sentence = filled(phrase("tipped {0}"), {words});
    if (sheet.text.width(sentence, style) < room) {
        words = sentence;
    }
    if (sheet.text.width(words, style) < room) {
        sheet.text.write(words, sheet.at(beside), style);
    }
}

} // namespace scenes
