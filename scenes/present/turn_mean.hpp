#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <span>
#include <vector>

namespace scenes {

/// The mean of readings over one turn of the engine, from looks a tick apart.
///
/// Between looks readings run straight. The turn need not be a whole number of ticks.
class TurnMean {
public:
    /// valid:   ticks above 0, the length of a turn
    void begin(std::size_t readings, double ticks)
    {
        ticks_ = ticks;
        mean_.assign(readings, 0.0);
    }
    /// How many ticks before the turn's end the first look must be.
    [[nodiscard]] std::size_t reach() const { return static_cast<std::size_t>(std::ceil(ticks_)); }
    /// Takes the readings so many ticks before the turn's end; those further off count nothing.
    void add(std::size_t before, std::span<const double> values)
    {
        const double share = weight(before) / ticks_;
        for (std::size_t i = 0; i < mean_.size(); ++i) {
            mean_[i] += share > 0.0 ? share * values[i] : 0.0;
        }
    }
    /// Once all ticks from `reach()` to 0 are in.
    [[nodiscard]] std::span<const double> mean() const { return mean_; }

private:
    /// The trapezoidal rule, its last strip cut where the turn begins.
    [[nodiscard]] double weight(std::size_t before) const
    {
        const double whole = std::floor(ticks_);
        const double rest = ticks_ - whole;
        const auto at = static_cast<double>(before);
        if (at > whole + 1.0) {
            return 0.0;
        }
        if (at > whole) {
            return rest * rest / 2.0;
        }
        double sum = at < whole ? 0.5 : rest - rest * rest / 2.0;
        sum += at > 0.0 ? 0.5 : 0.0;
        return sum;
    }

    double ticks_ = 1.0;
    std::vector<double> mean_;
};

} // namespace scenes
