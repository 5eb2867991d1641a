#pragma once

#include "scenes/view/mesh.hpp"
#include "scenes/view/series.hpp"
#include "scenes/view/text.hpp"
#include "scenes/view/theme.hpp"
#include "scenes/view/trace_line.hpp"

#include <array>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace scenes {

/// One line of a chart. The shown value is `sample * scale + offset`, so that another unit can be
/// shown without recording anew.
struct ChartTrace {
    std::string_view name;
    Series run;
    Series twin; ///< the healthy machine's; may be empty
    double scale = 1.0;
    double offset = 0.0;
    int decimals = 1;     ///< of the value at the cursor
    std::size_t axis = 0; ///< 0 for the left one, 1 for the right one
};

/// A vertical axis of a chart.
struct ChartAxis {
    std::string_view unit;
    std::optional<ChartRange> range = {}; ///< absent: follows what is visible
    double least_span = 1.0; ///< of a following range: keeps noise from filling the chart
};

/// What a chart shows, and where.
struct ChartView {
    sf::FloatRect box;
    std::string_view title;
    double from = 0.0; ///< seconds at the left edge
    double to = 60.0;
    std::optional<double> cursor;       ///< seconds; shared with the drawing
    std::span<const ChartAxis> axes;    ///< one, or a second one at the right
    std::span<const ChartTrace> traces; ///< at most three
    std::string_view time_unit;         ///< written on a time axis; empty for no axis
};

/// The small text of a chart's words and numbers.
inline TextStyle small_text(const Look& look, Rgba colour, Face face = Face::regular)
{
    return {.face = face, .size = look.small(), .colour = colour};
}

/// A strip chart: readings over time on drawing-office graph paper.
///
/// Remembers its vertical range, so that the axis does not twitch while values wander.
class StripChart {
public:
    void draw(Mesh& mesh, Text& text, const Look& look, const ChartView& view);

    /// The rectangle the lines of the last drawing lie in, and the time under one of its pixels.
    [[nodiscard]] const sf::FloatRect& plot() const { return plots_[0].box; }
    [[nodiscard]] double time_at(float pixel_x) const { return plots_[0].time_at(pixel_x); }

private:
    /// The mesh and text of the drawing in progress, to save every helper three parameters.
    struct Sheet {
        Mesh& mesh;
        Text& text;
        const Look& look;
        const ChartView& view;
    };

    void choose_range(const ChartView& view, std::size_t axis);
    void lay_out(const Sheet& sheet, float head);
    void draw_grid(const Sheet& sheet) const;
    void draw_right_axis(const Sheet& sheet) const;
    void draw_frame(const Sheet& sheet) const;
    void draw_time_axis(const Sheet& sheet) const;
    void draw_traces(const Sheet& sheet);
    /// Writes title and legend and returns the height they take.
    static float draw_head(const Sheet& sheet);
    static void draw_legend_entry(const Sheet& sheet, std::size_t index, float left, float right,
                                  float baseline);
    void draw_cursor(const Sheet& sheet) const;

    std::array<PlotScale, 2> plots_; ///< one for each axis
    std::array<bool, 2> has_range_{};
    TraceLine line_;
};

} // namespace scenes
