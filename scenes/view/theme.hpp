#pragma once

#include "scenes/present/contrast.hpp"

#include <array>
#include <cmath>
#include <string_view>
#include <vector>

// Colours, line weights and text sizes of the whole program. No SFML here: tests check the contrast
// of every pair of colours that meet on screen, and need no display for it.

namespace scenes {

/// Every colour the program draws with. There is one accent: the violet of a copying pencil on
/// paper, a lilac chalk on the board. Red means warning and nothing else.
struct Theme {
    std::string_view id;

    Rgba ground;   ///< what the drawing lies on
    Rgba sheet;    ///< what panels, charts and dialogs lie on
    Rgba recess;   ///< slots, rails and table heads on a sheet
    Rgba ink;      ///< outlines and text
    Rgba ink_soft; ///< second text, scale marks, leader lines
    Rgba ink_grid; ///< grid lines; carries no meaning of its own
    Rgba accent;
    Rgba accent_wash; ///< ground of what is selected or pointed at
    Rgba on_accent;   ///< text on the accent
    Rgba warning;
    Rgba scrim; ///< over everything that a dialog blocks

    Rgba fuel; ///< the four contents: a ground and, but for air, the marks of its texture
    Rgba fuel_mark;
    Rgba vapour;
    Rgba vapour_mark;
    Rgba air;
    Rgba water;
    Rgba water_mark;

    Rgba section; ///< ground of cut material
    Rgba hatch;   ///< its section lines
    Rgba solid;   ///< thin cut sheet drawn solid (gaskets)
    Rgba glass;   ///< ground of cut glass

    std::array<Rgba, 3> traces; ///< of a chart, in order; told apart by their dashes as well
    Rgba twin;                  ///< the healthy twin's lines
};

/// Drawing paper: warm white, blue-black ink.
inline constexpr Theme paper_theme{
    .id = "paper",
    .ground = {0xF1, 0xEE, 0xE4},
    .sheet = {0xFB, 0xFA, 0xF5},
    .recess = {0xE6, 0xE3, 0xD8},
    .ink = {0x1A, 0x25, 0x33},
    .ink_soft = {0x4C, 0x58, 0x66},
    .ink_grid = {0xD3, 0xD1, 0xC8},
    .accent = {0x5A, 0x36, 0x9E},
    .accent_wash = {0xE4, 0xDC, 0xF2},
    .on_accent = {0xFF, 0xFF, 0xFF},
    .warning = {0xA8, 0x1E, 0x1E},
    .scrim = {0x1A, 0x25, 0x33, 0x8C},
    .fuel = {0xF2, 0xC8, 0x72},
    .fuel_mark = {0x82, 0x4F, 0x05},
    .vapour = {0xFA, 0xEE, 0xD6},
    .vapour_mark = {0x9A, 0x63, 0x14},
    .air = {0xFC, 0xFC, 0xFA},
    .water = {0xB4, 0xDA, 0xE6},
    .water_mark = {0x0E, 0x55, 0x74},
    .section = {0xDF, 0xE1, 0xDE},
    .hatch = {0x4F, 0x5B, 0x69},
    .solid = {0x2C, 0x37, 0x46},
    .glass = {0xE2, 0xEE, 0xEE},
    .traces = {{{0x5A, 0x36, 0x9E}, {0x0B, 0x66, 0x5B}, {0x8E, 0x4A, 0x06}}},
    .twin = {0x78, 0x80, 0x88},
};

/// Blackboard: green-black slate, chalk.
inline constexpr Theme board_theme{
    .id = "board",
    .ground = {0x1B, 0x26, 0x24},
    .sheet = {0x24, 0x31, 0x2E},
    .recess = {0x33, 0x42, 0x3E},
    .ink = {0xF2, 0xF0, 0xE6},
    .ink_soft = {0xBA, 0xC6, 0xBF},
    .ink_grid = {0x3A, 0x4A, 0x45},
    .accent = {0xCB, 0xB6, 0xFA},
    .accent_wash = {0x42, 0x3D, 0x5C},
    .on_accent = {0x22, 0x17, 0x3E},
    .warning = {0xFF, 0xA4, 0x94},
    .scrim = {0x08, 0x0C, 0x0B, 0xA6},
    .fuel = {0x84, 0x5A, 0x17},
    .fuel_mark = {0xFF, 0xDC, 0x96},
    .vapour = {0x39, 0x35, 0x26},
    .vapour_mark = {0xE6, 0xBC, 0x6C},
    .air = {0x12, 0x1A, 0x18},
    .water = {0x23, 0x58, 0x6C},
    .water_mark = {0xB4, 0xE3, 0xF4},
    .section = {0x3A, 0x48, 0x46},
    .hatch = {0xB2, 0xBF, 0xBA},
    .solid = {0xDD, 0xDF, 0xD6},
    .glass = {0x2C, 0x44, 0x44},
    .traces = {{{0xCB, 0xB6, 0xFA}, {0x7F, 0xDC, 0xC4}, {0xF3, 0xC0, 0x7A}}},
    .twin = {0x93, 0xA0, 0x9A},
};

/// A theme at a size: what every drawing function is given.
///
/// unit: scale 1 to 2, in the projector view more; lengths come out in pixels
struct Look {
    Theme theme = paper_theme;
    float scale = 1.0F;
    float weight = 1.0F; ///< of lines: more for a projector

