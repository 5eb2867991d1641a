#pragma once

#include "scenes/shop/procedure.hpp"

namespace shop {

/// What an instrument showed, or the senses said, of a reading: a number in the instrument's unit
/// or one of the reading's words; nothing when the check came to its end without taking it.
struct Observation {
    std::optional<double> number;
    std::optional<std::size_t> word;

    [[nodiscard]] bool is_taken() const { return number.has_value() || word.has_value(); }
    bool operator==(const Observation&) const = default;
};

/// A value in SI through the reading's instrument, with its noise; the same for the same seed and
/// place.
Observation observe(const Reading& reading, std::optional<double> value, std::uint64_t seed,
                    std::uint64_t place);
/// The same without noise.
Observation observe_exactly(const Reading& reading, std::optional<double> value);

/// "230 mL", "Wet", or "not read".
std::string observation_text(const Reading& reading, const Observation& observation);

/// What a sound machine would show: "150 to 500 mL", "at most 4", "Dry"; empty when that is not
/// told.
std::string sound_text(const Reading& reading);

/// How likely an instrument shows this where the value in SI is `value`; never less than a trace,
/// since a model may be wrong.
///
/// valid:   slack >= 0, a share of the value that the machine itself may be off by, as another
///          check has disturbed it
double likelihood(const Reading& reading, const Observation& observation,
                  std::optional<double> value, double slack);

} // namespace shop
