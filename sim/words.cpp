#include "words.hpp"

#include <algorithm>
#include <numeric>

namespace sim {

namespace {
std::size_t edit_distance(std::string_view x, std::string_view y)
{
    std::vector<std::size_t> row(y.size() + 1);
    std::iota(row.begin(), row.end(), std::size_t{0});
    for (std::size_t i = 0; i < x.size(); ++i) {
        std::size_t diagonal = row[0];
        row[0] = i + 1;
        for (std::size_t j = 0; j < y.size(); ++j) {
            const std::size_t replaced = diagonal + (x[i] == y[j] ? 0 : 1);
            diagonal = row[j + 1];
            row[j + 1] = std::min({row[j] + 1, row[j + 1] + 1, replaced});
        }
    }
    return row.back();
}
} // namespace

std::string nearest(std::string_view word, const std::vector<std::string>& choices)
{
    constexpr std::size_t longest = 60; // no name is longer, and comparing costs time
    std::string best;
    if (word.size() > longest) {
        return best;
    }
    // Close: at most two letters or a third of them differ, and not all of them.
    std::size_t least = std::min(std::max<std::size_t>(2, word.size() / 3) + 1, word.size());
    for (const std::string& choice : choices) {
        const std::size_t distance = edit_distance(word, choice);
        if (distance < least) {
            least = distance;
            best = choice;
        }
    }
    return best;
}

std::string choices_hint(std::string_view word, const std::vector<std::string>& choices)
{
    const std::string close = nearest(word, choices);
    std::string list;
    for (const std::string& choice : choices) {
        list += (list.empty() ? "" : ", ") + choice;
    }
    return (close.empty() ? "; allowed: " : "; did you mean \"" + close + "\"? Allowed: ") +
           (list.empty() ? "none" : list);
}

} // namespace sim
