#include "scenes/command_line/values.hpp"

#include "sim/error.hpp"
#include "sim/printable.hpp"
#include "sim/run_sheet.hpp"
#include "sim/words.hpp"

#include <algorithm>
#include <charconv>
#include <stdexcept>
#include <string_view>

namespace scenes {

namespace {

[[noreturn]] void refuse(const std::string& option, const std::string& text,
                         const std::string& allowed)
{
    throw sim::RequestError(option + ": " + sim::in_quotes(text) +
                            " is out of range; allowed: " + allowed);
}

double read_quantity(const std::string& option, const std::string& text, sim::Dimension dimension)
{
    try {
        return sim::parse_quantity(text, dimension);
    } catch (const std::invalid_argument& error) {
        throw sim::RequestError(option + ": " + error.what());
    }
}

/// A whole number that is all of the text; -1 when it is not.
int whole_number(std::string_view text)
{
    int number = -1;
    const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), number);
    return fault == std::errc{} && end == text.data() + text.size() ? number : -1;
}

} // namespace

double read_duration(const std::string& option, const std::string& text, double least)
{
    const double seconds = read_quantity(option, text, sim::Dimension::duration);
    if (!(seconds >= least && seconds <= sim::longest_run)) {
        refuse(option, text, (least > 0.0 ? "1 ms" : "0 s") + std::string(" to 10 day"));
    }
    return seconds;
}

double read_ambient(const std::string& text)
{
    constexpr double coldest = 233.15;
    constexpr double hottest = 333.15;
    constexpr double rounding = 1e-9; // of units with an offset
    const double kelvin = read_quantity("--ambient", text, sim::Dimension::temperature);
    if (!(kelvin >= coldest - rounding && kelvin <= hottest + rounding)) {
        refuse("--ambient", text, "-40 degC to 60 degC");
    }
    return kelvin;
}

std::vector<sim::SetFault> read_faults(const std::vector<std::string>& texts)
{
    std::vector<sim::SetFault> faults;
    for (const std::string& text : texts) {
        const std::size_t equals = text.find('=');
        sim::SetFault fault{text.substr(0, equals), 1.0};
        if (equals != std::string::npos) {
            const std::string severity = text.substr(equals + 1);
            const std::string option = "--fault " + fault.fault;
            fault.severity = read_quantity(option, severity, sim::Dimension::ratio);
            if (!(fault.severity >= 0.0 && fault.severity <= 1.0)) {
                refuse(option, severity, "0 to 1");
            }
        }
        if (std::ranges::find(faults, fault.fault, &sim::SetFault::fault) != faults.end()) {
            throw sim::RequestError("--fault " + fault.fault + " is given twice");
        }
        faults.push_back(std::move(fault));
    }
    return faults;
}

unsigned read_threads(const std::optional<std::string>& text)
{
    if (!text) {
        return 0;
    }
    unsigned count = 0;
    const auto end = std::from_chars(text->data(), text->data() + text->size(), count);
    if (end.ec != std::errc{} || end.ptr != text->data() + text->size() || count < 1 ||
        count > 256) {
        throw sim::RequestError("--threads: " + sim::in_quotes(*text) +
                                " is no number of threads; allowed: 1 to 256");
    }
    return count;
}

double read_pace(const std::string& text)
{
    const double pace = read_quantity("--pace", text, sim::Dimension::ratio);
    if (!(pace >= 0.1 && pace <= 1.0)) {
        refuse("--pace", text, "0.1 to 1");
    }
    return pace;
}

Ground read_theme(const std::string& text)
{
    if (text == "paper") {
        return Ground::paper;
    }
    if (text == "blackboard") {
        return Ground::blackboard;
    }
    throw sim::RequestError("--theme: unknown theme " + sim::in_quotes(text) +
                            sim::choices_hint(text, {"paper", "blackboard"}));
}

PixelSize read_size(const std::string& text)
{
    constexpr auto least = static_cast<int>(least_window);
    constexpr auto most = static_cast<int>(most_window);
    const std::string_view all = text;
    const std::size_t cross = all.find('x');
    const int width = cross == std::string::npos ? -1 : whole_number(all.substr(0, cross));
    const int height = cross == std::string::npos ? -1 : whole_number(all.substr(cross + 1));
    if (width < least || width > most || height < least || height > most) {
        throw sim::RequestError("--size: wants WIDTHxHEIGHT in pixels, got " +
                                sim::in_quotes(text) + "; allowed: 320x320 to 8192x8192");
    }
    return {static_cast<unsigned>(width), static_cast<unsigned>(height)};
}

int read_scale(const std::string& text)
{
    constexpr int least = 100;
    constexpr int most = 200;
    const int percent = whole_number(text);
    if (percent < least || percent > most) {
        throw sim::RequestError("--scale: wants a whole number of per cent, got " +
                                sim::in_quotes(text) + "; allowed: 100 to 200");
    }
    return percent;
}

std::string read_language(const std::string& text)
{
    std::vector<std::string> ids;
    for (const Language& language : languages()) {
        ids.push_back(language.id);
    }
    if (std::ranges::find(ids, text) == ids.end()) {
        throw sim::RequestError("--language: unknown language " + sim::in_quotes(text) +
                                sim::choices_hint(text, ids));
    }
    return text;
}

UnitSet read_units(const std::string& text)
{
    if (text == "si") {
        return UnitSet::si;
    }
    if (text == "us") {
        return UnitSet::us_customary;
    }
    throw sim::RequestError("--units: unknown units " + sim::in_quotes(text) +
                            sim::choices_hint(text, {"si", "us"}));
}

} // namespace scenes
