#include "scenes/bench/section_shared.hpp"

#include "scenes/present/readout.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace scenes {

void draw_plate(const Sheet& sheet, const PlateShape& plate)
{
    constexpr double right_angle = std::numbers::pi / 2.0;
    const auto bar = [&](double from, double to) {
        return turned_about(box_outline(plate.shaft + Spot{from, -plate.thick},
                                        plate.shaft + Spot{to, plate.thick}),
                            plate.shaft, plate.shut * right_angle);
    };
    const Outline whole = bar(-plate.half, plate.half);
    sheet.mesh.fill(sheet.polygon(whole), sheet.theme().section);
    sheet.edge(whole);
    if (plate.opening > 0.0) {
        // The hole that lets air past a shut choke, seen through.
        const double middle = -plate.half * 0.5;
        const double hole = plate.half * plate.opening * 0.5;
        sheet.hollow(bar(middle - hole, middle + hole));
    }
    sheet.mesh.disc(sheet.at(plate.shaft), sheet.pixels(plate.thick * 2.45), sheet.theme().solid);
}

void draw_drops(const Sheet& sheet, Spot from, double to, double seconds)
{
    constexpr int drops = 3;
    const double fall = from.y - to;
    for (int i = 0; i < drops; ++i) {
        const double share = std::fmod(seconds * 1.4 + static_cast<double>(i) / drops, 1.0);
        const double y = from.y - fall * share * share;
        const Point at = sheet.at({from.x, y});
        const float radius = std::max(sheet.look.px(2.0F), sheet.pixels(0.65));
        sheet.mesh.fill({at + Point{0.0F, -2.2F * radius}, at + Point{radius * 0.8F, 0.0F},
                         at + Point{-radius * 0.8F, 0.0F}},
                        sheet.theme().fuel_mark);
        sheet.mesh.disc(at, radius, sheet.theme().fuel_mark);
    }
}

std::string bar_words(double metres)
{
    Readout readout = readout_of("mm");
    readout.decimals = chosen_units() == UnitSet::si ? 0 : 2;
    return readout.text(metres);
}

double choke_shut(const MachineView& machine)
{
    const double least = machine.parameter("intake", "choke_least");
    const double most = machine.parameter("intake", "choke_most");
    return std::clamp(machine.control("choke"), std::min(least, most), std::max(least, most));
}

void draw_plugs(const Sheet& sheet, const Outline& line, double bore, double liquid, double drift)
{
    const double share = std::clamp(liquid, 0.0, 1.0);
    const Outline whole = strip(line, bore / 2.0);
    if (share < 0.02) {
        sheet.fill(whole, Content::air);
        return;
    }
    sheet.fill(whole, Content::fuel);
    const double gas = 1.0 - share;
    if (gas < 0.005) {
        return;
    }
    const double size = std::sqrt(gas);
    double total = 0.0;
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        total += distance(line[i], line[i + 1]);
    }
    const int plugs = std::clamp(static_cast<int>(total / (3.5 * bore)), 2, 14);
    for (int i = 0; i < plugs; ++i) {
        const double raw = std::fmod((i + 0.5) / plugs + drift / total, 1.0);
        const double middle = raw < 0.0 ? raw + 1.0 : raw;
        const double from = std::max(0.0, middle - size / 2.0 / plugs);
        const Outline piece = stretch(line, from, std::min(1.0, middle + size / 2.0 / plugs));
        if (piece.size() > 1) {
            const Outline plug = strip(piece, size * bore / 2.0);
            sheet.fill(plug, Content::vapour);
            sheet.mesh.stroke(
                sheet.polygon(plug),
                {.colour = sheet.theme().fuel_mark, .width = sheet.look.thin(), .closed = true});
        }
    }
}

} // namespace scenes
