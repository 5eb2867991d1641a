#pragma once

#include "scenes/ui/widget_list.hpp"

#include <string>
#include <vector>

namespace scenes {

/// What is wrong with a frame: words that are cut off, widgets that lie on each other or reach
/// beyond the window's sides. One line each; empty when all is well.
///
/// unit:    the window's size in pixels
std::vector<std::string> widget_troubles(const std::vector<Widget>& widgets, float width,
                                         float height);

} // namespace scenes
