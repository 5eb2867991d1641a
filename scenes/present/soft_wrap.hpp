#pragma once

#include <span>
#include <string_view>

namespace scenes {

/// Breaks a text into lines by ends of lines in the place of spaces, and puts spaces back where
/// lines ended before: every character keeps its place, so that a caret in it stays where it is. A
/// word that is wider than a line stands on one of its own.
///
/// unit:    pixels, as `width_of` gives them of a piece of the text
template <class WidthOf>
void wrap_softly(std::span<char> text, float width, WidthOf width_of)
{
    std::size_t line = 0; // where it begins
    std::size_t gap = 0;  // the last space of the line; none when it is where the line begins
    for (std::size_t i = 0; i <= text.size(); ++i) {
        if (i < text.size() && text[i] != ' ' && text[i] != '\n') {
            continue;
        }
        if (i < text.size()) {
            text[i] = ' ';
        }
        if (gap > line && width_of(std::string_view(text.data() + line, i - line)) > width) {
            text[gap] = '\n';
            line = gap + 1;
        }
        gap = i;
    }
}

} // namespace scenes
