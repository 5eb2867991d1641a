#pragma once

#include <optional>
#include <ostream>
#include <string>
#include <vector>

namespace scenes {

/// Asks which faults the workshop's checks can tell apart, by simulating all of them.
struct TellApartRequest {
    std::string rig;
    std::vector<std::string> checks; ///< all when none is named
    std::vector<std::string> faults; ///< all when none is named
    double ambient = 293.15;
    bool shows_readings = false;      ///< the whole table, as CSV
    std::optional<std::string> store; ///< the file that keeps what is worked out
    unsigned threads = 0;             ///< as many as the computer has when 0
};

/// Prints each check's worth, every check's readings if wanted, and the faults that no check tells
/// apart. Says on `progress` how far it is. False when it was interrupted; it can be gone on with.
///
/// throws:  RequestError, AssetError
bool tell_apart(const TellApartRequest& request, std::ostream& out, std::ostream& progress);

} // namespace scenes
