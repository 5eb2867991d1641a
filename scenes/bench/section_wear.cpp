#include "scenes/bench/section_wear.hpp"

#include <algorithm>
#include <cmath>

namespace scenes {
namespace {

/// A number from 0 to 1 that is always the same for the same place.
double scatter(int i, int k)
{
    const double raw = std::sin(i * 12.9898 + k * 78.233) * 43758.5453;
    return raw - std::floor(raw);
}

} // namespace

double shut_share(const MachineView& machine, std::string_view part, std::string_view area)
{
    const double healthy = machine.healthy(part, area);
    return healthy > 0.0 ? std::clamp(1.0 - machine.parameter(part, area) / healthy, 0.0, 1.0)
                         : 0.0;
}

double growth(const MachineView& machine, std::string_view part, std::string_view name)
{
    const double healthy = machine.healthy(part, name);
    return healthy > 0.0 ? machine.parameter(part, name) / healthy : 1.0;
}

void draw_blockage(const Sheet& sheet, const Outline& line, double bore, double share)
{
    if (share < 0.03 || line.size() < 2) {
        return;
    }
    // A lump grows from one wall: as wide as shuts its share of the bore, uneven at its ends.
    const Outline piece = stretch(line, 0.2, 0.8);
    const Outline both = strip(piece, bore / 2.0);
    const std::size_t half = both.size() / 2;
    Outline lump(both.begin(), both.begin() + static_cast<std::ptrdiff_t>(half));
    for (std::size_t i = 0; i < half; ++i) {
        const Spot near = both[half - 1 - i];
        const Spot far = both[half + i];
        lump.push_back(near + (far - near) * std::min(1.0, share));
    }
    sheet.mesh.fill(sheet.polygon(lump), sheet.theme().solid);
    const float grain = std::max(sheet.look.px(1.0F), sheet.pixels(bore * 0.09));
    const double length = distance(piece.front(), piece.back());
    const int grains = std::max(3, static_cast<int>(length / bore * 4.0));
    for (int i = 0; i < grains; ++i) {
        const Spot along = piece.front() + (piece.back() - piece.front()) * ((i + 0.5) / grains);
        const Spot side{(scatter(i, 1) - 0.5) * bore * 0.7 * share,
                        (scatter(i, 2) - 0.5) * bore * 0.7 * share};
        sheet.mesh.disc(sheet.at(along + side), grain, sheet.theme().hatch);
    }
}

void draw_blockages(const Sheet& sheet, const MachineView& machine, std::span<const Hole> holes)
{
    for (const Hole& hole : holes) {
        draw_blockage(sheet, hole.line, hole.bore, shut_share(machine, hole.part, hole.area));
    }
}

void draw_crack(const Sheet& sheet, Spot from, Spot to, double area)
{
    if (area <= 0.0) {
        return;
    }
    const Spot way = to - from;
    const double size = std::max(distance(from, to), 1e-6);
    const Spot side{-way.y / size, way.x / size};
    Outline line;
    constexpr int kinks = 6;
    for (int i = 0; i <= kinks; ++i) {
        const double lean = (i % 2 == 0 ? 0.5 : -0.5) * 0.16 * size;
        line.push_back(from + way * (static_cast<double>(i) / kinks) + side * lean);
    }
    const double wide = std::clamp(0.5 * bore_of(area), 0.12, 0.9);
    const float gap = std::max(sheet.look.px(1.2F), sheet.pixels(wide));
    sheet.mesh.stroke(sheet.polygon(line),
                      {.colour = sheet.theme().ink, .width = gap + sheet.look.px(2.0F)});
    sheet.mesh.stroke(sheet.polygon(line), {.colour = sheet.theme().ground, .width = gap});
}

void draw_dirt(const Sheet& sheet, Spot low, Spot high, double share)
{
    if (share < 0.03) {
        return;
    }
    const Spot size = high - low;
    const double grain = std::max(0.12, 0.07 * std::min(size.x, size.y));
    const int specks = static_cast<int>(8.0 + 60.0 * share);
    for (int i = 0; i < specks; ++i) {
        const Spot spot = low + Spot{size.x * scatter(i, 3), size.y * scatter(i, 4)};
        sheet.mesh.disc(sheet.at(spot),
                        std::max(sheet.look.px(0.8F),
                                 sheet.pixels(grain * (0.5 + scatter(i, 5)) * (0.6 + share))),
                        sheet.theme().solid);
    }
}

void draw_film(const Sheet& sheet, const Outline& line, double bore, double thickness)
{
    if (thickness <= 0.0) {
        return;
    }
    const double film = std::clamp(thickness * 4.0, 0.12 * bore, 0.3 * bore);
    const Outline both = strip(line, (bore - film) / 2.0);
    const auto half = static_cast<std::ptrdiff_t>(both.size() / 2);
    for (const Outline& wall :
         {Outline(both.begin(), both.begin() + half), Outline(both.begin() + half, both.end())}) {
        sheet.mesh.stroke(sheet.polygon(wall),
                          {.colour = sheet.theme().fuel_mark,
                           .width = std::max(sheet.look.px(1.6F), sheet.pixels(film))});
    }
}

void draw_tide_mark(const Sheet& sheet, Spot low, Spot high, const MachineView& machine)
{
    // Fresh fuel has 48 kPa or more at 37.8 degC (from memory, of the volatility classes).
    constexpr double stale = 40e3;
    if (machine.fuel().reid_pressure.si >= stale) {
        return;
    }
    const double in = 0.3;
    sheet.mesh.stroke({sheet.at({low.x + in, high.y}), sheet.at(low + Spot{in, in}),
                       sheet.at({high.x - in, low.y + in}), sheet.at({high.x - in, high.y})},
                      {.colour = sheet.theme().fuel_mark, .width = sheet.look.px(4.0F)});
    constexpr int runs = 7; // lumps of gum on the bottom
    for (int i = 0; i < runs; ++i) {
        const double x = low.x + (high.x - low.x) * (i + 0.3 + 0.5 * scatter(i, 7)) / runs;
        sheet.mesh.disc(sheet.at({x, low.y + in}),
                        sheet.look.px(2.0F + 2.5F * static_cast<float>(scatter(i, 8))),
                        sheet.theme().fuel_mark);
    }
}

bool is_filter_out(const MachineView& machine, std::string_view part, std::string_view measure)
{
    return growth(machine, part, measure) > 3.0;
}

void draw_stiffness(const Sheet& sheet, const Outline& line, double growth)
{
    if (growth < 1.5) {
        return;
    }
    // A sheet gone hard has thickened and cockled: cross marks, the more the harder.
    const double hard = std::min(1.0, std::log10(growth) / 2.0);
    const int lumps = 6 + static_cast<int>(18.0 * hard);
    for (int i = 0; i < lumps; ++i) {
        const double share = (i + 0.5) / lumps;
        const Outline piece = stretch(line, std::max(0.0, share - 0.012), share + 0.012);
        if (piece.size() < 2) {
            continue;
        }
        const Spot middle = piece[piece.size() / 2];
        const double reach = 0.28 + 0.3 * hard * (0.4 + 0.6 * scatter(i, 6));
        sheet.mesh.stroke(
            {sheet.at(middle - Spot{0.12, reach}), sheet.at(middle + Spot{0.12, reach})},
            {.colour = sheet.theme().solid,
             .width = std::max(sheet.look.px(1.6F), sheet.pixels(0.2))});
    }
}

void draw_pinhole(const Sheet& sheet, const Outline& line, double at, double area)
{
    if (area <= 0.0) {
        return;
    }
    const Outline piece = stretch(line, at - 0.02, at + 0.02);
    if (piece.size() < 2) {
        return;
    }
    const Spot spot = piece[piece.size() / 2];
    draw_crack(sheet, spot - Spot{0.0, 0.45}, spot + Spot{0.0, 0.45}, area);
}

} // namespace scenes
