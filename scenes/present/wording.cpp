#include "scenes/present/wording.hpp"

#include "scenes/present/phrase.hpp"

#include <array>
#include <optional>
#include <vector>

namespace scenes {
namespace {

/// The closer pattern before the wider one: the first that fits is taken.
constexpr std::array patterns{
    // the model and its files
    phrase("the model cannot go on at {0} s: state {1} at {2}"),
    phrase("cannot write {0}: {1}"),
    phrase("cannot make the folder {0}: {1}"),
    phrase("cannot read the folder {0}: {1}"),
    // work orders and their records
    phrase("The work has been handed in."),
    phrase("Something is being done already."),
    phrase("Say first what you expect to read."),
    phrase("Name one cause, four at most."),
    phrase("The estimate is out of range."),
    phrase("The note is too long; 4,000 letters are enough."),
    phrase("Write down a finding first."),
    phrase("cannot write the record {0}: {1}"),
    phrase("cannot be done again: {0}"),
    phrase("what is read now is not what the record says; it was made with another version of the "
           "program, or of its checks"),
    phrase("was made with another state of the order {0}; wanted is the file it was made with"),
    phrase("does not fit: this line or one before it was changed, added or taken out"),
    phrase("{0} at /{1}: {2}|a file, where in it, and what is wrong there"),
    // what a trial of a work order says
    phrase("Even a sound machine does not pass: {0}."),
    phrase("The machine passes every test it is judged by: there is nothing to put right."),
    phrase("No permitted repair undoes all that is wrong."),
    phrase("Mended, the machine still does not pass: {0}."),
    phrase("Good work with the permitted checks does not put it right."),
    phrase("Good work takes {0} minutes, the budget is {1}."),
    phrase("Good work takes parts for {0}, the budget is {1}."),
    phrase("The advice of good work is {0}, the order's is {1}."),
    phrase("Good work does not earn full marks: {0}"),
    phrase("The permitted checks cannot tell what is hidden from: {0}."),
    phrase("The machine cannot be simulated: {0}"),
    phrase("there is no folder for work orders of one's own here"),
    // hints
    phrase("{0}; did you mean {1}? Allowed: {2}"),
    phrase("wants {0} as text with a unit; allowed: {1}|a length, a time..."),
    phrase("wants {0}, got {1} ({2}); allowed: {3}|a length, what was written, what that is"),
    phrase("{0} is out of range; allowed: {1} to {2}"),
    phrase("is no direction; allowed: three numbers that are not all 0"),
    phrase("{0}; allowed: {1}"),
    // files
    phrase("cannot be read: {0}|a file"),
    phrase("there is no such file"),
    phrase("it is not a regular file"),
    phrase("cannot be read to its end|a file"),
    phrase("is over 4 MB; no file of this program is that long|a file"),
    phrase("is not JSON: it ends too early, at {0}|a file"),
    phrase("is not JSON: there is a zero byte at {0}|a file"),
    phrase("is not JSON at {0}|a file"),
    phrase("line {0}, column {1}"),
    phrase("the number is too large to be read"),
    phrase("is nested more than {0} levels deep|a file"),
    // what is in them
    phrase("key {0} is given twice"),
    phrase("key {0} is missing"),
    phrase("unknown key {0}"),
    phrase("unknown doing {0}"),
    phrase("unknown control {0}"),
    phrase("unknown fault {0}"),
    phrase("unknown format {0}"),
    phrase("fault {0} is listed twice"),
    phrase("the run sheet is for the rig {0}, not for {1}"),
    phrase("there is no rig {0}"),
    phrase("this program reads format {0}"),
    phrase("must be an object { }, not {0}"),
    phrase("must be a list [ ], not {0}"),
    phrase("must be text in quotes, not {0}"),
    phrase("must be a number, not {0}"),
    phrase("holds more than {0} entries"),
    phrase("wants three numbers, got {0}"),
    phrase("tips the machine further than it goes"),
    phrase("an object { }"),
    phrase("a list [ ]"),
    phrase("text|a kind of value in a file"),
    phrase("true or false"),
    phrase("a number"),
    phrase("a duration"),
    phrase("a length"),
    phrase("a temperature"),
    phrase("a pressure"),
    phrase("a volume"),
    phrase("a mass"),
    phrase("a speed"),
    phrase("no number"),
    phrase("no unit"),
    phrase("no such unit"),
    phrase("not a usable number"),
    // the system
    phrase("No such file or directory"),
    phrase("Permission denied"),
    phrase("Read-only file system"),
    phrase("No space left on device"),
    phrase("Not a directory"),
    phrase("Is a directory"),
    phrase("File exists"),
    phrase("{0}: {1}|a file and what is wrong with it"),
};

std::string_view without_sense(std::string_view english)
{
    return english.substr(0, english.find('|'));
}

/// What stands for {0}, {1}... when a text is of a pattern.
std::optional<std::vector<std::string_view>> pieces_of(std::string_view text,
                                                       std::string_view pattern)
{
    std::vector<std::string_view> pieces;
    while (true) {
        const std::size_t place = pattern.find("{" + std::to_string(pieces.size()) + "}");
        const std::string_view before = pattern.substr(0, place);
        if (!text.starts_with(before)) {
            return std::nullopt;
        }
        text.remove_prefix(before.size());
        if (place == std::string_view::npos) {
            return text.empty() ? std::optional(pieces) : std::nullopt;
        }
        pattern.remove_prefix(place + 3);
        // Up to where the pattern goes on, or all the rest.
        const std::string_view after =
            pattern.substr(0, pattern.find("{" + std::to_string(pieces.size() + 1)));
        const std::size_t end = after.empty() ? text.size() : text.find(after);
        if (end == std::string_view::npos || end == 0) {
            return std::nullopt;
        }
        pieces.push_back(text.substr(0, end));
        text.remove_prefix(end);
    }
}

/// Whether the chosen language has just this text.
bool is_known(std::string_view text)
{
    return translated(text) != text;
}

/// What assets say, one text or several as a message lists them; nothing where one is not known.
std::optional<std::string> listed(std::string_view text)
{
    if (is_known(text)) {
        return std::string(translated(text));
    }
    constexpr std::string_view comma = ", ";
    constexpr std::string_view last = " and ";
    for (std::size_t at = 1; at < text.size(); ++at) {
        const std::string_view rest = text.substr(at);
        const bool is_last = rest.starts_with(last);
        if ((!is_last && !rest.starts_with(comma)) || !is_known(text.substr(0, at))) {
            continue; // the joint of a longer title
        }
        if (const auto others = listed(rest.substr((is_last ? last : comma).size()))) {
            return filled(is_last ? phrase("{0} and {1}|the last two of a list")
                                  : phrase("{0}, {1}|of a list, and what follows it"),
                          {translated(text.substr(0, at)), *others});
        }
    }
    return std::nullopt;
}

} // namespace

std::string worded(std::string_view message)
{
    if (message.starts_with('"')) {
        return std::string(message); // a name
    }
    if (const auto said = listed(message)) {
        return *said;
    }
    for (const Phrase& pattern : patterns) {
        const auto pieces = pieces_of(message, without_sense(pattern.english()));
        if (!pieces) {
            continue;
        }
        std::array<std::string, 4> words;
        for (std::size_t i = 0; i < pieces->size(); ++i) {
            words[i] = worded((*pieces)[i]);
        }
        return filled(pattern, {words[0], words[1], words[2], words[3]});
    }
    return std::string(message);
}

} // namespace scenes
