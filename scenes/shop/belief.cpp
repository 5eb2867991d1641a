#include "scenes/shop/belief.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace shop {
namespace {

/// Weight of several faults at once beside one.
constexpr double weight_of_several = 0.2;
/// How often a customer is mistaken about what the machine does.
constexpr double customers_error = 0.1;
/// How far a machine's readings move because of what was done to it before, as a share.
constexpr double disturbance = 0.03;
/// Below this chance a hypothesis is not asked what it would show.
constexpr double negligible = 1e-4;
/// Draws of noise for each hypothesis when a check is weighed.
constexpr std::uint64_t draws = 2;

bool is_passed(const Table& table, std::size_t hypothesis, std::size_t check)
{
    return table.checks[check]->procedure.is_sound(table.rows[hypothesis][check]);
}

double entropy_of(const std::vector<double>& chances)
{
    double bits = 0.0;
    for (const double chance : chances) {
        bits -= chance > 0.0 ? chance * std::log2(chance) : 0.0;
    }
    return bits;
}

/// Every observation a reading can give about two values, as far as they are likely.
std::vector<Observation> outcomes(const Reading& reading, double one, double other)
{
    std::vector<Observation> all;
    if (!reading.words.empty()) {
        for (std::size_t word = 0; word < reading.words.size(); ++word) {
            all.push_back({{}, word});
        }
        return all;
    }
    const Instrument& tool = *reading.instrument;
    for (const double value : {one, other}) {
        const double there = tool.in_unit(value);
        const double step = std::max(tool.resolution, 0.1 * tool.deviation(there));
        if (!(step > 0.0)) {
            all.push_back({tool.shown(there), {}});
            continue;
        }
        const double reach = 4.0 * tool.deviation(there) + tool.resolution;
        for (double seen = there - reach; seen <= there + reach; seen += step) {
            all.push_back({tool.shown(seen), {}});
        }
    }
    std::ranges::sort(all, {}, [](const Observation& seen) { return *seen.number; });
    const auto [first, last] = std::ranges::unique(all);
    all.erase(first, last);
    return all;
}

/// Half the sum of differences between the chances of every outcome.
double distance(const Reading& reading, std::optional<double> one, std::optional<double> other)
{
    if (!one || !other) {
        return one.has_value() == other.has_value() ? 0.0 : 1.0;
    }
    double sum = 0.0;
    double sum_one = 0.0;
    double sum_other = 0.0;
    const auto all = outcomes(reading, *one, *other);
    std::vector<std::pair<double, double>> chances;
    for (const Observation& seen : all) {
        chances.emplace_back(likelihood(reading, seen, one, 0.0),
                             likelihood(reading, seen, other, 0.0));
        sum_one += chances.back().first;
        sum_other += chances.back().second;
    }
    for (const auto& [a, b] : chances) {
        sum += 0.5 * std::abs(a / sum_one - b / sum_other);
    }
    return sum;
}

} // namespace

Belief::Belief(const Table& table)
    : table_(&table), chances_(table.hypotheses.size()), rows_(table.hypotheses.size())
{
    for (std::size_t h = 0; h < chances_.size(); ++h) {
        chances_[h] = table.hypotheses[h].faults.size() > 1 ? weight_of_several : 1.0;
    }
    std::iota(rows_.begin(), rows_.end(), std::size_t{0});
    normalise();
}

void Belief::normalise()
{
    const double sum = std::accumulate(chances_.begin(), chances_.end(), 0.0);
    for (double& chance : chances_) {
        chance /= sum;
    }
}

void Belief::hear(const std::vector<std::size_t>& checks, std::size_t truth)
{
    for (std::size_t h = 0; h < chances_.size(); ++h) {
        for (const std::size_t check : checks) {
            chances_[h] *= is_passed(*table_, h, check) == is_passed(*table_, truth, check)
                               ? 1.0 - customers_error
                               : customers_error;
        }
    }
    normalise();
}

double Belief::likelihood_of(std::size_t check, std::span<const Observation> observations,
                             std::size_t hypothesis) const
{
    const auto& readings = table_->checks[check]->procedure.readings;
    const auto& values = table_->rows[rows_[hypothesis]][check];
    double product = 1.0;
    for (std::size_t r = 0; r < observations.size(); ++r) {
        product *= likelihood(readings[r], observations[r], values[r], disturbance);
    }
    return product;
}

void Belief::learn(std::size_t check, std::span<const Observation> observations)
{
    for (std::size_t h = 0; h < chances_.size(); ++h) {
        chances_[h] *= likelihood_of(check, observations, h);
    }
    normalise();
}

void Belief::repaired(const Repair& repair)
{
    repairs_.push_back(&repair);
    const sim::Rig& rig = *table_->workshop->rig;
    for (std::size_t h = 0; h < rows_.size(); ++h) {
        std::vector<sim::SetFault> left = table_->hypotheses[h].faults;
        std::erase_if(left, [&](const sim::SetFault& fault) {
            return std::ranges::any_of(repairs_, [&](const Repair* done) {
                return done->undoes(*rig.find_fault(fault.fault));
            });
        });
        // What is left of several faults together, if the table has no row for it, looks as before.
        rows_[h] = table_->find(together(left).id).value_or(rows_[h]);
    }
}

std::size_t Belief::likeliest() const
{
    return static_cast<std::size_t>(std::ranges::max_element(chances_) - chances_.begin());
}

double Belief::entropy() const
{
    return entropy_of(chances_);
}

double Belief::information(std::size_t check) const
{
    const auto& readings = table_->checks[check]->procedure.readings;
    double left = 0.0;
    double asked = 0.0;
    std::vector<Observation> seen(readings.size());
    std::vector<double> posterior(chances_.size());
    for (std::size_t h = 0; h < chances_.size(); ++h) {
        if (chances_[h] < negligible) {
            continue;
        }
        for (std::uint64_t draw = 0; draw < draws; ++draw) {
            const std::uint64_t seed = 1 + draw + draws * h;
            for (std::size_t r = 0; r < readings.size(); ++r) {
                seen[r] = observe(readings[r], table_->rows[rows_[h]][check][r], seed, r);
            }
            double sum = 0.0;
            for (std::size_t k = 0; k < chances_.size(); ++k) {
                posterior[k] =
                    chances_[k] < negligible ? 0.0 : chances_[k] * likelihood_of(check, seen, k);
                sum += posterior[k];
            }
            for (double& chance : posterior) {
                chance /= sum;
            }
            left += chances_[h] * entropy_of(posterior);
            asked += chances_[h];
        }
    }
    return std::max(entropy() - left / asked, 0.0);
}

double separation(const Table& table, std::size_t one, std::size_t other)
{
    double best = 0.0;
    for (std::size_t c = 0; c < table.checks.size(); ++c) {
        const auto& readings = table.checks[c]->procedure.readings;
        for (std::size_t r = 0; r < readings.size() && best < 0.9999; ++r) {
            best = std::max(best,
                            distance(readings[r], table.rows[one][c][r], table.rows[other][c][r]));
        }
    }
    return best;
}

std::vector<std::size_t> look_alikes(const Table& table, std::size_t hypothesis)
{
    std::vector<std::size_t> alike;
    for (std::size_t h = 0; h < table.hypotheses.size(); ++h) {
        if (h == hypothesis || separation(table, hypothesis, h) < told_apart) {
            alike.push_back(h);
        }
    }
    return alike;
}

} // namespace shop
