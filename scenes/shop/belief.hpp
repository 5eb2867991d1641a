#pragma once

#include "scenes/shop/observation.hpp"
#include "scenes/shop/table.hpp"

namespace shop {

/// What may be wrong, by chances, as readings come in: Bayes' rule over the hypotheses of a table.
///
/// A repair changes which row of the table describes a hypothesis: what it undoes is gone.
class Belief {
public:
    /// Hypotheses by weight; several faults at once are rarer than one.
    explicit Belief(const Table& table);

    /// Takes the customer's complaint for a reading: which of the checks a machine passes when it
    /// has what is really wrong, as a customer would notice, and may be mistaken in.
    void hear(const std::vector<std::size_t>& checks, std::size_t truth);
    /// Takes what a check has read.
    void learn(std::size_t check, std::span<const Observation> observations);
    /// A repair was done.
    void repaired(const Repair& repair);

    [[nodiscard]] const Table& table() const { return *table_; }
    [[nodiscard]] double chance(std::size_t hypothesis) const { return chances_[hypothesis]; }
    [[nodiscard]] const std::vector<double>& chances() const { return chances_; }
    [[nodiscard]] std::size_t likeliest() const;
    /// Uncertainty that is left.
    ///
    /// unit:    bits
    /// source:  C. Shannon, A Mathematical Theory of Communication, 1948, section 6
    [[nodiscard]] double entropy() const;
    /// How much a check is expected to take away of it, its noise included.
    [[nodiscard]] double information(std::size_t check) const;
    /// The row that describes a hypothesis now, what has been undone left out.
    [[nodiscard]] std::size_t row(std::size_t hypothesis) const { return rows_[hypothesis]; }

private:
    [[nodiscard]] double likelihood_of(std::size_t check, std::span<const Observation> observations,
                                       std::size_t hypothesis) const;
    void normalise();

    const Table* table_;
    std::vector<double> chances_;
    std::vector<std::size_t> rows_;
    std::vector<const Repair*> repairs_;
};

/// How surely the best single reading of a table tells two hypotheses apart: 0 when none can, 1
/// when one always does. It is the greatest total variation distance between what an instrument
/// shows.
///
/// source:  whoever guesses by the likelier is wrong in (1 - distance) / 2 of cases; E. Lehmann,
///          J. Romano, Testing Statistical Hypotheses, 3rd ed., section 13.1 (from memory)
double separation(const Table& table, std::size_t one, std::size_t other);

/// Two hypotheses are look-alikes when no reading tells them apart with an error of 5 % or less.
inline constexpr double told_apart = 0.9;

/// Hypotheses that a table's checks cannot tell from one, itself included.
std::vector<std::size_t> look_alikes(const Table& table, std::size_t hypothesis);

} // namespace shop
