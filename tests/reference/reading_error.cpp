#include "tests/reference/reading_error.hpp"

#include <algorithm>
#include <cmath>
#include <sstream>
#include <stdexcept>

using namespace sim;

namespace tests {

namespace {

/// The least change of a reading that a display shows, in SI, by the unit it is shown in.
double resolution(const std::string& unit)
{
    struct Row {
        const char* unit;
        double least;
    };
    static constexpr Row rows[] = {
        {"kPa", 1.0},   {"mL/min", 1e-6 / 60.0},
        {"mL", 1e-8},   {"mm", 1e-5},
        {"degC", 0.01}, {"rpm", 0.1},
        {"W", 0.1},     {"N m", 1e-3},
        {"g/s", 1e-6},  {"%", 1e-4},
        {"m", 1e-4},    {"", 1e-3},
        {"mg", 1e-6},   {"mmol", 1e-3},
        {"s", 1e-3},    {"deg", 1e-3},
    };
    for (const Row& row : rows) {
        if (unit == row.unit) {
            return row.least;
        }
    }
    throw std::logic_error("no display resolution is stated for the unit " + unit);
}

} // namespace

std::vector<double> ranges_of(const Record& run, const std::vector<Network::Reading>& readings)
{
    std::vector<double> ranges;
    for (std::size_t r = 0; r < readings.size(); ++r) {
        double low = run.front()[r];
        double high = low;
        for (const auto& row : run) {
            low = std::min(low, row[r]);
            high = std::max(high, row[r]);
        }
        ranges.push_back(std::max(high - low, resolution(readings[r].unit)));
    }
    return ranges;
}

std::vector<ReadingError> reading_errors(const Record& run, const Record& reference,
                                         const std::vector<double>& ranges,
                                         const std::vector<Network::Reading>& readings)
{
    std::vector<ReadingError> errors;
    for (std::size_t r = 0; r < readings.size(); ++r) {
        if (readings[r].name.starts_with("audit.")) {
            continue;
        }
        ReadingError error{readings[r].name, 0.0, ranges[r], 0};
        for (std::size_t k = 0; k < reference.size(); ++k) {
            const double share = std::abs(run[k][r] - reference[k][r]) / ranges[r];
            if (!(share <= error.share)) { // a number that is none counts too
                error.share = share;
                error.row = k;
            }
        }
        errors.push_back(error);
    }
    std::ranges::sort(errors, std::greater<>{}, &ReadingError::share);
    return errors;
}

std::string worst_of(const std::vector<ReadingError>& errors, double row_seconds)
{
    std::ostringstream text;
    for (std::size_t i = 0; i < std::min<std::size_t>(errors.size(), 10); ++i) {
        text << errors[i].reading << ": " << 100.0 * errors[i].share << " % of " << errors[i].range
             << " (SI) at " << static_cast<double>(errors[i].row) * row_seconds << " s\n";
    }
    return text.str();
}

} // namespace tests
