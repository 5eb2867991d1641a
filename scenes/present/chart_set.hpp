#pragma once

#include "scenes/present/bench_run.hpp"
#include "scenes/present/readout.hpp"

#include <string>
#include <vector>

namespace scenes {

/// A reading as a line of a chart.
struct ChartLine {
    std::size_t reading = 0;
    std::string title;
    Readout readout;
    std::size_t axis = 0; ///< 0 for the left one, 1 for the right one
};

/// What one chart shows: up to three readings in up to two units, each unit with an axis.
struct ChartChoice {
    static constexpr std::size_t most_lines = 3;
    static constexpr std::size_t most_units = 2;

    std::vector<ChartLine> lines;

    [[nodiscard]] bool has(std::size_t reading) const;
    /// The readout of an axis; null when the chart has no such axis.
    [[nodiscard]] const Readout* axis(std::size_t number) const;
};

/// What the charts of a machine show.
class ChartSet {
public:
    static constexpr std::size_t most_charts = 6;

    /// The charts that say most about a machine of its kind.
    explicit ChartSet(const sim::Simulator& machine);

    [[nodiscard]] const std::vector<ChartChoice>& charts() const { return charts_; }
    [[nodiscard]] bool can_add() const { return charts_.size() < most_charts; }
    /// Adds a chart of a reading.
    void add_chart(std::size_t reading);
    /// Removes a chart; the last one stays.
    void remove_chart(std::size_t chart);
    /// Shows a reading in a chart, or no longer; the last one stays. Where there is no room for
    /// its unit or for another line, the oldest ones make room.
    void toggle(std::size_t chart, std::size_t reading);
    /// Says everything anew after a change of language or units.
    void name_again();
    /// Makes sure that some chart shows a reading, and gives its number.
    std::size_t show(std::size_t reading);

private:
    void put(ChartChoice& chart, std::size_t reading) const;

    std::vector<sim::Network::Reading> readings_;
    std::vector<ChartChoice> charts_;
};

/// A span of a chart as CSV: time, and each line of the machine and of its twin in shown units.
///
/// unit:    seconds
std::string chart_csv(const ChartChoice& chart, const BenchRun& run, double from, double to);

} // namespace scenes
