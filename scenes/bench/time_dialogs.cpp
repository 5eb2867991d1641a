#include "scenes/bench/time_dialogs.hpp"

#include "scenes/present/command_text.hpp"
#include "scenes/present/readout.hpp"
#include "scenes/present/time_words.hpp"
#include "scenes/present/wording.hpp"
#include "scenes/present/words.hpp"
#include "scenes/ui/controls.hpp"
#include "scenes/ui/dialog.hpp"
#include "scenes/ui/list.hpp"
#include "scenes/ui/panel.hpp"
#include "sim/error.hpp"
#include "sim/run_sheet.hpp"
#include "sim/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

namespace scenes {
namespace {

void begin_ahead(BenchDesk& desk, double to)
{
    desk.model.go_ahead_to(to);
    desk.view.has_ahead_open = false;
}

/// Goes ahead to a time written by a person, or says what is wrong with it.
void go_to_written_time(BenchDesk& desk)
{
    double to = 0.0;
    try {
        to = sim::parse_quantity(desk.view.ahead_to, sim::Dimension::duration);
    } catch (const std::invalid_argument& error) {
        desk.view.ahead_trouble = worded(error.what());
        return;
    }
    if (!(to > desk.model.seconds()) || to > sim::longest_run) {
        desk.view.ahead_trouble = words::ahead_is_past;
        return;
    }
    begin_ahead(desk, to);
}

void show_ahead(BenchDesk& desk)
{
    Interface& ui = desk.ui;
    const Dialog dialog{ui, {.name = words::go_ahead, .width = 520.0F}, desk.view.has_ahead_open};
    if (!dialog) {
        return;
    }
    paragraph(ui, words::ahead_keeps, Tone::soft);
    heading(ui, words::go_ahead_by);
    {
        const Row row(ui, {1.0F, 1.0F, 1.0F, 1.0F, 1.0F});
        for (std::size_t i = 0; i < words::ahead_names.size(); ++i) {
            if (button(ui, {.name = words::ahead_names[i]})) {
                begin_ahead(desk, desk.model.seconds() + words::ahead_seconds[i]);
            }
        }
    }
    text_field(ui, {.name = words::go_ahead_to}, desk.view.ahead_to);
    if (!desk.view.ahead_trouble.empty()) {
        paragraph(ui, desk.view.ahead_trouble, Tone::warning);
    }
    const Row row(ui, {1.0F, 1.0F});
    if (button(ui, {.name = words::go_ahead,
                    .is_primary = true,
                    .is_enabled = !desk.view.ahead_to.empty()})) {
        go_to_written_time(desk);
    }
    if (button(ui, {.name = words::cancel})) {
        desk.view.has_ahead_open = false;
    }
}

std::string branch_title(const BenchModel& model, std::size_t index)
{
    const Branch& branch = model.branches()[index];
    const std::string name =
        branch.name.empty() ? filled(words::branch, {std::to_string(branch.id)}) : branch.name;
    return index == model.active_branch() ? filled(words::branch_shown, {name}) : name;
}

std::string branch_cell(const BenchDesk& desk, std::size_t index, std::size_t column)
{
    const BenchModel& model = desk.model;
    const Branch& branch = model.branches()[index];
    switch (column) {
    case 0:
        return branch_title(model, index);
    case 1:
        return branch.parent == 0
                   ? std::string(words::from_start)
                   : clock_text(static_cast<double>(branch.left_at) * sim::tick_length);
    default:
        return branch.change ? command_text(*branch.plan.rig, *branch.change, desk.view.hidden)
                             : "";
    }
}

void show_branch_buttons(BenchDesk& desk, bool has_row)
{
    Interface& ui = desk.ui;
    BenchModel& model = desk.model;
    const bool is_other = has_row && desk.view.branch != model.active_branch();
    {
        const Row row(ui, {1.0F, 1.0F});
        if (button(ui, {.name = words::switch_branch,
                        .is_primary = true,
                        .is_enabled = is_other && !model.is_busy()})) {
            model.switch_to(desk.view.branch);
            desk.view.has_branches_open = false;
        }
        if (button(ui, {.name = words::remove_branch,
                        .is_enabled = is_other && model.can_remove_branch()})) {
            model.remove_branch(desk.view.branch);
            desk.view.branch = model.active_branch();
            desk.view.notice = words::branch_removed;
        }
    }
    {
        const Row row(ui, {1.0F, 1.0F});
        if (button(ui, {.name = words::undo, .is_enabled = model.can_undo()})) {
            model.undo();
        }
        if (button(ui, {.name = words::close})) {
            desk.view.has_branches_open = false;
        }
    }
}

void show_branches(BenchDesk& desk)
{
    Interface& ui = desk.ui;
    BenchModel& model = desk.model;
    const Dialog dialog{
        ui, {.name = words::branches, .width = 620.0F}, desk.view.has_branches_open};
    if (!dialog) {
        return;
    }
    paragraph(ui, words::branch_rule, Tone::soft);
    const std::array columns{ListColumn{words::branch_column, 1.5F, false},
                             ListColumn{words::left_column, 1.0F, false},
                             ListColumn{words::change_column, 2.2F, false}};
    const Look& look = ui.look();
    const ListAction action =
        list(ui,
             {.name = words::branches,
              .columns = columns,
              .row_count = model.branches().size(),
              .cell = [&](std::size_t row,
                          std::size_t column) { return branch_cell(desk, row, column); },
              .height = std::clamp(desk.window_height - look.px(380.0F), look.px(70.0F),
                                   look.px(220.0F))},
             desk.view.branch);
    const bool has_row = desk.view.branch < model.branches().size();
    if (has_row && action.has_activated) {
        model.switch_to(desk.view.branch);
        desk.view.has_branches_open = false;
    }
    if (has_row) {
        std::string name = model.branches()[desk.view.branch].name;
        if (text_field(ui,
                       {.name = words::branch_name, .hint = branch_title(model, desk.view.branch)},
                       name)) {
            model.rename_branch(desk.view.branch, name);
        }
    }
    show_branch_buttons(desk, has_row);
}

} // namespace

void open_ahead(BenchDesk& desk)
{
    if (desk.model.is_ready()) {
        desk.view.ahead_trouble.clear();
        desk.view.has_ahead_open = true;
    }
}

void open_branches(BenchDesk& desk)
{
    desk.view.branch = desk.model.active_branch();
    desk.view.has_branches_open = true;
}

void show_time_dialogs(BenchDesk& desk)
{
    if (desk.view.has_ahead_open) {
        show_ahead(desk);
    } else if (desk.view.has_branches_open) {
        show_branches(desk);
    }
}

void show_long_work(BenchDesk& desk)
{
    Interface& ui = desk.ui;
    BenchModel& model = desk.model;
    const bool is_replay = model.is_replaying();
    const std::string name =
        is_replay ? std::string(words::replaying)
                  : filled(words::going_ahead, {whole_clock_text(model.ahead_end_seconds())});
    progress(ui, name, model.work_share());
    const std::optional<double> left = model.work_left();
    reading(ui, words::time_left,
            left ? whole_clock_text(std::ceil(*left)) : std::string(words::time_left_unknown));
    if (button(ui, {.name = words::cancel})) {
        model.cancel_work();
    }
}

} // namespace scenes
