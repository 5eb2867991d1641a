#pragma once

#include "scenes/bench/bench_desk.hpp"
#include "scenes/bench/order_layout.hpp"
#include "scenes/present/job_sheet.hpp"
#include "scenes/present/order_desk.hpp"
#include "scenes/present/order_shelf.hpp"

#include <limits>
#include <map>

namespace scenes {

inline constexpr std::size_t none_selected = std::numeric_limits<std::size_t>::max();

/// A finding that is being written.
struct FindingDraft {
    std::map<std::string, bool> causes; ///< ticked or not, by fault
    std::size_t advice = 0;
    double minutes = 0.0;
    double money = 0.0;
    std::string note;
};

/// What a person has chosen and begun to write in the work orders.
struct OrderView {
    OrderPage page = OrderPage::checks;
    std::string notice; ///< what is wrong, in place of the usual message

    // The shelf.
    std::vector<ShelfOrder> shelf;
    std::size_t order = none_selected;
    std::vector<ShelfRecord> records; ///< of that order
    std::size_t record = none_selected;
    std::string student;

    // Checks and repairs.
    std::string check_search;
    std::string repair_search;
    std::size_t check = 0;
    std::size_t repair = 0;
    std::string check_to_begin; ///< while its dialogs are open
    std::string repair_to_begin;
    bool has_guess_open = false;
    std::size_t guess = none_selected;
    bool has_cautions_open = false;
    std::map<std::string, bool> heeded; ///< ticked or not, by caution

    // Suspects and finding.
    std::string search;
    std::size_t cause = none_selected;
    std::size_t suspect = none_selected;
    FindingDraft draft;
    bool has_hand_in_open = false;

    std::vector<SheetEntry> sheet; ///< the job sheet as it was last written
    std::size_t sheet_lines = none_selected;
    int sheet_wording = 0;
    int sheet_attempt = 0;
    bool scrolls_to_end = false; ///< something new is at the sheet's end
};

/// All that the panels of a work order work with.
struct OrderTable {
    BenchDesk& bench;
    OrderDesk& desk;
    OrderView& view;
    shop::Workshops& workshops;

    [[nodiscard]] Interface& ui() const { return bench.ui; }
    [[nodiscard]] const Look& look() const { return bench.ui.look(); }
};

} // namespace scenes
