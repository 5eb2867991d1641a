#include "scenes/command_line/given_words.hpp"
#include "scenes/command_line/values.hpp"

#include "sim/error.hpp"
#include "sim/printable.hpp"
#include "sim/words.hpp"

#include <algorithm>

// What the words of the command line ask for.

namespace scenes {
namespace {

/// Which of the names a command's first word is.
std::size_t place_of(const std::string& command, const std::string& word,
                     const std::vector<std::string>& names)
{
    if (word.empty()) {
        throw sim::RequestError(command + " wants to know what" + sim::choices_hint("", names));
    }
    const auto found = std::ranges::find(names, word);
    if (found == names.end()) {
        throw sim::RequestError("cannot " + command + " " + sim::in_quotes(word) +
                                sim::choices_hint(word, names));
    }
    return static_cast<std::size_t>(found - names.begin());
}

OrderRequest order_request(const GivenWords& words)
{
    const std::vector<std::string> names{"check", "play", "seal", "worksheet"};
    const auto what = static_cast<OrderRequest::What>(place_of("order", words.what, names));
    if (words.order.empty()) {
        throw sim::RequestError("order " + words.what + " wants the order's file or id");
    }
    return {what,          words.order,
            words.actions, words.record,
            words.student, words.file,
            words.key,     words.language ? read_language(*words.language) : "en"};
}

ListRequest list_request(const GivenWords& words)
{
    using What = ListRequest::What;
    const auto what =
        static_cast<What>(place_of("list", words.what, {"rigs", "faults", "readings", "commands"}));
    if (what == What::rigs && !words.rig.empty()) {
        throw sim::RequestError("list rigs takes no rig, got " + sim::in_quotes(words.rig));
    }
    if (what != What::rigs && words.rig.empty()) {
        throw sim::RequestError("list " + words.what +
                                " wants a rig; standpipe list rigs names them");
    }
    return {what, words.rig, words.as_json};
}

TraceRequest trace_request(const GivenWords& words)
{
    TraceRequest request;
    request.rig = words.rig;
    request.faults = read_faults(words.faults);
    request.sheet = words.sheet;
    request.ambient = read_ambient(words.ambient.value_or("20 degC"));
    if (words.length) {
        request.length = read_duration("--for", *words.length, 0.0);
    }
    request.every = read_duration("--every", words.every.value_or("0.1 s"), sim::tick_length);
    request.may_leap = words.may_leap;
    request.file = words.file;
    return request;
}

Appearance appearance(const GivenWords& words)
{
    Appearance look;
    const auto read = [](const std::optional<std::string>& text, auto reader, auto& place) {
        if (text) {
            place = reader(*text);
        }
    };
    read(words.theme, read_theme, look.ground);
    read(words.size, read_size, look.size);
    read(words.scale, read_scale, look.scale_percent);
    read(words.language, read_language, look.language);
    read(words.units, read_units, look.units);
    look.is_projector = words.is_projector;
    return look;
}

ShotRequest shot_request(const GivenWords& words)
{
    return {words.scene,       words.shown_rig,
            words.sheet,       read_duration("--at", words.at.value_or("30 s"), 0.0),
            appearance(words), *words.file,
            words.part,        words.boxes,
            words.is_shut,     words.shown_order,
            words.actions,     words.page};
}

SoundRequest sound_request(const GivenWords& words)
{
    SoundRequest request;
    request.rig = words.rig;
    request.faults = read_faults(words.faults);
    request.sheet = words.sheet;
    request.from_seconds = read_duration("--at", words.at.value_or("0 s"), 0.0);
    request.length_seconds =
        read_duration("--for", words.length.value_or("10 s"), sim::tick_length);
    request.pace = read_pace(words.pace.value_or("1"));
    request.file = *words.file;
    return request;
}

} // namespace

Request request_from(std::string_view command, const GivenWords& words)
{
    if (command == "list") {
        return list_request(words);
    }
    if (command == "trace") {
        return trace_request(words);
    }
    if (command == "check") {
        return CheckRequest{words.rig, words.checks, read_faults(words.faults),
                            read_ambient(words.ambient.value_or("20 degC"))};
    }
    if (command == "tell-apart") {
        return TellApartRequest{words.rig,
                                words.checks,
                                words.faults,
                                read_ambient(words.ambient.value_or("20 degC")),
                                words.shows_readings,
                                words.file,
                                read_threads(words.threads)};
    }
    if (command == "order") {
        return order_request(words);
    }
    if (command == "mark") {
        return MarkRequest{words.records, words.csv, words.html, words.xapi};
    }
    if (command == "shot") {
        return shot_request(words);
    }
    if (command == "sound") {
        return sound_request(words);
    }
    if (command == "pictures") {
        return PicturesRequest{*words.file, words.shown_rig};
    }
    return WindowRequest{appearance(words), words.shown_rig};
}

} // namespace scenes
