#pragma once

#include "sim/network.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace scenes {

/// In which units measured numbers are shown; files and the model know nothing of it.
enum class UnitSet { si, us_customary };

/// Shows everything in these units from now on, and makes what was worded before stale.
void choose_units(UnitSet units);
UnitSet chosen_units();

/// How readings of one unit are shown: the one conversion from SI to what a person reads.
struct Readout {
    std::string unit;    ///< by the name that files have for it
    std::string sign;    ///< as a person reads it: "°C" for "degC"
    double factor = 1.0; ///< SI per shown unit
    double offset = 0.0; ///< SI at shown zero
    int decimals = 1;
    double least_span = 1.0; ///< of a chart's axis in shown units: less would show mere noise

    [[nodiscard]] double shown(double si) const { return (si - offset) / factor; }
    /// The number and its unit.
    [[nodiscard]] std::string text(double si) const;
};

/// The readout of a reading in the chosen units.
///
/// throws:  std::logic_error when its unit is unknown
Readout readout_of(const sim::Network::Reading& reading);

/// The readout of whatever is shown in a unit, "mm" say, when SI is chosen.
///
/// throws:  std::logic_error when the unit is unknown
Readout readout_of(std::string_view unit);

/// Heads of fuel are read to a whole millimetre or a hundredth of an inch.
int head_decimals();

/// A unit as a person reads it.
std::string unit_sign(std::string_view unit);

/// A reading's name as words in the chosen language: "main_jet.flow" becomes "main jet flow".
std::string reading_title(std::string_view name);

/// The words with a capital at their beginning.
std::string capitalised(std::string text);

/// A time on the machine's clock: "2:03.45", with hours when there are any.
std::string clock_text(double seconds);
/// The same to the tick, in thousandths.
std::string tick_clock_text(double seconds);
/// The same without hundredths.
std::string whole_clock_text(double seconds);

} // namespace scenes
