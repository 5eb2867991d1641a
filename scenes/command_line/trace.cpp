#include "scenes/command_line/trace.hpp"

#include "scenes/command_line/csv.hpp"
#include "sim/error.hpp"
#include "sim/file_write.hpp"
#include "sim/run_sheet.hpp"

#include <cmath>
#include <stdexcept>

namespace scenes {

namespace {

/// As many as a spreadsheet takes, and some gigabytes less than a disk does.
constexpr double most_rows = 1e6;

/// The unit in which a reading is shown, whatever its dimension.
const sim::Unit& shown_unit(const sim::Network::Reading& reading)
{
    if (const auto* unit = sim::find_unit(reading.unit)) {
        return *unit;
    }
    throw std::logic_error("reading " + reading.name + " has the unknown unit \"" + reading.unit +
                           "\"");
}

/// A column of the table: how a reading in SI is shown.
struct Column {
    std::string header;
    double factor = 1.0;
    double offset = 0.0;
};

std::vector<Column> columns_of(const sim::Simulator& simulator)
{
    std::vector<Column> columns;
    for (const sim::Network::Reading& reading : simulator.readings()) {
        const sim::Unit& unit = shown_unit(reading);
        columns.push_back({reading.name + (reading.unit.empty() ? "" : " [" + reading.unit + "]"),
                           unit.factor, unit.offset});
    }
    return columns;
}

std::string header_line(const std::vector<Column>& columns)
{
    std::vector<std::string> cells{"time [s]"};
    for (const Column& column : columns) {
        cells.push_back(column.header);
    }
    return csv_line(cells);
}

/// How many rows there are from time zero to the end, both included.
sim::Tick count_rows(double length, double every)
{
    // A length of whole intervals has its last row although their quotient is rounded.
    const double rows = std::floor(length / every * (1.0 + 1e-12)) + 1.0;
    if (rows > most_rows) {
        throw sim::RequestError("--for " + csv_number(length) + " s with --every " +
                                csv_number(every) + " s makes " + csv_number(rows) +
                                " rows; allowed: " + csv_number(most_rows) + " at most");
    }
    return static_cast<sim::Tick>(rows);
}

sim::RunSheet sheet_of(const TraceRequest& request, const sim::Rig& rig)
{
    return request.sheet ? sim::load_run_sheet(*request.sheet, rig) : rig.default_sheet;
}

} // namespace

void write_trace(std::shared_ptr<const sim::Rig> rig, const sim::RunSheet& sheet,
                 const TraceRequest& request, const Sink& sink)
{
    const sim::Tick rows = count_rows(request.length.value_or(rig->default_length), request.every);
    sim::Weather weather;
    weather.temperature = {request.ambient};
    sim::Simulator simulator(std::move(rig), weather);
    for (const sim::TimedCommand& timed : sheet.commands) {
        simulator.post(timed.command, timed.at);
    }
    for (const sim::SetFault& fault : request.faults) {
        simulator.post(fault, 0); // after the sheet's own, so that this one holds
    }
    if (request.may_leap) {
        simulator.post(sim::SetLeaps{true}, 0);
    }
    const std::vector<Column> columns = columns_of(simulator);
    std::vector<double> values(columns.size());
    std::vector<std::string> cells(columns.size() + 1);
    for (sim::Tick row = 0; row < rows; ++row) {
        simulator.advance(
            std::llround(static_cast<double>(row) * request.every / sim::tick_length));
        simulator.read(values);
        cells[0] = csv_number(simulator.seconds());
        for (std::size_t i = 0; i < columns.size(); ++i) {
            cells[i + 1] = csv_number((values[i] - columns[i].offset) / columns[i].factor);
        }
        if (row == 0) {
            sink(header_line(columns)); // not before the machine has come to life
        }
        sink(csv_line(cells));
    }
}

void trace(const TraceRequest& request, const Sink& standard)
{
    const auto rig = std::make_shared<const sim::Rig>(sim::load_rig(request.rig));
    const sim::RunSheet sheet = sheet_of(request, *rig);
    if (!request.file) {
        write_trace(rig, sheet, request, standard);
        return;
    }
    sim::FileWriter file(*request.file);
    write_trace(rig, sheet, request, [&](std::string_view text) { file.write(text); });
    file.commit();
}

} // namespace scenes
