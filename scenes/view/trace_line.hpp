#pragma once

#include "scenes/view/mesh.hpp"
#include "scenes/view/series.hpp"
#include "scenes/view/theme.hpp"

#include <algorithm>
#include <span>
#include <vector>

namespace scenes {

/// How the lines of a chart are told apart besides their colour.
enum class LineStyle { full, broken, dash_dot };

/// The style of the nth trace.
constexpr LineStyle line_style(std::size_t trace)
{
    return trace == 0 ? LineStyle::full : trace == 1 ? LineStyle::broken : LineStyle::dash_dot;
}

void stroke_in_style(Mesh& mesh, std::span<const Point> points, const Pen& pen, LineStyle style,
                     const Look& look);

/// The range of a chart's vertical axis, in shown units.
struct ChartRange {
    double low = 0.0;
    double high = 1.0;
};

/// Where times and values lie on the screen. Values off the range lie on its edge.
struct PlotScale {
    sf::FloatRect box;
    double from = 0.0; ///< seconds
    double to = 1.0;
    ChartRange range;

    [[nodiscard]] float x_of(double time) const
    {
        return box.left + box.width * static_cast<float>((time - from) / (to - from));
    }
    [[nodiscard]] float y_of(double value) const
    {
        const double share = std::clamp((value - range.low) / (range.high - range.low), 0.0, 1.0);
        return box.top + box.height * static_cast<float>(1.0 - share);
    }
    [[nodiscard]] double time_at(float x) const
    {
        const float share = (x - box.left) / std::max(1.0F, box.width);
        return from + (to - from) * static_cast<double>(share);
    }
};

/// A series and how it is drawn; the shown value is `sample * scale + offset`.
struct TraceInk {
    double scale = 1.0;
    double offset = 0.0;
    Pen pen;
    LineStyle style = LineStyle::full;
};

/// Draws series as lines. Spans with more samples than pixels are drawn from the extremes of
/// buckets, as a ribbon that shows the noise within.
class TraceLine {
public:
    void draw(Mesh& mesh, const Look& look, const PlotScale& plot, const Series& series,
              const TraceInk& ink);

private:
    struct Sheet {
        Mesh& mesh;
        const Look& look;
        const PlotScale& plot;
        const Series& series;
        const TraceInk& ink;

        [[nodiscard]] float y_of(float sample) const
        {
            return plot.y_of(static_cast<double>(sample) * ink.scale + ink.offset);
        }
    };

    void draw_samples(const Sheet& sheet);
    void finish_samples(const Sheet& sheet);
    void draw_buckets(const Sheet& sheet, std::size_t stride);
    void finish_buckets(const Sheet& sheet);

    std::vector<Point> line_;
    std::vector<Slice> slices_;
    std::vector<float> secants_;
};

} // namespace scenes
