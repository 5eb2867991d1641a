#include "scenes/bench/bench_panels.hpp"

#include "scenes/present/hand_words.hpp"
#include "scenes/present/readout.hpp"
#include "scenes/present/words.hpp"
#include "scenes/ui/controls.hpp"
#include "scenes/ui/panel.hpp"

#include <algorithm>
#include <random>

// What can be wrong with the machine: what is, what could be, and what only the machine knows.

namespace scenes {
namespace {

void fault_slider(BenchDesk& desk, const sim::Fault& fault)
{
    const double severity = desk.model.run().machine().severity(fault.id);
    command_slider(desk,
                   {.name = translated(fault.title),
                    .step = 0.01,
                    .shown_per_unit = 100.0,
                    .unit = "%",
                    .rest = 0.0,
                    .is_enabled = desk.model.is_ready()},
                   fault.id, severity, [&](double to) {
                       desk.view.hidden.show(fault.id);
                       return sim::SetFault{fault.id, to};
                   });
    tip(desk.ui, translated(fault.about));
}

/// Cures all that is broken, hidden or not, as one gesture.
void cure_all(BenchDesk& desk)
{
    auto gesture = BenchModel::Gesture::begins;
    for (const sim::Fault* fault : broken_faults(desk.model.run().machine(), {})) {
        desk.model.post(sim::SetFault{fault->id, 0.0}, gesture);
        gesture = BenchModel::Gesture::continues;
    }
    desk.view.hidden.reveal();
}

void hide_one(BenchDesk& desk)
{
    const auto chosen = surprise(desk.model.run().machine(), std::random_device{}());
    if (chosen) {
        desk.view.hidden.hide(chosen->fault);
        desk.model.post(*chosen);
    }
}

/// While a fault is hidden no list of faults is shown: its slider would tell.
void show_hidden(BenchDesk& desk, std::size_t count)
{
    paragraph(desk.ui, count == 1 ? std::string(words::one_hidden)
                                  : filled(words::some_hidden, {std::to_string(count)}));
    paragraph(desk.ui, words::hidden_note, Tone::soft);
    const Row row(desk.ui, {1.0F, 1.0F});
    if (button(desk.ui, {.name = words::reveal, .is_primary = true})) {
        desk.view.hidden.reveal();
        desk.view.is_shut = false;
    }
    if (button(desk.ui, {.name = words::surprise_more, .is_enabled = desk.model.is_ready()})) {
        hide_one(desk);
    }
}

void show_broken(BenchDesk& desk)
{
    bool is_any = false;
    for (const std::string& id : desk.view.broken) {
        if (const sim::Fault* const fault = desk.model.rig().find_fault(id)) {
            if (!is_any) {
                heading(desk.ui, words::broken_now);
            }
            is_any = true;
            fault_slider(desk, *fault);
        }
    }
    if (is_any) {
        rule(desk.ui);
    }
}

void show_search(BenchDesk& desk)
{
    Interface& ui = desk.ui;
    text_field(ui,
               {.name = words::search_faults, .hint = words::search_faults_hint, .is_search = true},
               desk.view.fault_search);
    const auto found = find_faults(desk.model.rig(), desk.view.fault_search);
    std::string_view place;
    bool is_any = false;
    for (const sim::Fault* fault : found) {
        is_any = true;
        if (std::ranges::find(desk.view.broken, fault->id) != desk.view.broken.end()) {
            continue; // it stands above
        }
        if (desk.view.fault_search.empty() && fault->where != place) {
            place = fault->where;
            heading(ui, capitalised(std::string(translated(place))));
        }
        fault_slider(desk, *fault);
    }
    if (!is_any) {
        paragraph(ui, desk.model.rig().faults.empty() ? words::no_faults : words::no_such_fault,
                  Tone::soft);
    }
}

} // namespace

void show_faults(BenchDesk& desk)
{
    Interface& ui = desk.ui;
    const sim::Simulator& machine = desk.model.run().machine();
    const std::size_t hidden = desk.view.hidden.count(machine);
    const auto broken = broken_faults(machine, desk.view.hidden);
    // A row that changed its place while its slider is dragged would take it from the pointer.
    if (desk.view.dragged.empty()) {
        desk.view.broken.clear();
        for (const sim::Fault* fault : broken) {
            desk.view.broken.push_back(fault->id);
        }
    }
    {
        const Row row(ui, {1.0F, 1.0F});
        if (button(ui, {.name = words::surprise_me,
                        .is_enabled = desk.model.is_ready() && hidden == 0 &&
                                      !desk.model.rig().faults.empty()})) {
            hide_one(desk);
        }
        if (button(ui, {.name = words::cure_all,
                        .is_enabled = (hidden > 0 || !broken.empty()) && desk.model.is_ready()})) {
            cure_all(desk);
        }
    }
    show_broken(desk);
    if (hidden > 0) {
        show_hidden(desk, hidden);
    } else {
        show_search(desk);
    }
}

} // namespace scenes
