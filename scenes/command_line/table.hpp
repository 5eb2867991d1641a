#pragma once

#include <string>
#include <vector>

namespace scenes {

/// Lines of cells as text whose columns begin below each other, two blanks apart.
///
/// shape:   every row has as many cells as the first
std::string aligned(const std::vector<std::vector<std::string>>& rows);

} // namespace scenes
