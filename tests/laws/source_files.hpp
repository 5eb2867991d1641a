#pragma once

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

namespace tests {

inline std::string text_of(const std::filesystem::path& file)
{
    std::ifstream stream(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), {}};
}

/// All sources and headers under a folder of the project, sorted.
inline std::vector<std::filesystem::path> sources_under(const std::string& folder)
{
    std::vector<std::filesystem::path> files;
    for (const auto& entry :
         std::filesystem::recursive_directory_iterator(std::string(SOURCE_DIR) + "/" + folder)) {
        if (entry.path().extension() == ".cpp" || entry.path().extension() == ".hpp") {
            files.push_back(entry.path());
        }
    }
    std::ranges::sort(files);
    return files;
}

/// Whether `word` stands in `text` with no letter, digit or underscore at either end.
inline bool has_word(const std::string& text, const std::string& word)
{
    const auto is_part_of_word = [&](std::size_t at) {
        return at < text.size() &&
               (std::isalnum(static_cast<unsigned char>(text[at])) != 0 || text[at] == '_');
    };
    for (std::size_t at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) {
        if (!(at > 0 && is_part_of_word(at - 1)) && !is_part_of_word(at + word.size())) {
            return true;
        }
    }
    return false;
}

} // namespace tests
