#pragma once

#include <string>
#include <string_view>

namespace sim {

/// Text that nobody is to read by accident, as letters and digits.
///
/// The key is in the sources: it stops peeking, not a programmer. The same text always gives the
/// same veil.
std::string veil(std::string_view text);

/// What `veil` was given.
///
/// throws:  RequestError when a character was changed, added or lost
std::string unveil(std::string_view veiled);

} // namespace sim