    [[nodiscard]] float px(float at_scale_one) const { return at_scale_one * scale; }
    /// Whole pixels, for edges and text.
    [[nodiscard]] float whole(float at_scale_one) const { return std::round(px(at_scale_one)); }

    [[nodiscard]] float thin() const { return px(1.0F) * weight; }
    [[nodiscard]] float medium() const { return px(1.8F) * weight; }
    [[nodiscard]] float thick() const { return px(3.0F) * weight; }

    [[nodiscard]] float small() const { return whole(14.0F); }
    [[nodiscard]] float body() const { return whole(16.0F); }
    [[nodiscard]] float heading() const { return whole(18.0F); }
    [[nodiscard]] float title() const { return whole(24.0F); }
};

/// Two colours that meet on screen and the contrast they owe the reader.
struct ContrastClaim {
    std::string_view what;
    Rgba front;
    Rgba ground;
    double at_least = 4.5;
};

/// All pairs of text and ground, and of meaningful line and ground, that occur.
///
/// source: WCAG 2.2, success criteria 1.4.3 (text, 4.5) and 1.4.11 (graphics, 3.0)
inline std::vector<ContrastClaim> contrast_claims(const Theme& theme)
{
    constexpr double text = 4.5;
    constexpr double line = 3.0;
    std::vector<ContrastClaim> claims{
        {"text on the ground", theme.ink, theme.ground, text},
        {"text on a sheet", theme.ink, theme.sheet, text},
        {"text in a recess", theme.ink, theme.recess, text},
        {"text on the wash", theme.ink, theme.accent_wash, text},
        {"second text on the ground", theme.ink_soft, theme.ground, text},
        {"second text on a sheet", theme.ink_soft, theme.sheet, text},
        {"second text in a recess", theme.ink_soft, theme.recess, text},
        {"text on the accent", theme.on_accent, theme.accent, text},
        {"accent text on the ground", theme.accent, theme.ground, text},
        {"accent text on a sheet", theme.accent, theme.sheet, text},
        {"accent text on the wash", theme.accent, theme.accent_wash, text},
        {"warning text on the ground", theme.warning, theme.ground, text},
        {"warning text on a sheet", theme.warning, theme.sheet, text},
        {"text on a tooltip", theme.sheet, theme.ink, text},
        {"text on fuel", theme.ink, theme.fuel, text},
        {"fuel marks on fuel", theme.fuel_mark, theme.fuel, line},
        {"fuel's surface against air", theme.fuel_mark, theme.air, line},
        {"fuel's surface against vapour", theme.fuel_mark, theme.vapour, line},
        {"vapour marks on vapour", theme.vapour_mark, theme.vapour, line},
        {"water marks on water", theme.water_mark, theme.water, line},
        {"water's surface against fuel", theme.water_mark, theme.fuel, line},
        {"section lines on material", theme.hatch, theme.section, line},
        {"outline against material", theme.ink, theme.section, line},
        {"outline against air", theme.ink, theme.air, line},
        {"outline against glass", theme.ink, theme.glass, line},
        {"solid section on the ground", theme.solid, theme.ground, line},
        {"solid section on material", theme.solid, theme.section, line},
        {"twin's line on a sheet", theme.twin, theme.sheet, line},
        {"twin's line on the ground", theme.twin, theme.ground, line},
        {"accent in a recess", theme.accent, theme.recess, line},
        {"second text on the wash", theme.ink_soft, theme.accent_wash, text},
        {"warning text in a recess", theme.warning, theme.recess, text},
        {"warning text on the wash", theme.warning, theme.accent_wash, text},
        {"outline against water", theme.ink, theme.water, line},
        {"outline against vapour", theme.ink, theme.vapour, line},
        {"solid section in fuel", theme.solid, theme.fuel, line},
        {"solid section in air", theme.solid, theme.air, line},
        {"solid section in vapour", theme.solid, theme.vapour, line},
        {"leader on material", theme.ink_soft, theme.section, line},
        {"leader on fuel", theme.ink_soft, theme.fuel, line},
        {"leader on air", theme.ink_soft, theme.air, line},
        {"leader on water", theme.ink_soft, theme.water, line},
        {"accent on material", theme.accent, theme.section, line},
        {"accent on fuel", theme.accent, theme.fuel, line},
        {"accent on air", theme.accent, theme.air, line},
        {"water's surface against air", theme.water_mark, theme.air, line},
    };
    for (const Rgba trace : theme.traces) {
        claims.push_back({"trace on a sheet", trace, theme.sheet, line});
    }
    return claims;
}

} // namespace scenes
