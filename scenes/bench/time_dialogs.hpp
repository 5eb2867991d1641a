#pragma once

#include "scenes/bench/bench_desk.hpp"

namespace scenes {

/// The dialogs about time, while one is open: going ahead, and branches.
void show_time_dialogs(BenchDesk& desk);

void open_ahead(BenchDesk& desk);
void open_branches(BenchDesk& desk);

/// What changed first, as a part of the panel.
void show_changes(BenchDesk& desk);

/// While long work is done: how far it is and how to stop it.
void show_long_work(BenchDesk& desk);

} // namespace scenes
