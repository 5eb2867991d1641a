#include "scenes/present/chart_set.hpp"

#include "scenes/command_line/csv.hpp"
#include "scenes/present/time_words.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace scenes {
namespace {

using First = std::array<std::array<std::string_view, 3>, 3>;
/// What the charts show at first: the first set of which a machine has the last reading.
constexpr std::array first_sets{
    First{{{"engine.speed"}, {"bowl.level", "needle.lift"}, {"main_jet.flow", "idle_jet.flow"}}},
    First{{{"engine.speed"},
           {"suction_hose.liquid", "gallery.liquid", "metering.liquid"},
           {"high_circuit.flow", "low_circuit.flow"}}}};

std::size_t find_reading(const std::vector<sim::Network::Reading>& readings, std::string_view name)
{
    return static_cast<std::size_t>(
        std::ranges::find(readings, name, &sim::Network::Reading::name) - readings.begin());
}

/// Gives lines of a second unit the second axis, in the order of the lines.
void share_axes(std::vector<ChartLine>& lines)
{
    for (ChartLine& line : lines) {
        line.axis = line.readout.unit == lines.front().readout.unit ? 0 : 1;
    }
}

std::size_t unit_count(const std::vector<ChartLine>& lines)
{
    std::vector<std::string> units;
    for (const ChartLine& line : lines) {
        if (std::ranges::find(units, line.readout.unit) == units.end()) {
            units.push_back(line.readout.unit);
        }
    }
    return units.size();
}

std::string column_title(const ChartLine& line, bool is_twin)
{
    std::string title = is_twin ? filled(words::of_twin, {line.title}) : line.title;
    if (!line.readout.sign.empty()) {
        title += " (" + line.readout.sign + ")";
    }
    return title;
}

std::string column_value(const ChartLine& line, float si)
{
    return std::isfinite(si) ? csv_number(line.readout.shown(static_cast<double>(si))) : "";
}

} // namespace

bool ChartChoice::has(std::size_t reading) const
{
    return std::ranges::find(lines, reading, &ChartLine::reading) != lines.end();
}

const Readout* ChartChoice::axis(std::size_t number) const
{
    const auto found = std::ranges::find(lines, number, &ChartLine::axis);
    return found == lines.end() ? nullptr : &found->readout;
}

ChartSet::ChartSet(const sim::Simulator& machine) : readings_(machine.readings())
{
    const auto* const found = std::ranges::find_if(first_sets, [&](const First& set) {
        return find_reading(readings_, set.back()[1]) < readings_.size();
    });
    const First& first = found == first_sets.end() ? first_sets.front() : *found;
    for (const auto& names : first) {
        ChartChoice chart;
        for (const std::string_view name : names) {
            const std::size_t reading = find_reading(readings_, name);
            if (reading < readings_.size()) {
                put(chart, reading);
            }
        }
        if (!chart.lines.empty()) {
            charts_.push_back(std::move(chart));
        }
    }
    if (charts_.empty()) {
        add_chart(0);
    }
}

void ChartSet::put(ChartChoice& chart, std::size_t reading) const
{
    const sim::Network::Reading& info = readings_[reading];
    chart.lines.push_back({reading, reading_title(info.name), readout_of(info)});
    while (chart.lines.size() > ChartChoice::most_lines ||
           unit_count(chart.lines) > ChartChoice::most_units) {
        chart.lines.erase(chart.lines.begin());
    }
    share_axes(chart.lines);
}

void ChartSet::add_chart(std::size_t reading)
{
    if (can_add()) {
        put(charts_.emplace_back(), reading);
    }
}

void ChartSet::remove_chart(std::size_t chart)
{
    if (charts_.size() > 1 && chart < charts_.size()) {
        charts_.erase(charts_.begin() + static_cast<std::ptrdiff_t>(chart));
    }
}

void ChartSet::toggle(std::size_t chart, std::size_t reading)
{
    ChartChoice& target = charts_[chart];
    if (!target.has(reading)) {
        put(target, reading);
    } else if (target.lines.size() > 1) {
        std::erase_if(target.lines,
                      [reading](const ChartLine& line) { return line.reading == reading; });
        share_axes(target.lines);
    }
}

void ChartSet::name_again()
{
    for (ChartChoice& chart : charts_) {
        for (ChartLine& line : chart.lines) {
            const sim::Network::Reading& info = readings_[line.reading];
            line.title = reading_title(info.name);
            line.readout = readout_of(info);
        }
        share_axes(chart.lines);
    }
}

std::size_t ChartSet::show(std::size_t reading)
{
    const auto found = std::ranges::find_if(
        charts_, [reading](const ChartChoice& chart) { return chart.has(reading); });
    if (found != charts_.end()) {
        return static_cast<std::size_t>(found - charts_.begin());
    }
    // The last chart is the one that is given up.
    ChartChoice& last = charts_.back();
    last.lines.clear();
    put(last, reading);
    return charts_.size() - 1;
}

std::string chart_csv(const ChartChoice& chart, const BenchRun& run, double from, double to)
{
    const SampleStore& store = run.history().store_for(from, to);
    const SampleStore& twin = run.twin_history().store_for(from, to);
    std::vector<std::string> cells{std::string(words::seconds_column)};
    for (const ChartLine& line : chart.lines) {
        cells.push_back(column_title(line, false));
        cells.push_back(column_title(line, true));
    }
    std::string text = csv_line(cells);
    const double interval = store.interval();
    const auto first = std::max(
        store.first(), static_cast<std::size_t>(std::ceil(std::max(0.0, from) / interval)));
    const auto last = static_cast<std::size_t>(std::max(0.0, to) / interval) + 1;
    for (std::size_t i = first; i < std::min(store.end(), last); ++i) {
        cells.assign({csv_number(interval * static_cast<double>(i))});
        for (const ChartLine& line : chart.lines) {
            cells.push_back(column_value(line, store.at(line.reading, i)));
            cells.push_back(column_value(line, twin.at(line.reading, i)));
        }
        text += csv_line(cells);
    }
    return text;
}

} // namespace scenes
