#pragma once

#include "scenes/present/bench_model.hpp"

namespace scenes {

/// Shows the next moment at which somebody did something, or the run's end; after that the next
/// branch from where it left. After the last of all the machine goes on.
void show_next_stop(BenchModel& model);
/// The same backwards: the moment before, at last the beginning, then the end of the branch before.
void show_stop_before(BenchModel& model);

} // namespace scenes
