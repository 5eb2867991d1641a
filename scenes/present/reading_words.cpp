#include "scenes/present/reading_words.hpp"

#include "scenes/present/order_words.hpp"
#include "scenes/present/readout.hpp"
#include "scenes/view/number.hpp"

#include <algorithm>
#include <array>

namespace scenes {
namespace {

const std::array<std::string, 3> guess_ids{"lower", "sound", "higher"};

std::string with_sign(const shop::Reading& reading, const std::string& number)
{
    const std::string_view unit = reading.instrument->unit.name;
    return unit.empty() ? number : number + " " + std::string(translated(unit));
}

} // namespace

std::string shown_text(const shop::Reading& reading, const shop::Observation& observation)
{
    if (observation.word) {
        return std::string(translated(reading.words[*observation.word].say));
    }
    if (observation.number) {
        return with_sign(reading, fixed_text(*observation.number, reading.instrument->decimals()));
    }
    return words::not_read;
}

std::string sound_words(const shop::Reading& reading)
{
    std::string text;
    for (const std::string& word : reading.sound_words) {
        const std::string_view shown = translated(word);
        text = text.empty() ? std::string(shown) : filled(words::one_of_two, {text, shown});
    }
    const shop::Instrument& tool = *reading.instrument;
    const auto limit = [&](double si) { return fixed_text(tool.in_unit(si), tool.decimals()); };
    if (!text.empty() || (!reading.least && !reading.most)) {
        return text;
    }
    if (reading.least && reading.most) {
        return with_sign(reading,
                         filled(words::range, {limit(*reading.least), limit(*reading.most)}));
    }
    const double bound = reading.least ? *reading.least : *reading.most;
    return filled(reading.least ? words::at_least : words::at_most,
                  {with_sign(reading, limit(bound))});
}

std::string place_of_reading(const shop::Reading& reading, const shop::Observation& observation)
{
    if (observation.word) {
        return reading.words[*observation.word].say;
    }
    if (!observation.number) {
        return "";
    }
    const shop::Instrument& tool = *reading.instrument;
    // A reading that its resolution puts on the bound is a sound one.
    const double half = 0.5 * tool.resolution;
    if (reading.least && *observation.number < tool.in_unit(*reading.least) - half) {
        return guess_ids[0];
    }
    if (reading.most && *observation.number > tool.in_unit(*reading.most) + half) {
        return guess_ids[2];
    }
    return guess_ids[1];
}

std::string guess_text(const shop::Reading& reading, const std::string& guess)
{
    const auto found = std::ranges::find(guess_ids, guess);
    if (!reading.words.empty() || found == guess_ids.end()) {
        return std::string(translated(guess));
    }
    return words::guesses[static_cast<std::size_t>(found - guess_ids.begin())];
}

std::vector<std::string> guesses_of(const shop::Reading& reading)
{
    if (reading.words.empty()) {
        return {guess_ids.begin(), guess_ids.end()};
    }
    std::vector<std::string> guesses;
    for (const shop::Reading::Band& band : reading.words) {
        guesses.push_back(band.say);
    }
    return guesses;
}

} // namespace scenes
