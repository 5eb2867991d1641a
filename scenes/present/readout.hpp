#pragma once

#include "sim/network.hpp"

#include <string>
#include <string_view>

namespace scenes {

/// How readings of one unit are shown: the one conversion from SI to what a person reads.
struct Readout {
    std::string unit;
    double factor = 1.0; ///< SI per shown unit
    double offset = 0.0; ///< SI at shown zero
    int decimals = 1;
    double least_span = 1.0; ///< of a chart's axis in shown units: less would show mere noise

    [[nodiscard]] double shown(double si) const { return (si - offset) / factor; }
};

/// The readout of a reading, by its unit.
///
/// throws:  std::logic_error when the unit is unknown
Readout readout_of(const sim::Network::Reading& reading);

/// A reading's name as words in the chosen language: "main_jet.flow" becomes "main jet flow".
std::string reading_title(std::string_view name);

/// The words with a capital at their beginning.
std::string capitalised(std::string text);

/// A time on the machine's clock: "2:03.45", with hours when there are any.
std::string clock_text(double seconds);

} // namespace scenes
