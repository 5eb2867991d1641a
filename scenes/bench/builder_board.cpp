#include "scenes/bench/builder_board.hpp"

#include "scenes/present/builder_words.hpp"
#include "scenes/present/order_words.hpp"
#include "scenes/present/run_files.hpp"
#include "scenes/present/time_words.hpp"
#include "scenes/present/wording.hpp"
#include "scenes/present/words.hpp"
#include "scenes/ui/controls.hpp"
#include "scenes/ui/panel.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

namespace scenes {
namespace {

// Sizes are pixels at text scale 1, chosen for looks.
constexpr float margin = 8.0F;
constexpr float least_page = 560.0F;
constexpr float least_card = 320.0F;
constexpr float least_height = 400.0F; ///< of a page whose parts scroll apart

/// Changes further apart than this, s, are steps of their own.
constexpr float pause = 1.5F;

} // namespace

void entry(BuilderTable& table, const TextField& spec, std::string& text)
{
    TextField field = spec;
    field.has_undo = false; // the draft has it
    if (text_field(table.ui(), field, text)) {
        table.step = spec.name;
    }
}

void entry(BuilderTable& table, const Slider& spec, double& value)
{
    double shown = value;
    if (slider(table.ui(), spec, shown)) {
        value = shown; // what lies between the marks stays as it is until somebody moves it
        table.step = spec.name;
    }
}

void try_to(BuilderTable& table, const std::function<void()>& what)
{
    try {
        what();
    } catch (const std::runtime_error& error) { // a file that cannot be written, or is wrong
        table.view.notice = worded(error.what());
        table.view.is_notice_warning = true;
    }
}

BuilderBoard::BuilderBoard(const Fonts& fonts, BenchDesk& bench, shop::Workshops& workshops)
    : bench_(bench), workshops_(workshops), building_(workshops), status_(fonts)
{
}

void BuilderBoard::begin()
{
    const std::string& here = bench_.model.rig().id;
    const bool is_known = has_id(view_.rigs, here);
    if (auto left = keeper_.take(workshops_)) {
        view_.notice = left->is_saved ? "" : std::string(words::draft_is_back);
        building_.go_on(std::move(*left));
    } else {
        building_.begin(empty_draft(*workshops_.of(is_known ? here : view_.rigs.front())));
    }
    if (!keeper_.set_aside().empty()) {
        view_.notice = filled(words::draft_set_aside, {short_path(keeper_.set_aside()),
                                                       worded(keeper_.set_aside_reason())});
        view_.is_notice_warning = true;
    }
}

void BuilderBoard::keep()
{
    if (!keeper_.keep(building_.kept(), workshops_) && !keeper_.trouble().empty()) {
        view_.notice = filled(words::draft_not_kept, {worded(keeper_.trouble())});
        view_.is_notice_warning = true;
    }
}

bool BuilderBoard::lets_go()
{
    if (is_given_up_ || !building_.has_draft() || keeper_.keep(building_.kept(), workshops_) ||
        building_.draft().is_saved()) {
        return true;
    }
    bench_.view.shows_builder = true;
    bench_.view.shows_orders = false;
    view_.has_discard_open = true;
    view_.after_discard = [this] {
        is_given_up_ = true;
        bench_.view.wants_to_quit = true;
    };
    return false;
}

void BuilderBoard::open()
{
    try {
        if (!building_.has_draft()) {
            view_.rigs = shop::rigs_with_workshop(workshops_.assets());
            if (view_.rigs.empty()) {
                bench_.view.notice = words::no_workshop;
                return;
            }
            begin();
        }
        bench_.view.shows_builder = true;
        bench_.model.pace.is_paused = true;     // nobody sees or hears the bench meanwhile
    } catch (const std::runtime_error& error) { // a workshop's file is wrong
        bench_.view.notice = worded(error.what());
    }
}

void BuilderBoard::lay_out(sf::Vector2f window)
{
    const Look& look = bench_.ui.look();
    const float gap = look.whole(margin);
    const float status = look.whole(22.0F);
    const float height = window.y - 3.0F * gap - status;
    has_card_ = window.x >= look.px(least_page + least_card) + 3.0F * gap;
    const float card =
        has_card_ ? std::round(std::max(look.px(least_card), 0.34F * window.x)) : 0.0F;
    const float page = window.x - 2.0F * gap - (has_card_ ? card + gap : 0.0F);
    page_ = {gap, gap, page, height};
    card_ = {gap + page + gap, gap, card, height};
    status_box_ = {gap, window.y - gap - status, window.x - 2.0F * gap, status};
    if (has_card_ && view_.page == BuilderPage::card) {
        view_.page = BuilderPage::machine;
    }
}

void BuilderBoard::show_head(BuilderTable& table)
{
    Interface& ui = bench_.ui;
    std::vector<std::string_view> pages = translated(words::builder_page_titles);
    if (!has_card_) {
        pages.emplace_back(words::page_preview);
    }
    auto page = static_cast<std::size_t>(view_.page);
    if (choice(ui, {.name = "", .options = pages, .id = words::builder_pages}, page)) {
        view_.page = static_cast<BuilderPage>(page);
    }
    const Row row(ui, {1.0F, 1.0F, 1.0F});
    if (button(ui, {.name = words::undo, .is_enabled = building_.draft().can_undo()})) {
        undo();
        table.next = building_.draft().now();
    }
    if (button(ui, {.name = words::redo, .is_enabled = building_.draft().can_redo()})) {
        redo();
        table.next = building_.draft().now();
    }
    if (button(ui, {.name = words::to_bench})) {
        bench_.view.shows_builder = false;
    }
}

void BuilderBoard::show_page(BuilderTable& table)
{
    const auto scrolled = [&](void (*page)(BuilderTable&), std::string_view name) {
        const ScrollArea area(bench_.ui, name);
        page(table);
    };
    // The list and what is chosen of it scroll apart, where there is room for both.
    table.is_low = room_left(bench_.ui) < bench_.ui.look().px(least_height);
    const auto apart = [&](void (*page)(BuilderTable&), std::string_view name) {
        if (table.is_low) {
            scrolled(page, name);
        } else {
            page(table);
        }
    };
    const auto title = [](BuilderPage page) {
        return words::builder_page_titles.at(static_cast<std::size_t>(page));
    };
    switch (view_.page) {
    case BuilderPage::machine:
        scrolled(show_builder_machine, title(view_.page));
        break;
    case BuilderPage::hidden:
        apart(show_builder_hidden, title(view_.page));
        break;
    case BuilderPage::customer:
        scrolled(show_builder_customer, title(view_.page));
        break;
    case BuilderPage::permitted:
        apart(show_builder_permitted, title(view_.page));
        break;
    case BuilderPage::marks:
        scrolled(show_builder_marks, title(view_.page));
        break;
    case BuilderPage::trial:
        scrolled(show_builder_trial, title(view_.page));
        break;
    case BuilderPage::card:
        show_builder_card(table);
        break;
    }
}

void BuilderBoard::undo()
{
    building_.draft().undo();
    bench_.ui.drop_focus();
}

void BuilderBoard::redo()
{
    building_.draft().redo();
    bench_.ui.drop_focus();
}

void BuilderBoard::take_keys()
{
    using Key = sf::Keyboard;
    Interface& ui = bench_.ui;
    if (ui.has_dialog()) {
        return;
    }
    constexpr Modifiers control{.control = true};
    constexpr Modifiers control_shift{.control = true, .shift = true};
    if (ui.take_key(Key::Z, control)) {
        undo();
    }
    if (ui.take_key(Key::Z, control_shift)) {
        redo();
    }
    const std::array pages{
        std::pair{Key::Num1, BuilderPage::machine},  std::pair{Key::Num2, BuilderPage::hidden},
        std::pair{Key::Num3, BuilderPage::customer}, std::pair{Key::Num4, BuilderPage::permitted},
        std::pair{Key::Num5, BuilderPage::marks},    std::pair{Key::Num6, BuilderPage::trial}};
    for (const auto& [key, page] : pages) {
        if (ui.take_key(key, control)) {
            view_.page = page;
        }
    }
    if (ui.take_key(Key::I)) {
        bench_.view.shows_builder = false;
    }
}

void BuilderBoard::show(sf::Vector2f window, float seconds)
{
    building_.tend();
    lay_out(window);
    OrderDraft& draft = building_.draft();
    DraftValues next = draft.now();
    std::string step;
    const bool had_notice = !view_.notice.empty();
    BuilderTable table{bench_, workshops_, building_, view_, next, step};
    const std::string note = draft.is_saved() ? std::string() : words::is_unsaved;
    {
        const Panel panel(bench_.ui, {.name = words::build_order, .box = page_, .note = note});
        show_head(table);
        show_page(table);
    }
    if (has_card_) {
        const Panel panel(bench_.ui, {.name = words::students_card, .box = card_, .note = {}});
        show_builder_card(table);
    }
    show_builder_dialogs(table);
    const bool has_changed = !(next == building_.draft().now());
    quiet_ = has_changed ? 0.0F : quiet_ + seconds;
    if (has_changed && had_notice) {
        view_.notice.clear(); // it was about what stood there before
    }
    if (quiet_ > pause) {
        building_.draft().end_step();
    }
    building_.draft().change(std::move(next), step);
    take_keys();
    if (keeper_.is_due(static_cast<double>(seconds))) {
        keep();
    }
}

std::string BuilderBoard::status() const
{
    if (!view_.notice.empty()) {
        return view_.notice;
    }
    const auto missing = still_missing(building_.draft().now());
    return missing.empty() ? std::string() : filled(words::wanted_next, {missing.front()});
}

void BuilderBoard::draw(sf::RenderTarget& target)
{
    const Look& look = bench_.ui.look();
    const bool is_warning = !view_.notice.empty() && view_.is_notice_warning;
    const TextStyle style{.size = look.body(),
                          .colour = is_warning ? look.theme.warning : look.theme.accent,
                          .anchor = Anchor::top};
    status_.clear();
    status_.write(status_.shortened(status(), status_box_.width, style),
                  {status_box_.left, status_box_.top}, style);
    target.draw(status_);
}

} // namespace scenes
