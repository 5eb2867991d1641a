#pragma once

#include "scenes/view/mesh.hpp"
#include "scenes/view/text.hpp"
#include "scenes/view/theme.hpp"

#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace scenes {

/// A point of the fuel's path. A restriction has two heads: the drop between them is its cliff.
///
/// unit: x in pixels, so that a station can stand above its part in the drawing; heads as shown
struct GradeStation {
    std::string_view name;
    float x = 0.0F;
    double before = 0.0;
    double after = 0.0;
};

/// A height the line is judged by: the nozzle's lip, the bowl's level.
struct GradeLevel {
    std::string_view name;
    double head = 0.0;
    float from = 0.0F; ///< pixels
    float to = 0.0F;
};

struct GradeView {
    sf::FloatRect box;
    std::span<const GradeStation> stations; ///< from the tank on
    std::span<const GradeStation> twin;     ///< the healthy machine's; may be empty
    std::span<const GradeLevel> levels;
    double low = 0.0; ///< head at the lower edge of the box
    double high = 100.0;
    std::string_view title;
    std::string_view unit;
    std::string_view loss_unit; ///< the unit as a cliff names it where there is room
    double least_named = 1.0;   ///< smaller drops get no label
    int decimals = 0;
};

/// Draws the total head along the fuel's path (the hydraulic grade line) with each cliff named and
/// measured: "filter: 38 mm of fuel".
///
/// Keeps its memory between frames.
class GradeLine {
public:
    void draw(Mesh& mesh, Text& text, const Look& look, const GradeView& view);

private:
    struct Sheet {
        Mesh& mesh;
        Text& text;
        const Look& look;
        const GradeView& view;
    };

    void trace(const Sheet& sheet, std::span<const GradeStation> stations);
    void draw_ground(const Sheet& sheet);
    void draw_twin(const Sheet& sheet);
    void draw_line(const Sheet& sheet);
    void draw_levels(const Sheet& sheet);
    void draw_cliff(const Sheet& sheet, const GradeStation& station);
    void name_stations(const Sheet& sheet);
    /// Where a label stands clear of the others, near a point; nothing when there is no room.
    [[nodiscard]] std::optional<Point> find_room(const Sheet& sheet, const std::string& label,
                                                 Point at, const TextStyle& style) const;
    sf::FloatRect place_label(const Sheet& sheet, const std::string& label, Point at,
                              const TextStyle& style);

    std::vector<Point> line_;
    std::vector<Point> ground_;
    std::vector<const GradeStation*> cliffs_;
    std::vector<sf::FloatRect> labels_;
};

} // namespace scenes
