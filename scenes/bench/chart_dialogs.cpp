#include "scenes/bench/chart_dialogs.hpp"

#include "scenes/present/run_files.hpp"
#include "scenes/present/time_words.hpp"
#include "scenes/present/wording.hpp"
#include "scenes/present/words.hpp"
#include "scenes/ui/controls.hpp"
#include "scenes/ui/dialog.hpp"
#include "scenes/ui/list.hpp"
#include "scenes/ui/panel.hpp"
#include "sim/error.hpp"
#include "sim/file_write.hpp"

#include <algorithm>
#include <array>
#include <ctime>

namespace scenes {
namespace {

/// The readings whose name has the words searched for, and which of them is selected.
std::vector<std::size_t> rows_of(const BenchDesk& desk, const ChartBoard::Choosing& choosing,
                                 std::size_t& row)
{
    const auto& readings = desk.model.run().machine().readings();
    std::vector<std::size_t> rows;
    row = readings.size();
    for (const std::size_t i : choosing.order) {
        const std::string words =
            reading_title(readings[i].name) + " " + readout_of(readings[i]).sign;
        if (words.find(choosing.search) != std::string::npos) {
            row = i == choosing.selected ? rows.size() : row;
            rows.push_back(i);
        }
    }
    return rows;
}

void open_export(BenchDesk& desk, ChartBoard::Choosing& choosing)
{
    choosing.is_open = false;
    choosing.is_exporting = true;
    choosing.trouble.clear();
    const std::string run = new_run_path(charts_folder(), desk.model.rig().id, std::time(nullptr));
    choosing.path = run.substr(0, run.rfind('.'));
}

void show_chart_buttons(BenchDesk& desk, ChartBoard& board)
{
    ChartBoard::Choosing& choosing = board.choosing();
    ChartSet& set = board.set();
    {
        const Row row(desk.ui, {1.0F, 1.2F, 0.8F});
        const bool has_room = set.can_add() && set.charts().size() < board.room();
        if (button(desk.ui, {.name = words::add_chart, .is_enabled = has_room})) {
            set.add_chart(choosing.selected);
            board.refresh();
            board.open_choice(set.charts().size() - 1, desk.model);
        }
        if (button(desk.ui, {.name = words::remove_chart, .is_enabled = set.charts().size() > 1})) {
            set.remove_chart(choosing.chart);
            board.refresh();
            choosing.is_open = false;
        }
        if (button(desk.ui, {.name = words::export_chart})) {
            open_export(desk, choosing);
        }
    }
    if (button(desk.ui, {.name = words::close})) {
        choosing.is_open = false;
    }
}

void show_readings(BenchDesk& desk, ChartBoard& board)
{
    ChartBoard::Choosing& choosing = board.choosing();
    const auto& readings = desk.model.run().machine().readings();
    std::size_t row = 0;
    const std::vector<std::size_t> rows = rows_of(desk, choosing, row);
    const ChartChoice& chart = board.set().charts()[choosing.chart];
    const std::array columns{ListColumn{words::reading_column, 3.0F, false},
                             ListColumn{words::unit_column, 1.0F, false},
                             ListColumn{words::on_chart_column, 1.0F, false}};
    const auto cell = [&](std::size_t at, std::size_t column) -> std::string {
        const sim::Network::Reading& reading = readings[rows[at]];
        switch (column) {
        case 0:
            return reading_title(reading.name);
        case 1:
            return readout_of(reading).sign;
        default:
            return chart.has(rows[at]) ? std::string(words::is_on_chart) : "";
        }
    };
    const Look& look = desk.ui.look();
    const ListAction action = list(desk.ui,
                                   {.name = words::readings,
                                    .columns = columns,
                                    .row_count = rows.size(),
                                    .cell = cell,
                                    .height = std::clamp(desk.window_height - look.px(360.0F),
                                                         look.px(70.0F), look.px(320.0F)),
                                    .empty_text = words::no_such_reading},
                                   row);
    const bool has_row = row < rows.size();
    choosing.selected = has_row ? rows[row] : choosing.selected;
    const bool is_put =
        button(desk.ui, {.name = words::put_on_chart, .is_primary = true, .is_enabled = has_row});
    if (has_row && (is_put || action.has_activated)) {
        board.set().toggle(choosing.chart, choosing.selected);
        board.refresh();
    }
}

void show_choice(BenchDesk& desk, ChartBoard& board)
{
    ChartBoard::Choosing& choosing = board.choosing();
    choosing.chart = std::min(choosing.chart, board.set().charts().size() - 1);
    const std::string name = filled(words::choose_readings, {std::to_string(choosing.chart + 1)});
    if (const Dialog dialog{desk.ui, {.name = name, .width = 480.0F}, choosing.is_open}) {
        paragraph(desk.ui, words::chart_lines_rule, Tone::soft);
        text_field(desk.ui,
                   {.name = words::search_readings,
                    .hint = words::search_readings_hint,
                    .is_search = true},
                   choosing.search);
        show_readings(desk, board);
        show_chart_buttons(desk, board);
    }
}

void write(BenchDesk& desk, ChartBoard::Choosing& choosing, const std::string& ending,
           const std::function<std::string()>& contents)
{
    const std::string path = choosing.path + ending;
    try {
        make_folder_for(path);
        sim::atomic_write(path, contents());
        desk.view.notice = filled(words::exported_in, {short_path(path)});
        choosing.is_exporting = false;
    } catch (const sim::RequestError& error) {
        choosing.trouble = worded(error.what());
    }
}

void show_export(BenchDesk& desk, ChartBoard& board)
{
    ChartBoard::Choosing& choosing = board.choosing();
    const Dialog dialog{
        desk.ui, {.name = words::export_title, .width = 600.0F}, choosing.is_exporting};
    if (!dialog) {
        return;
    }
    text_field(desk.ui, {.name = words::export_file}, choosing.path);
    if (!choosing.trouble.empty()) {
        paragraph(desk.ui, choosing.trouble, Tone::warning);
    }
    const bool is_enabled = !choosing.path.empty();
    const Row row(desk.ui, {1.0F, 1.0F, 1.0F});
    if (button(desk.ui,
               {.name = words::export_csv, .is_primary = true, .is_enabled = is_enabled})) {
        const ChartBoard::Window& window = board.window();
        write(desk, choosing, ".csv", [&] {
            return chart_csv(board.set().charts()[choosing.chart], desk.model.run(), window.from,
                             window.to);
        });
    }
    if (button(desk.ui, {.name = words::export_png, .is_enabled = is_enabled})) {
        write(desk, choosing, ".png", [&] { return board.png(choosing.chart, desk); });
    }
    if (button(desk.ui, {.name = words::cancel})) {
        choosing.is_exporting = false;
    }
}

} // namespace

void show_chart_dialogs(BenchDesk& desk, ChartBoard& board)
{
    if (board.choosing().is_open) {
        show_choice(desk, board);
    } else if (board.choosing().is_exporting) {
        show_export(desk, board);
    }
}

} // namespace scenes
