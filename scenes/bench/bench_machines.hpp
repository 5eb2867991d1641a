#pragma once

#include "scenes/bench/bench_desk.hpp"

namespace scenes {

/// Opens the dialog that chooses the machine on the bench.
void open_machines(BenchDesk& desk);

/// That dialog, while it is open.
void show_machines(BenchDesk& desk);

} // namespace scenes
