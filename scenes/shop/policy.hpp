#pragma once

#include "scenes/shop/attempt.hpp"
#include "scenes/shop/belief.hpp"

namespace shop {

/// How much a check is worth just now.
struct Worth {
    const Check* check = nullptr;
    double bits = 0.0;    ///< expected to be learnt
    double minutes = 0.0; ///< what it takes, money counted as minutes of the order's labour
    [[nodiscard]] double rate() const { return bits / minutes; }
};

/// Good work on an order, found by simulation: the check that is expected to tell most for its
/// minutes, then what was read, and so on, until one cause is clear; the repair that costs least
/// for what it is likely to cure; then the checks that verify it.
///
/// Greedy choices of this kind come close to the best there is.
/// source:  D. Golovin, A. Krause, Adaptive Submodularity, J. Artif. Intell. Res. 42, 2011,
///          section 7 (from memory)
class Policy {
public:
    Policy(const Order& order, const Table& table);

    /// What to do next, after all that has been noted.
    [[nodiscard]] Action next() const;
    /// Takes note of a line of the job sheet, whoever did it.
    void note(const JobLine& line);

    [[nodiscard]] const Belief& belief() const { return belief_; }
    /// The permitted checks that have not been done since the last repair, the best first.
    [[nodiscard]] std::vector<Worth> worths() const;
    [[nodiscard]] bool has_repaired() const { return !repairs_.empty(); }
    /// Whether one cause, or its look-alikes together, is clear.
    [[nodiscard]] bool is_clear() const;

private:
    [[nodiscard]] std::optional<Action> verify() const;
    [[nodiscard]] const Repair* choose_repair() const;
    [[nodiscard]] double price_of_verifying() const;
    [[nodiscard]] Finding finding() const;
    [[nodiscard]] Action to_check(const Check& check) const;
    [[nodiscard]] const std::vector<std::size_t>& alike(std::size_t hypothesis) const;

    const Order& order_;
    const Table& table_;
    Belief belief_;
    std::vector<std::string> checked_; ///< since the last repair
    std::vector<const Repair*> repairs_;
    std::vector<std::string>
        verified_;                     ///< of the order's solved, found sound since the last repair
    std::vector<std::string> unsound_; ///< of the same, found unsound
    std::vector<Predict> predictions_;
    bool has_finding_ = false;
    mutable std::map<std::size_t, std::vector<std::size_t>> alike_; ///< worked out so far
};

/// What a repair comes down to when it is recommended.
Advice advice_for(const Repair& repair);

/// Whether a repair costs no more than half of what the machine is worth when it runs.
///
/// source:  common practice, no source
bool is_worth_repairing(const Order& order, const Repair& repair);

/// For work that nobody can break off.
inline const std::atomic<bool> never_cancelled{false};

/// Work on an order from beginning to end.
struct Path {
    std::vector<JobLine> lines;
    double minutes = 0.0;
    double money = 0.0;
    bool is_solved = false;
};

/// The policy's own work on an order, on a live machine with the order's own seed.
Path good_path(const std::shared_ptr<const Order>& order, const Table& table);
/// The same on an attempt that nothing has been done in yet; it ends early when it is cancelled.
Path good_path(Attempt& attempt, const Table& table,
               const std::atomic<bool>& is_cancelled = never_cancelled);

/// Whether a machine passes all that an order asks of it, its instruments left out; on a copy.
/// Gives the checks that it does not pass.
std::vector<std::string> failing(const Order& order, const sim::Simulator& machine);

} // namespace shop
