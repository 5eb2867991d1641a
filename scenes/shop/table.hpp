#pragma once

#include "scenes/shop/order.hpp"

#include <atomic>
#include <functional>

namespace shop {

/// What may be wrong with a machine: nothing, one fault, or several at once.
struct Hypothesis {
    std::string id; ///< of the fault; "sound"; or ids joined by +
    std::vector<sim::SetFault> faults;
};

/// How a machine comes to be looked at.
struct Situation {
    std::shared_ptr<const Workshop> workshop;
    sim::Weather weather;
    const Procedure* history = nullptr; ///< null for a machine fresh from the shelf
    std::string history_text;           ///< of the same, to tell situations apart
};

/// How an order's machine comes to be looked at.
///
/// valid:   as long as the order
Situation situation_of(const Order& order);

/// What every check would read on a machine, whatever is wrong with it: all of it simulated.
struct Table {
    using Row = std::vector<std::vector<std::optional<double>>>; ///< by check, then reading, in SI
    std::shared_ptr<const Workshop> workshop;
    std::vector<Hypothesis> hypotheses;
    std::vector<const Check*> checks;
    std::vector<Row> rows; ///< by hypothesis

    [[nodiscard]] std::size_t check_index(std::string_view id) const;
    /// Index of a hypothesis; nothing when it is not in the table.
    [[nodiscard]] std::optional<std::size_t> find(std::string_view id) const;
};

/// The machine sound, and with each of its faults at its worst.
std::vector<Hypothesis> all_single(const sim::Rig& rig);
/// Several faults as one hypothesis.
Hypothesis together(const std::vector<sim::SetFault>& faults);

/// Error to which a table's machines are followed: a hundredth of what any instrument can show, or
/// what the rig asks for if that is coarser.
sim::Tolerance table_tolerance(const sim::Rig& rig);

/// What all the checks read with one thing wrong. Runs share their way until what is done differs.
///
/// A check whose run cannot be carried on has read nothing. Gives nothing when it was cancelled.
std::optional<Table::Row> simulate_row(const Situation& situation,
                                       const std::vector<const Check*>& checks,
                                       const Hypothesis& hypothesis,
                                       const std::atomic<bool>& is_cancelled);

/// Takes note of work done, of all there is; called from any thread.
using Progress = std::function<void(std::size_t done, std::size_t all)>;

/// Simulates a table on `threads` threads, rows that stand in `store` already left out.
///
/// Each row is appended to the store as soon as it is there, so that cancelled work, or work cut
/// short by a crash, goes on where it was. A store of another situation, program or set of files is
/// begun anew. Without a path nothing is stored.
/// Gives nothing when it was cancelled.
/// throws:  RequestError when the store cannot be written
std::optional<Table> simulate_table(const Situation& situation,
                                    const std::vector<const Check*>& checks,
                                    std::vector<Hypothesis> hypotheses, unsigned threads,
                                    const std::string& store, const Progress& progress,
                                    const std::atomic<bool>& is_cancelled);

/// All of an order's permitted checks against every fault its machine can have, and what the order
/// itself hides.
std::optional<Table> simulate_table(const Order& order, unsigned threads, const std::string& store,
                                    const Progress& progress,
                                    const std::atomic<bool>& is_cancelled);

/// The folder where tables are stored, and a file in it for an order's; empty when the platform
/// names none.
std::string table_store(const Order& order);

} // namespace shop
