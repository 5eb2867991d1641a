#pragma once

#include <string>
#include <vector>

namespace scenes {

/// Notes that begin alike up to a colon, told as one: "They lie here: bowl." and "They lie here:
/// tank." become "They lie here: bowl; tank." They come in the order of the first of each.
inline std::vector<std::string> gathered(const std::vector<std::string>& notes)
{
    std::vector<std::string> all;
    std::vector<std::string> leads;
    for (const std::string& note : notes) {
        const std::size_t colon = note.find(": ");
        const std::string lead = colon == std::string::npos ? note : note.substr(0, colon + 2);
        std::size_t at = 0;
        while (at < leads.size() && leads[at] != lead) {
            ++at;
        }
        if (at == leads.size()) {
            leads.push_back(lead);
            all.push_back(note);
        } else if (colon != std::string::npos) {
            std::string& told = all[at];
            if (told.ends_with('.')) {
                told.pop_back();
            }
            told += "; " + note.substr(colon + 2);
        }
    }
    return all;
}

} // namespace scenes
