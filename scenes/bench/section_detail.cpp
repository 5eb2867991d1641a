#include "scenes/bench/section_parts.hpp"

#include "scenes/present/phrase.hpp"
#include "scenes/present/readout.hpp"
#include "scenes/view/number.hpp"

#include <algorithm>
#include <cmath>

namespace scenes {
namespace {

constexpr double enlargement = 4.0; ///< as the frame's title says

/// The frame, and how the seat's surroundings lie in it.
struct DetailFrame {
    explicit DetailFrame(const SectionPlan& plan)
        : low{plan.high().x - 25.5, plan.high().y - 30.0},
          high{low.x + 25.0, low.y + 25.0},
          view{plan.seat, {(low.x + high.x) / 2.0, low.y + 15.5}, enlargement},
          half(enlargement * plan.seat_bore / 2.0)
    {
    }
    Spot low;
    Spot high;
    Reduction view;
    double half; ///< of the seat's bore
};

} // namespace

void draw_detail_still(const Sheet& sheet, const SectionPlan& plan)
{
    const DetailFrame frame(plan);
    const Spot seat = frame.view.to;
    for (const double side : {-1.0, 1.0}) {
        const double outer = side < 0.0 ? frame.low.x : frame.high.x;
        sheet.solid({{seat.x + side * frame.half, seat.y},
                     {outer, seat.y},
                     {outer, frame.high.y},
                     {seat.x + side * frame.half, frame.high.y}},
                    Material::metal, side > 0.0);
    }
}

void draw_detail_moving(const Sheet& sheet, const SectionPlan& plan, const Moment& moment)
{
    const DetailFrame frame(plan);
    const Spot seat = frame.view.to;
    const double lift = std::max(0.0, moment.machine.reading("needle.lift") * 1e3);
    const double flow = moment.machine.reading("needle.flow") * 6e7; // mL/min
    const bool is_wet = moment.machine.reading("hose.liquid") > 0.3;
    sheet.fill(box_outline({frame.low.x, frame.low.y}, {frame.high.x, seat.y}), Content::air);
    const Outline bore =
        box_outline({seat.x - frame.half, seat.y - 0.2}, {seat.x + frame.half, frame.high.y});
    sheet.fill(bore, is_wet ? Content::fuel : Content::air);
    if (is_wet && flow > 0.05 && lift > 0.0) {
        // The ring between needle and seat, and what runs down from it.
        const double wide = frame.half * 1.9;
        for (const double side : {-1.0, 1.0}) {
            const Spot rim = seat + Spot{side * frame.half, 0.0};
            const Spot run = seat + Spot{side * (wide + 1.2), -1.45 * enlargement};
            sheet.mesh.stroke({sheet.at(rim), sheet.at(run), sheet.at({run.x, frame.low.y})},
                              {.colour = sheet.theme().fuel_mark,
                               .width = std::clamp(sheet.pixels(std::sqrt(flow) * 0.09),
                                                   sheet.look.px(1.2F), sheet.look.px(6.0F))});
        }
    }
    const Spot tip = seat - Spot{0.0, lift * enlargement};
    const double wide = frame.half * 1.9;
    const double shoulder = 1.45 * enlargement;
    sheet.solid({tip + Spot{0.0, 1.6 * enlargement}, tip + Spot{wide, -shoulder},
                 tip + Spot{-wide, -shoulder}},
                Material::elastomer);
    sheet.solid({tip + Spot{wide, -shoulder},
                 {tip.x + wide, frame.low.y},
                 {tip.x - wide, frame.low.y},
                 tip + Spot{-wide, -shoulder}},
                Material::metal);
    sheet.edge({bore[0], bore[3]}, false);
    sheet.edge({bore[1], bore[2]}, false);
    sheet.line(box_outline(frame.low, frame.high), true);
    // The letter stands at the frame and at the circle in the main view.
    const TextStyle letter{.face = Face::bold,
                           .size = sheet.lettering.small(),
                           .colour = sheet.theme().ink,
                           .anchor = Anchor::bottom};
    sheet.text.write("A  4:1", sheet.at({frame.low.x, frame.high.y + 0.4}), letter);
    sheet.text.write("A", sheet.at(plan.seat + Spot{4.7, -0.8}), letter);
    sheet.mesh.ring(sheet.at(plan.seat - Spot{0.0, 0.4}), sheet.pixels(4.4),
                    {.colour = sheet.theme().ink_soft, .width = sheet.look.thin()});
    const std::string figure = readout_of("mm").text(lift * 1e-3);
    const std::string words = filled(phrase("lift {0}|of the needle"), {figure});
    constexpr double room = 26.0;
    sheet.note(sheet.has_room(words, room) ? words : figure, {frame.high.x, frame.low.y - 2.4},
               room, Align::right);
}

} // namespace scenes
