#include "scenes/bench/section_mix.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace scenes {
namespace {

constexpr double half_thick = 0.2; ///< of diaphragms and flaps, as drawn

/// Places of bubbles on a jittered grid; always the same ones.
template <class Draw>
void for_each_cell(const Mix& mix, double cell, Draw draw)
{
    const double width = mix.high.x - mix.low.x;
    const int columns = std::max(1, static_cast<int>(width / cell));
    const int rows = std::max(1, static_cast<int>((mix.high.y - mix.low.y) / cell));
    for (int row = 0; row < rows; ++row) {
        for (int column = 0; column < columns; ++column) {
            const double jitter = std::fmod((row * columns + column) * 0.618, 1.0) - 0.5;
            const double along =
                std::fmod((column + 0.5 + 0.3 * jitter) / columns + mix.drift / width, 1.0);
            const double up = (row + 0.5 + 0.2 * jitter) / rows;
            draw(Spot{mix.low.x + width * (along < 0.0 ? along + 1.0 : along),
                      mix.low.y + (mix.high.y - mix.low.y) * up});
        }
    }
}

} // namespace

void draw_mix(const Sheet& sheet, const Outline& space, const Mix& mix)
{
    const double liquid = std::clamp(mix.liquid, 0.0, 1.0);
    const bool is_wet = liquid >= 0.5;
    sheet.fill(space, is_wet ? Content::fuel : Content::air);
    const double spread = is_wet ? 1.0 - liquid : liquid;
    const double cell = std::clamp(mix.high.y - mix.low.y, 0.5, 2.0);
    const float radius = sheet.pixels(cell * std::sqrt(spread / std::numbers::pi));
    if (radius < 0.5F) {
        return;
    }
    const Theme& theme = sheet.theme();
    for_each_cell(mix, cell, [&](Spot spot) {
        const Point centre = sheet.at(spot);
        sheet.mesh.disc(centre, radius, is_wet ? theme.vapour : theme.fuel);
        sheet.mesh.ring(centre, radius, {.colour = theme.fuel_mark, .width = sheet.look.thin()});
    });
}

Outline sheet_line(double half, double plane, double rise)
{
    Outline line;
    constexpr int steps = 24;
    for (int i = 0; i <= steps; ++i) {
        const double x = 2.0 * i / steps - 1.0;
        line.push_back({half * x, plane + rise * (1.0 - x * x)});
    }
    return line;
}

void draw_sheet(const Sheet& sheet, const Outline& line, double wall)
{
    Outline whole{{-wall, line.front().y}};
    whole.insert(whole.end(), line.begin(), line.end());
    whole.push_back({wall, line.back().y});
    // As gaskets are: too thin for section lines.
    sheet.mesh.stroke(sheet.polygon(whole),
                      {.colour = sheet.theme().solid, .width = sheet.pixels(2.0 * half_thick)});
}

void draw_flap(const Sheet& sheet, const Flap& flap)
{
    const Outline bar = turned_about(
        box_outline(flap.hinge - Spot{0.3, half_thick}, flap.hinge + Spot{flap.length, half_thick}),
        flap.hinge, flap.most * std::clamp(flap.open, 0.0, 1.0));
    sheet.mesh.fill(sheet.polygon(bar), sheet.theme().solid);
}

double flap_share(double flow, double full)
{
    return std::sqrt(std::clamp(flow / full, 0.0, 1.0));
}

} // namespace scenes
