#pragma once

#include "scenes/bench/bench_desk.hpp"
#include "scenes/bench/bench_keys.hpp"

namespace scenes {

/// The dialogs of the bench that are open: keys, saving, opening, machines.
void show_dialogs(BenchDesk& desk, std::span<const KeyLine> keys);

/// Writes the run sheet, and says so; a trouble is told too.
void save_run(BenchDesk& desk, const std::string& path);

/// Keeps the run of a bench that froze, and says where.
void keep_frozen_run(BenchDesk& desk);

} // namespace scenes
