#include "scenes/bench/section_trimmer_parts.hpp"

#include "scenes/present/readout.hpp"

#include <algorithm>
#include <cmath>

namespace scenes {
namespace {

constexpr double enlargement = 30.0; ///< as the frame's title says
constexpr double slope = 1.57;       ///< of the needle's cone, rise over run, as in the main view

/// A length in millimetres, a digit finer than elsewhere.
std::string fine_length(double length)
{
    Readout readout = readout_of("mm");
    readout.decimals += 1;
    return readout.text(length * 1e-3);
}

/// The frame, and the corner of the seat in it.
struct DetailFrame {
    explicit DetailFrame(const TrimmerPlan& plan)
        : low{plan.low().x + 0.8, plan.floor + 0.4},
          high{low.x + 13.5, low.y + 7.4},
          edge{low.x + 6.6, low.y + 3.8}
    {
    }
    [[nodiscard]] Outline box() const { return box_outline(low, high); }
    /// The frame without the seat.
    [[nodiscard]] Outline open() const
    {
        return {low, {high.x, low.y}, {high.x, edge.y}, edge, {edge.x, high.y}, {low.x, high.y}};
    }

    Spot low;
    Spot high;
    Spot edge;
};

/// The cone's flank past the seat's edge, cut off by the frame.
void draw_flank(const Sheet& sheet, const DetailFrame& frame, double lift)
{
    const Spot edge = frame.edge - Spot{0.0, lift * enlargement};
    const Point inwards = sheet.at(edge + Spot{-slope, -1.0}) - sheet.at(edge);
    for (const Polygon& piece : clip(sheet.polygon(frame.open()), {sheet.at(edge), inwards})) {
        draw_section(sheet.mesh, piece, Material::elastomer, sheet.look, sheet.texture());
        sheet.mesh.stroke(
            piece, {.colour = sheet.theme().ink, .width = sheet.look.medium(), .closed = true});
    }
}

} // namespace

Spot detail_corner(const TrimmerPlan& plan)
{
    return DetailFrame(plan).high;
}

void draw_detail_still(const Sheet& sheet, const TrimmerPlan& plan)
{
    const DetailFrame frame(plan);
    sheet.solid(box_outline(frame.edge, frame.high), Material::metal);
}

void draw_detail_moving(const Sheet& sheet, const TrimmerPlan& plan, const Moment& moment)
{
    const DetailFrame frame(plan);
    const MachineView& machine = moment.machine;
    const double lift = std::max(0.0, machine.reading("needle.lift") * 1e3);
    const double flow = machine.reading("needle.flow") * 6e7; // mL/min
    // Above the seat stands what the gallery holds, below it what the metering chamber does.
    sheet.fill(box_outline(frame.low, {frame.high.x, frame.edge.y}),
               machine.reading("metering.liquid") > 0.4 ? Content::fuel : Content::air);
    sheet.fill(box_outline({frame.low.x, frame.edge.y}, {frame.edge.x, frame.high.y}),
               machine.reading("gallery.liquid") > 0.4 ? Content::fuel : Content::air);
    draw_flank(sheet, frame, lift);
    if (flow > 0.05 && lift > 0.0) {
        const Spot along{0.25, -0.25 * slope};
        draw_flow_marks(
            sheet,
            {frame.edge + Spot{-2.6, 4.4}, frame.edge + Spot{-0.3, 0.3}, frame.edge + along * 8.0},
            0.25 * std::sqrt(std::min(flow, 60.0) / 60.0),
            moment.travelled("seat", std::sqrt(flow) * 1.5), sheet.theme().ink);
    }
    sheet.line(frame.box(), true);
    const TextStyle letter{.face = Face::bold,
                           .size = sheet.lettering.small(),
                           .colour = sheet.theme().ink,
                           .anchor = Anchor::bottom};
    const TextStyle figure{.size = sheet.lettering.small(),
                           .colour = sheet.theme().ink_soft,
                           .anchor = Anchor::bottom};
    const Point corner = sheet.at({frame.low.x, frame.high.y + 0.2});
    const std::string figures = fine_length(lift);
    // The title goes over the figure, which stays away where it would reach into the drawing.
    const float room = 1.1F * sheet.pixels(frame.high.x - frame.low.x);
    const bool has_figure = sheet.text.width(figures, figure) < room;
    const float line = has_figure ? std::round(Text::line_height(figure) * 0.9F) : 0.0F;
    const std::string_view title = sheet.text.width("A  30:1", letter) < room ? "A  30:1" : "A";
    sheet.text.write(title, corner - Point{0.0F, line}, letter);
    if (has_figure) {
        sheet.text.write(figures, corner, figure);
    }
    sheet.text.write("A", sheet.at(plan.seat + Spot{2.5, -2.8}), letter);
    sheet.mesh.ring(sheet.at(plan.seat + Spot{plan.seat_bore / 2.0, 0.0}), sheet.pixels(0.9),
                    {.colour = sheet.theme().ink_soft, .width = sheet.look.thin()});
}

} // namespace scenes
