#include "scenes/bench/time_dialogs.hpp"

#include "scenes/present/readout.hpp"
#include "scenes/present/time_words.hpp"
#include "scenes/present/words.hpp"
#include "scenes/ui/controls.hpp"
#include "scenes/ui/list.hpp"
#include "scenes/ui/panel.hpp"
#include "scenes/view/number.hpp"

#include <algorithm>
#include <array>
#include <cmath>

// What changed first.

namespace scenes {
namespace {

/// A moment at which a departure is to be seen for certain.
double seen_at(const Departure& change)
{
    return change.at + change.off_by;
}

/// When it left, with no more figures than are known.
std::string time_cell(const Departure& change)
{
    if (change.off_by <= 0.0) {
        return tick_clock_text(change.at);
    }
    constexpr double tenth = 0.1;
    if (change.off_by < tenth) {
        return filled(words::time_within_seconds,
                      {clock_text(change.at), fixed_text(change.off_by, 2)});
    }
    if (change.off_by < 60.0) {
        const std::string clock = clock_text(std::floor(change.at / tenth + 0.5) * tenth);
        const double shown = std::ceil(change.off_by / tenth - 1e-6) * tenth;
        return filled(words::time_within_seconds,
                      {clock.substr(0, clock.size() - 1), fixed_text(shown, 1)});
    }
    return filled(words::time_within_minutes,
                  {whole_clock_text(change.at), fixed_text(std::ceil(change.off_by / 60.0), 0)});
}

std::string change_cell(const BenchDesk& desk, std::size_t row, std::size_t column)
{
    const Departure& change = desk.changes.list()[row];
    const sim::Network::Reading& reading = desk.model.run().machine().readings()[change.reading];
    if (column == 0) {
        return reading_title(reading.name);
    }
    if (column == 1) {
        return time_cell(change);
    }
    const Readout readout = readout_of(reading);
    const double amount = change.amount / readout.factor;
    const std::string number = (amount > 0.0 ? "+" : "") + fixed_text(amount, readout.decimals);
    return readout.sign.empty() ? number : number + " " + readout.sign;
}

} // namespace

void show_changes(BenchDesk& desk)
{
    Interface& ui = desk.ui;
    heading(ui, words::changed_first);
    if (desk.view.hidden.count(desk.model.run().machine()) > 0) {
        paragraph(ui, words::changes_are_hidden, Tone::soft);
        return;
    }
    paragraph(ui, words::changes_rule, Tone::soft);
    paragraph(ui, words::changes_resolution, Tone::soft);
    const std::array columns{ListColumn{words::reading_column, 0.0F, false},
                             ListColumn{words::time_column, 1.1F, false},
                             ListColumn{words::amount_column, 1.0F, true}};
    const std::vector<Departure>& changes = desk.changes.list();
    std::size_t row = changes.size();
    for (std::size_t i = 0; i < changes.size(); ++i) {
        row = changes[i].reading == desk.view.change ? i : row;
    }
    const Look& look = ui.look();
    const ListAction action = list(
        ui,
        {.name = words::changed_first,
         .columns = columns,
         .row_count = changes.size(),
         .cell = [&](std::size_t at, std::size_t column) { return change_cell(desk, at, column); },
         .height = std::max(look.px(150.0F), desk.window_height - look.px(450.0F)),
         .empty_text = words::nothing_changed},
        row);
    if ((action.has_selected || action.has_activated) && row < changes.size()) {
        desk.view.change = changes[row].reading;
        desk.view.reading_to_show = changes[row].reading;
        desk.model.go_to(seen_at(changes[row]));
    }
}

} // namespace scenes
