#include "scenes/command_line/csv.hpp"

#include <array>
#include <charconv>
#include <cmath>

namespace scenes {

std::string csv_cell(std::string_view text)
{
    if (text.find_first_of(",\"\r\n") == std::string_view::npos) {
        return std::string(text);
    }
    std::string cell = "\"";
    for (const char c : text) {
        cell += c == '"' ? "\"\"" : std::string(1, c);
    }
    return cell + '"';
}

std::string csv_line(const std::vector<std::string>& cells)
{
    std::string line;
    for (const std::string& cell : cells) {
        line += csv_cell(cell) + ',';
    }
    if (!line.empty()) {
        line.pop_back();
    }
    return line + "\r\n";
}

std::string csv_number(double value)
{
    if (!std::isfinite(value)) {
        return "";
    }
    constexpr int digits = 9;
    std::array<char, 32> text{};
    // Adding zero turns minus zero into zero.
    char* const end = std::to_chars(text.data(), text.data() + text.size(), value + 0.0,
                                    std::chars_format::general, digits)
                          .ptr;
    return {text.data(), end};
}

} // namespace scenes
