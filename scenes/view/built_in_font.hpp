#pragma once

#include <span>

namespace scenes {

/// A font file that is part of the program, for when none can be read; made when it is built.
std::span<const unsigned char> built_in_font();

} // namespace scenes
