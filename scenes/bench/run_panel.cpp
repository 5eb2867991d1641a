#include "scenes/bench/bench_machines.hpp"
#include "scenes/bench/bench_panels.hpp"

#include "scenes/bench/time_dialogs.hpp"
#include "scenes/present/builder_words.hpp"
#include "scenes/present/order_words.hpp"
#include "scenes/present/run_files.hpp"
#include "scenes/present/time_words.hpp"
#include "scenes/present/words.hpp"
#include "scenes/ui/controls.hpp"
#include "scenes/ui/panel.hpp"

#include <algorithm>
#include <array>

// The run as a whole, what the bench looks like, and the panel that holds all parts.

namespace scenes {
namespace {

void show_look(BenchDesk& desk)
{
    Interface& ui = desk.ui;
    heading(ui, words::look);
    choice(ui, {.name = words::chart_time, .options = words::spans}, desk.view.span);
    toggle(ui, {.name = words::healthy_twin, .on_text = words::shown, .off_text = words::hidden},
           desk.view.shows_twin);
    paragraph(ui, words::twin_note, Tone::soft);
    if (button(ui, {.name = words::settings})) {
        desk.view.has_settings_open = true;
    }
    if (button(ui, {.name = words::projector_view})) {
        desk.view.is_projector = true;
    }
    if (button(ui, {.name = words::show_keys})) {
        desk.view.has_keys_open = true;
    }
}

void show_parts(BenchDesk& desk, Page page)
{
    switch (page) {
    case Page::faults:
        show_faults(desk);
        break;
    case Page::run:
        show_run(desk);
        break;
    case Page::changes:
        show_changes(desk);
        break;
    case Page::machine:
    case Page::grade:
    case Page::charts:
    case Page::controls:
        show_controls(desk);
        break;
    }
}

constexpr std::array all_pages{words::page_machine,  words::page_grade,  words::page_charts,
                               words::page_controls, words::page_faults, words::page_run,
                               words::page_changes};
constexpr std::array panel_pages{words::page_controls, words::page_faults, words::page_run,
                                 words::page_changes};
/// A tall panel shows controls and faults together.
constexpr std::array tall_pages{words::page_controls, words::page_run, words::page_changes};

void choose_part(BenchDesk& desk, bool is_tall)
{
    Page& page = desk.view.page;
    if (is_tall) {
        std::size_t chosen = page == Page::run ? 1 : page == Page::changes ? 2 : 0;
        if (choice(desk.ui, {.name = "", .options = translated(tall_pages), .id = words::pages},
                   chosen)) {
            page = chosen == 0 ? Page::controls : chosen == 1 ? Page::run : Page::changes;
        }
        return;
    }
    const auto first = static_cast<std::size_t>(Page::controls);
    std::size_t chosen = std::max(static_cast<std::size_t>(page), first) - first;
    if (choice(desk.ui, {.name = "", .options = translated(panel_pages), .id = words::pages},
               chosen)) {
        page = static_cast<Page>(first + chosen);
    }
}

} // namespace

void show_run(BenchDesk& desk)
{
    Interface& ui = desk.ui;
    BenchModel& model = desk.model;
    heading(ui, words::machine);
    paragraph(ui, translated(model.rig().title));
    if (button(ui, {.name = words::choose_machine, .is_enabled = !model.is_busy()})) {
        open_machines(desk);
    }
    if (button(ui, {.name = words::work_orders})) {
        desk.view.wants_orders = true;
    }
    if (button(ui, {.name = words::build_order})) {
        desk.view.wants_builder = true;
    }
    rule(ui);
    heading(ui, words::page_run);
    {
        const Row row(ui, {1.0F, 1.0F});
        if (button(ui, {.name = words::undo, .is_enabled = model.can_undo()})) {
            model.undo();
        }
        if (button(ui, {.name = words::redo, .is_enabled = model.can_redo()})) {
            model.redo();
        }
    }
    {
        const Row row(ui, {1.0F, 1.0F});
        if (button(ui, {.name = words::save})) {
            desk.view.path = new_run_path(runs_folder(), model.rig().id, std::time(nullptr));
            desk.view.has_save_open = true;
        }
        if (button(ui, {.name = words::open, .is_enabled = !model.is_busy()})) {
            desk.view.path.clear();
            desk.view.open_trouble.clear();
            desk.view.has_open_open = true;
        }
    }
    if (button(ui, {.name = words::begin_running, .is_enabled = !model.is_busy()})) {
        model.begin_running();
    }
    if (button(ui, {.name = words::begin_cold, .is_enabled = !model.is_busy()})) {
        model.begin_cold();
    }
    rule(ui);
    show_sound(desk);
    rule(ui);
    show_look(desk);
}

void show_panel(BenchDesk& desk, const BenchLayout& layout)
{
    Interface& ui = desk.ui;
    const Look& look = ui.look();
    // The title's first words; the rest only says the same more exactly.
    const std::string_view title = translated(desk.model.rig().title);
    const Panel panel(ui, {.name = title.substr(0, title.find(',')),
                           .box = layout.panel,
                           .note = {},
                           .has_head = !layout.is_compact});
    const bool has_time = !layout.is_compact || desk.view.page == Page::controls;
    if (has_time) {
        show_time(desk);
    }
    if (!layout.is_compact) {
        choose_part(desk, layout.is_tall);
    }
    // Where little would be left for it, the part scrolls with all the rest.
    const bool scrolls_alone = layout.panel.height > look.px(430.0F);
    const auto parts = [&] {
        const bool shows_both =
            layout.is_tall && desk.view.page != Page::run && desk.view.page != Page::changes;
        show_parts(desk, shows_both ? Page::controls : desk.view.page);
        if (shows_both) {
            rule(ui);
            show_faults(desk);
        }
    };
    if (scrolls_alone) {
        const ScrollArea area(ui, words::pages);
        parts();
    } else {
        parts();
    }
}

void show_pages(BenchDesk& desk, const BenchLayout& layout)
{
    const Panel panel(desk.ui,
                      {.name = words::pages, .box = layout.pages, .note = {}, .has_head = false});
    auto chosen = static_cast<std::size_t>(desk.view.page);
    if (choice(desk.ui, {.name = "", .options = translated(all_pages), .id = words::pages},
               chosen)) {
        desk.view.page = static_cast<Page>(chosen);
    }
}

} // namespace scenes
