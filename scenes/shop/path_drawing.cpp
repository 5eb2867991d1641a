#include "scenes/shop/path_drawing.hpp"

#include "scenes/shop/plain_number.hpp"
#include "scenes/view/number.hpp"

#include <algorithm>
#include <sstream>

namespace shop {
namespace {

// The drawing's measures; a browser scales it to the page's width.
constexpr double width = 900.0;
constexpr double height = 262.0;
constexpr double left = 92.0;
constexpr double right = 884.0;
constexpr double top = 22.0;
constexpr double floor_line = 150.0;
constexpr double own_lane = 190.0;
constexpr double good_lane = 226.0;
constexpr double lane_height = 26.0;
constexpr double digit_width = 9.0;

/// Turns minutes and bits into places of the drawing.
struct Scale {
    double minutes = 1.0; ///< at the right end
    double bits = 1.0;    ///< at the top

    [[nodiscard]] double x(double at) const { return left + (right - left) * at / minutes; }
    [[nodiscard]] double y(double at) const { return floor_line - (floor_line - top) * at / bits; }
};

double at_least_one(double value)
{
    return std::max(value, 1.0);
}

std::string place(double value)
{
    return plain_number(value, 1);
}

void put_text(std::ostringstream& svg, double x, double y, const char* anchor,
              const std::string& text)
{
    svg << "<text x=\"" << place(x) << "\" y=\"" << place(y) << "\" text-anchor=\"" << anchor
        << "\">" << text << "</text>\n";
}

void put_axes(std::ostringstream& svg, const Scale& scale)
{
    const scenes::Ticks across = scenes::nice_ticks(0.0, scale.minutes, 9);
    for (const double minutes : across.values) {
        svg << "<path class=grid d=\"M" << place(scale.x(minutes)) << ' ' << place(top) << 'V'
            << place(good_lane + lane_height) << "\"/>\n";
        put_text(svg, scale.x(minutes), floor_line + 18.0, "middle", plain_number(minutes));
    }
    const scenes::Ticks up = scenes::nice_ticks(0.0, scale.bits, 4);
    for (const double bits : up.values) {
        put_text(svg, left - 8.0, scale.y(bits) + 4.0, "end", plain_number(bits, up.decimals));
    }
    svg << "<path class=axis d=\"M" << place(left) << ' ' << place(top) << 'V' << place(floor_line)
        << 'H' << place(right) << "\"/>\n";
    put_text(svg, left - 8.0, top - 8.0, "end", "doubt, bits");
    put_text(svg, left - 8.0, floor_line + 18.0, "end", "minutes");
    put_text(svg, left - 8.0, own_lane + 18.0, "end", "this work");
    put_text(svg, left - 8.0, good_lane + 18.0, "end", "good work");
}

/// Doubt stays as it is while something is done, and drops when it is read.
void put_curve(std::ostringstream& svg, const Scale& scale, const Course& course, const char* kind)
{
    double minutes = 0.0;
    svg << "<path class=" << kind << " d=\"M" << place(scale.x(0.0)) << ' '
        << place(scale.y(course.doubt.front()));
    for (std::size_t i = 0; i < course.lines.size(); ++i) {
        minutes += course.lines[i].minutes;
        svg << 'H' << place(scale.x(minutes)) << 'V' << place(scale.y(course.doubt[i + 1]));
    }
    svg << "\"/>\n";
}

void put_lane(std::ostringstream& svg, const Scale& scale, const Course& course, double lane)
{
    double minutes = 0.0;
    for (std::size_t i = 0; i < course.lines.size(); ++i) {
        const JobLine& line = course.lines[i];
        if (line.minutes <= 0.0) {
            continue;
        }
        const bool is_repair = std::holds_alternative<DoRepair>(line.action);
        const double begin = scale.x(minutes);
        const double wide = scale.x(minutes + line.minutes) - begin;
        minutes += line.minutes;
        const std::string number = std::to_string(i + 1);
        svg << "<g class=" << (is_repair ? "repair" : "check") << "><rect x=\"" << place(begin)
            << "\" y=\"" << place(lane) << "\" width=\"" << place(wide) << "\" height=\""
            << place(lane_height) << "\"/>";
        if (wide >= digit_width * static_cast<double>(number.size()) + 2.0) {
            put_text(svg, begin + 0.5 * wide, lane + 18.0, "middle", number);
        }
        svg << "</g>\n";
    }
}

} // namespace

Course course_of(const Order& order, const Table& table, std::vector<JobLine> lines)
{
    Policy policy(order, table);
    Course course{std::move(lines), {policy.belief().entropy()}};
    for (const JobLine& line : course.lines) {
        policy.note(line);
        course.doubt.push_back(policy.belief().entropy());
    }
    return course;
}

std::string course_svg(const Course& own, const Course& good)
{
    const auto longest =
        std::max(sum_of(own.lines, &JobLine::minutes), sum_of(good.lines, &JobLine::minutes));
    const auto highest = std::max(std::ranges::max(own.doubt), std::ranges::max(good.doubt));
    const Scale scale{at_least_one(longest), at_least_one(highest)};
    std::ostringstream svg;
    svg << "<svg viewBox=\"0 0 " << place(width) << ' ' << place(height)
        << "\" role=\"img\" aria-label=\"Doubt that is left and what was done, over minutes\">\n";
    put_axes(svg, scale);
    put_curve(svg, scale, good, "good");
    put_curve(svg, scale, own, "own");
    put_lane(svg, scale, own, own_lane);
    put_lane(svg, scale, good, good_lane);
    svg << "</svg>\n";
    return svg.str();
}

} // namespace shop
