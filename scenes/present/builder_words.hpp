#pragma once

#include "scenes/present/phrase.hpp"

#include <array>

/// Every text of the screen where an instructor makes a work order.
namespace scenes::words {

// ---- what must be there first
inline constexpr Phrase want_title = phrase("A title");
inline constexpr Phrase want_hidden = phrase("Something wrong with the machine");
inline constexpr Phrase want_customer = phrase("Whose machine it is and what happened to it");
inline constexpr Phrase want_complaint = phrase("The complaint, in the customer's words");
inline constexpr Phrase want_checks = phrase("One check, at least, that may be done");
inline constexpr Phrase want_repairs = phrase("One repair, at least, that may be done");
inline constexpr Phrase want_solved =
    phrase("One check, at least, that the machine must pass afterwards");
inline constexpr Phrase want_marks = phrase("Something that earns marks");
inline constexpr Phrase want_finding = phrase("The finding");

} // namespace scenes::words
