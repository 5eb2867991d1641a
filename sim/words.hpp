#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace sim {

/// The word of `choices` that differs least from `word`; empty when none is close.
std::string nearest(std::string_view word, const std::vector<std::string>& choices);

/// The end of a message: `; did you mean "x"?` when one is close, then the list of what is allowed.
std::string choices_hint(std::string_view word, const std::vector<std::string>& choices);

} // namespace sim
