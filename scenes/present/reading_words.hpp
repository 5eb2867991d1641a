#pragma once

#include "scenes/shop/observation.hpp"

#include <string>

// What a workshop reading showed, in the chosen language.

namespace scenes {

/// "230 mL", "Wet", or that it was not read.
std::string shown_text(const shop::Reading& reading, const shop::Observation& observation);

/// What a sound machine would show: "150 to 500 mL", "at most 4", "Dry"; empty when that is not
/// told.
std::string sound_words(const shop::Reading& reading);

/// Where what was read lies: "lower", "sound" or "higher", or the reading's own word, as a guess of
/// it is written; empty when it was not read.
std::string place_of_reading(const shop::Reading& reading, const shop::Observation& observation);

/// A guess as a person reads it.
std::string guess_text(const shop::Reading& reading, const std::string& guess);

/// The guesses that a reading allows, as they are written.
std::vector<std::string> guesses_of(const shop::Reading& reading);

} // namespace scenes
