#pragma once

#include "scenes/present/phrase.hpp"
#include "scenes/present/wording.hpp"

#include <string>

namespace scenes {

/// One line about something that the program does without; worded when it is shown, since it may
/// be found before the language is known.
struct Without {
    Phrase text;
    std::string piece; ///< for the place {0} of the text
    [[nodiscard]] std::string line() const { return filled(text, {worded(piece)}); }
};

} // namespace scenes
