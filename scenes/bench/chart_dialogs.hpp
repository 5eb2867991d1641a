#pragma once

#include "scenes/bench/chart_board.hpp"

namespace scenes {

/// The dialogs about one chart, while one is open: the choice of its readings, and its export.
void show_chart_dialogs(BenchDesk& desk, ChartBoard& board);

} // namespace scenes
