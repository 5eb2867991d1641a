#include "scenes/present/fault_list.hpp"

#include "scenes/present/chance.hpp"
#include "scenes/present/phrase.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>
#include <utility>

namespace scenes {
namespace {

/// Letters with marks of the languages that use Latin script here, and what they are without.
constexpr std::array<std::pair<std::string_view, char>, 26> marked{{
    {"\u00e1", 'a'}, {"\u00e0", 'a'}, {"\u00e2", 'a'}, {"\u00e4", 'a'}, {"\u00e9", 'e'},
    {"\u00e8", 'e'}, {"\u00ea", 'e'}, {"\u00ed", 'i'}, {"\u00ee", 'i'}, {"\u00f3", 'o'},
    {"\u00f4", 'o'}, {"\u00f6", 'o'}, {"\u00fa", 'u'}, {"\u00fb", 'u'}, {"\u00fc", 'u'},
    {"\u00f1", 'n'}, {"\u00e7", 'c'}, {"\u00c1", 'a'}, {"\u00c9", 'e'}, {"\u00cd", 'i'},
    {"\u00d3", 'o'}, {"\u00da", 'u'}, {"\u00dc", 'u'}, {"\u00d1", 'n'}, {"\u00c7", 'c'},
    {"\u00c4", 'a'},
}};

std::vector<std::string> words_in(const std::string& text)
{
    std::vector<std::string> words;
    std::string word;
    for (const char c : text + " ") {
        if (c != ' ') {
            word.push_back(c);
        } else if (!word.empty()) {
            words.push_back(std::exchange(word, {}));
        }
    }
    return words;
}

bool has_all(const std::string& text, const std::vector<std::string>& words)
{
    return std::ranges::all_of(
        words, [&](const std::string& word) { return text.find(word) != std::string::npos; });
}

std::string join(std::string_view a, std::string_view b)
{
    return std::string(translated(a)) + " " + std::string(translated(b));
}

} // namespace

bool HiddenFaults::is_hidden(std::string_view id) const
{
    return std::ranges::find(ids_, id) != ids_.end();
}

std::size_t HiddenFaults::count(const sim::Simulator& machine) const
{
    return static_cast<std::size_t>(std::ranges::count_if(ids_, [&](const std::string& id) {
        return machine.rig().find_fault(id) != nullptr && machine.severity(id) > 0.0;
    }));
}

std::optional<sim::SetFault> surprise(const sim::Simulator& machine, std::uint64_t seed)
{
    std::vector<const sim::Fault*> left;
    for (const sim::Fault& fault : machine.rig().faults) {
        if (machine.severity(fault.id) == 0.0) {
            left.push_back(&fault);
        }
    }
    if (left.empty()) {
        return std::nullopt;
    }
    const auto at = static_cast<std::size_t>(chance(seed, 0) * static_cast<double>(left.size()));
    constexpr double mildest = 0.7;
    const double severity = mildest + (1.0 - mildest) * chance(seed, 1);
    return sim::SetFault{left[at]->id, std::round(severity * 100.0) / 100.0};
}

std::string folded(std::string_view text)
{
    std::string result;
    for (std::size_t i = 0; i < text.size();) {
        const auto* const found = std::ranges::find_if(
            marked, [&](const auto& letter) { return text.substr(i).starts_with(letter.first); });
        if (found != marked.end()) {
            result.push_back(found->second);
            i += found->first.size();
        } else {
            result.push_back(static_cast<char>(std::tolower(static_cast<unsigned char>(text[i]))));
            ++i;
        }
    }
    return result;
}

std::vector<const sim::Fault*> find_faults(const sim::Rig& rig, std::string_view search)
{
    const std::vector<std::string> words = words_in(folded(search));
    std::vector<const sim::Fault*> named;
    std::vector<const sim::Fault*> told;
    for (const sim::Fault& fault : rig.faults) {
        const std::string name = folded(join(fault.title, fault.where));
        if (has_all(name, words)) {
            named.push_back(&fault);
        } else if (has_all(name + " " + folded(join(fault.about, fault.found)), words)) {
            told.push_back(&fault);
        }
    }
    std::ranges::stable_sort(named, {}, &sim::Fault::where);
    std::ranges::stable_sort(told, {}, &sim::Fault::where);
    named.insert(named.end(), told.begin(), told.end());
    return named;
}

std::vector<const sim::Fault*> broken_faults(const sim::Simulator& machine,
                                             const HiddenFaults& hidden)
{
    std::vector<const sim::Fault*> broken;
    for (const sim::Fault& fault : machine.rig().faults) {
        if (machine.severity(fault.id) > 0.0 && !hidden.is_hidden(fault.id)) {
            broken.push_back(&fault);
        }
    }
    return broken;
}

} // namespace scenes
