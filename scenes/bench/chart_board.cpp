#include "scenes/bench/chart_board.hpp"

#include "scenes/present/words.hpp"
#include "scenes/ui/controls.hpp"
#include "scenes/ui/dialog.hpp"
#include "scenes/ui/handle.hpp"
#include "scenes/ui/list.hpp"
#include "scenes/ui/panel.hpp"

#include <algorithm>
#include <numeric>
#include <utility>

namespace scenes {
namespace {

constexpr std::size_t lines_allowed = 3;
/// Frames between two charts drawn anew: each is 20 times a second at 60 frames.
constexpr std::size_t frames_per_chart = 2;

using ChartSet = std::array<std::array<std::string_view, 3>, 3>;
/// What the charts show at first: the first set of which a machine has the last reading.
constexpr std::array chart_sets{
    ChartSet{{{"engine.speed"}, {"bowl.level", "needle.lift"}, {"main_jet.flow", "idle_jet.flow"}}},
    ChartSet{{{"engine.speed"},
              {"suction_hose.liquid", "gallery.liquid", "metering.liquid"},
              {"high_circuit.flow", "low_circuit.flow"}}}};

bool has_set(const std::vector<sim::Network::Reading>& readings, const ChartSet& set)
{
    return std::ranges::find(readings, set.back()[1], &sim::Network::Reading::name) !=
           readings.end();
}

} // namespace

ChartBoard::ChartBoard(const Fonts& fonts, const BenchModel& model)
    : texts_(charts_.size(), Text(fonts)), order_(model.run().values().size())
{
    const auto& readings = model.run().machine().readings();
    const auto* const found_set = std::ranges::find_if(
        chart_sets, [&](const ChartSet& set) { return has_set(readings, set); });
    const ChartSet& set = found_set == chart_sets.end() ? chart_sets.front() : *found_set;
    for (std::size_t i = 0; i < charts_.size(); ++i) {
        for (const std::string_view name : set[i]) {
            const auto found = std::ranges::find(readings, name, &sim::Network::Reading::name);
            if (found != readings.end()) {
                add(model, i, static_cast<std::size_t>(found - readings.begin()));
            }
        }
    }
}

std::size_t ChartBoard::most_lines() const
{
    std::size_t most = 0;
    for (const Chart& chart : charts_) {
        most = std::max(most, chart.lines.size());
    }
    return most;
}

bool ChartBoard::is_shown(std::size_t chart, std::size_t reading) const
{
    const auto& lines = charts_[chart].lines;
    return std::ranges::find(lines, reading, &Line::reading) != lines.end();
}

void ChartBoard::add(const BenchModel& model, std::size_t chart, std::size_t reading)
{
    const sim::Network::Reading& info = model.run().machine().readings()[reading];
    Chart& target = charts_[chart];
    Line line{reading, reading_title(info.name), readout_of(info)};
    const bool is_new_set =
        !target.lines.empty() && target.lines.front().readout.unit != line.readout.unit;
    if (is_new_set || target.lines.size() == lines_allowed) {
        target.lines.clear();
    }
    target.lines.push_back(std::move(line));
    target.title = target.lines.size() == 1 ? capitalised(target.lines.front().title)
                                            : filled(words::chart, {std::to_string(chart + 1)});
    target.strip = StripChart(); // the old axis means nothing to the new lines
}

void ChartBoard::name_lines(const BenchModel& model)
{
    for (std::size_t i = 0; i < charts_.size(); ++i) {
        for (const Line& line : std::exchange(charts_[i].lines, {})) {
            add(model, i, line.reading);
        }
    }
}

void ChartBoard::toggle_reading(const BenchModel& model, std::size_t reading)
{
    Chart& chart = charts_[choosing_];
    if (!is_shown(choosing_, reading)) {
        add(model, choosing_, reading);
    } else if (chart.lines.size() > 1) {
        std::erase_if(chart.lines, [=](const Line& line) { return line.reading == reading; });
        const Line last = chart.lines.back();
        chart.lines.pop_back();
        add(model, choosing_, last.reading);
    }
    boxes_ = {}; // all anew
}

void ChartBoard::take(std::size_t index, const BenchLayout& layout, const BenchDesk& desk)
{
    const BenchRun& run = desk.model.run();
    const Look& look = desk.ui.look();
    Chart& chart = charts_[index];
    if (layout.charts[index].height <= 0.0F) {
        return;
    }
    const double span = words::span_seconds[desk.view.span];
    traces_.clear();
    for (const Line& line : chart.lines) {
        const Series& twin = run.twin_history().series(line.reading, span);
        traces_.push_back({.name = line.title,
                           .run = &run.history().series(line.reading, span),
                           .twin = desk.view.shows_twin ? &twin : nullptr,
                           .scale = 1.0 / line.readout.factor,
                           .offset = -line.readout.offset / line.readout.factor,
                           .decimals = line.readout.decimals});
    }
    const double now = desk.model.seconds();
    chart.mesh.clear();
    texts_[index].clear();
    chart.strip.draw(chart.mesh, texts_[index], look,
                     {.box = layout.charts[index],
                      .title = chart.title,
                      .unit = chart.lines.front().readout.sign,
                      .from = std::max(0.0, now - span),
                      .to = std::max(now, span),
                      .cursor = {},
                      .range = {},
                      .least_span = chart.lines.front().readout.least_span,
                      .traces = traces_,
                      .time_unit = "s"});
    chart.picture.take(layout.charts[index], look.theme.ground, {&chart.mesh, &texts_[index]});
}

void ChartBoard::draw(sf::RenderTarget& target, const BenchLayout& layout, const BenchDesk& desk,
                      bool is_complete)
{
    if (layout.charts.front().height <= 0.0F) {
        return;
    }
    const std::string_view theme = desk.ui.look().theme.id;
    const bool has_changed =
        layout.charts != boxes_ || theme != theme_id_ || wording_age_ != wording_age();
    if (wording_age_ != wording_age()) {
        wording_age_ = wording_age();
        name_lines(desk.model);
    }
    if (has_changed || is_complete) {
        boxes_ = layout.charts;
        theme_id_ = theme;
        for (std::size_t i = 0; i < charts_.size(); ++i) {
            take(i, layout, desk);
        }
    } else if (++frame_ % frames_per_chart == 0) {
        take(next_, layout, desk);
        next_ = (next_ + 1) % charts_.size();
    }
    for (std::size_t i = 0; i < charts_.size(); ++i) {
        if (layout.charts[i].height <= 0.0F) {
            continue;
        }
        if (charts_[i].picture.is_usable()) {
            charts_[i].picture.show(target);
        } else {
            target.draw(charts_[i].mesh);
            target.draw(texts_[i]);
        }
    }
}

void ChartBoard::show_handles(BenchDesk& desk, const BenchLayout& layout)
{
    if (layout.charts.front().height <= 0.0F) {
        return;
    }
    const sf::FloatRect& first = layout.charts.front();
    sf::Vector2f end;
    for (const sf::FloatRect& box : layout.charts) {
        end = {std::max(end.x, box.left + box.width), std::max(end.y, box.top + box.height)};
    }
    const Overlay overlay(desk.ui, words::page_charts,
                          {first.left, first.top, end.x - first.left, end.y - first.top});
    for (std::size_t i = 0; i < charts_.size(); ++i) {
        if (layout.charts[i].height <= 0.0F) {
            continue;
        }
        const std::string name = filled(words::chart, {std::to_string(i + 1)});
        const Handle head =
            handle(desk.ui, {.name = name, .value = charts_[i].title, .box = layout.charts[i]});
        tip(desk.ui, words::choose_by_press);
        if (head.is_pressed) {
            open_choice(i);
        }
    }
}

void ChartBoard::open_choice(std::size_t chart)
{
    is_choosing_ = true;
    choosing_ = chart;
    search_.clear();
    selected_ = charts_[chart].lines.front().reading;
    // Those that are shown come first; the order holds while the dialog is open.
    std::iota(order_.begin(), order_.end(), std::size_t{0});
    std::ranges::stable_partition(
        order_, [this, chart](std::size_t reading) { return is_shown(chart, reading); });
}

void ChartBoard::show_readings(BenchDesk& desk)
{
    const auto& readings = desk.model.run().machine().readings();
    std::vector<std::size_t> rows;
    std::size_t row = readings.size();
    for (const std::size_t i : order_) {
        if (reading_title(readings[i].name).find(search_) != std::string::npos) {
            row = i == selected_ ? rows.size() : row;
            rows.push_back(i);
        }
    }
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
            return is_shown(choosing_, rows[at]) ? std::string(words::is_on_chart) : "";
        }
    };
    const ListAction action =
        list(desk.ui,
             {.name = words::readings,
              .columns = columns,
              .row_count = rows.size(),
              .cell = cell,
              .height = std::clamp(desk.window_height - desk.ui.look().px(300.0F),
                                   desk.ui.look().px(70.0F), desk.ui.look().px(340.0F)),
              .empty_text = words::no_such_reading},
             row);
    if (row < rows.size()) {
        selected_ = rows[row];
    }
    const Row buttons(desk.ui, {1.0F, 1.0F});
    const bool has_row = row < rows.size();
    const bool is_put =
        button(desk.ui, {.name = words::put_on_chart, .is_primary = true, .is_enabled = has_row});
    if (has_row && (is_put || action.has_activated)) {
        toggle_reading(desk.model, selected_);
    }
    if (button(desk.ui, {.name = words::close})) {
        is_choosing_ = false;
    }
}

void ChartBoard::show_choice(BenchDesk& desk)
{
    if (!is_choosing_) {
        return;
    }
    const std::string name = filled(words::choose_readings, {std::to_string(choosing_ + 1)});
    if (const Dialog dialog{desk.ui, {.name = name, .width = 440.0F}, is_choosing_}) {
        paragraph(desk.ui, words::chart_rule, Tone::soft);
        text_field(desk.ui,
                   {.name = words::search_readings,
                    .hint = words::search_readings_hint,
                    .is_search = true},
                   search_);
        show_readings(desk);
    }
}

} // namespace scenes
