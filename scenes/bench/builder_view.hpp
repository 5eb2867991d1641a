#pragma once

#include "scenes/bench/bench_desk.hpp"
#include "scenes/present/order_building.hpp"
#include "scenes/present/order_shelf.hpp"
#include "scenes/shop/histories.hpp"
#include "scenes/view/theme.hpp"

#include <SFML/Graphics/Rect.hpp>

#include <functional>

namespace scenes {

/// The builder's pages; the card stands beside the others where there is room.
enum class BuilderPage { machine, hidden, customer, permitted, marks, trial, card };

/// What a person has chosen in the builder, beside the draft itself.
struct BuilderView {
    BuilderPage page = BuilderPage::machine;
    std::string notice; ///< what was done last, or why it could not be
    bool is_notice_warning = false;
    bool wants_preview = false; ///< the student's screen in place of the builder

    std::vector<std::string> rigs;
    std::vector<shop::History> histories; ///< of the rig named beside
    std::string histories_of;
    std::string own_history; ///< that the draft began with

    std::string fault_search;
    std::size_t fault = 0;
    std::size_t kind = 0; ///< of work to permit: checks or repairs
    std::string work_search;
    std::size_t check = 0;
    std::size_t repair = 0;

    bool has_orders_open = false;
    std::vector<ShelfOrder> shelf;
    std::size_t order = 0;
    std::function<void()> after_discard; ///< what waits for the answer whether to put a draft away
    bool has_discard_open = false;
    bool has_name_open = false;
    OrderName name; ///< that is taken
};

/// All that the panels of the builder work with. Widgets change `next`, which becomes a step of the
/// draft at the end of the frame.
struct BuilderTable {
    BenchDesk& bench;
    shop::Workshops& workshops;
    OrderBuilding& building;
    BuilderView& view;
    DraftValues& next;
    std::string& step;   ///< the name of the change, empty for one that stands alone
    bool is_low = false; ///< the page scrolls as a whole

    [[nodiscard]] Interface& ui() const { return bench.ui; }
    [[nodiscard]] const Look& look() const { return bench.ui.look(); }
    [[nodiscard]] const shop::Workshop& workshop() const { return *workshops.of(next.rig); }
};

// ---- the pages

void show_builder_machine(BuilderTable& table);
void show_builder_hidden(BuilderTable& table);
void show_builder_customer(BuilderTable& table);
void show_builder_permitted(BuilderTable& table);
void show_builder_marks(BuilderTable& table);
void show_builder_trial(BuilderTable& table);
/// What the student gets: the customer's card, and what may be done.
void show_builder_card(BuilderTable& table);
void show_builder_dialogs(BuilderTable& table);

// ---- what they share

/// A text field, and a slider, whose changes in a row are one step of the draft.
struct TextField;
struct Slider;
void entry(BuilderTable& table, const TextField& spec, std::string& text);
void entry(BuilderTable& table, const Slider& spec, double& value);

/// Does something that files or the model can refuse; what they say becomes the notice.
void try_to(BuilderTable& table, const std::function<void()>& what);

/// Begins anew, once the draft in hand is saved or may be put away.
void begin_draft(BuilderTable& table, DraftValues values, std::string path);

} // namespace scenes
