#pragma once

#include "scenes/shop/attempt.hpp"

#include <string>
#include <vector>

namespace scenes {

/// A reading on the job sheet.
struct SheetReading {
    std::string title;
    std::string shown;
    std::string sound;    ///< what a sound machine shows; may be empty
    std::string expected; ///< the guess made before, and whether it came true; may be empty
};

/// An entry of the job sheet.
struct SheetEntry {
    int number = 0; ///< of the work done; 0 for what is only written
    std::string title;
    std::vector<SheetReading> readings;
    std::string minutes; ///< empty for what takes none
    std::string money;
};

/// The job sheet of an attempt, in the chosen language. Of rankings and findings that follow each
/// other only the last stands.
std::vector<SheetEntry> job_sheet(const shop::Attempt& attempt);

/// An amount of money: whole, or with cents where there are any.
std::string money_text(double amount);

/// Titles of faults in the chosen language, with commas between.
std::string fault_titles(const sim::Rig& rig, const std::vector<std::string>& ids);

/// What an estimate comes to at an hour's price.
double price_of(const shop::Order& order, double minutes, double parts);

} // namespace scenes
