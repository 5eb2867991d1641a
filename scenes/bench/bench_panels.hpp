#pragma once

#include "scenes/bench/bench_desk.hpp"

// The parts of the panel, from top to bottom; all of them inside an open Panel.

namespace scenes {

/// Pause, steps and speed; while a run is replayed, how far that is.
void show_time(BenchDesk& desk);

/// Buttons for the doings and sliders for the controls of the rig.
void show_controls(BenchDesk& desk);

/// The faults that match the search, a severity slider each.
void show_faults(BenchDesk& desk);

/// Undo, run sheets, and what the bench looks like.
void show_run(BenchDesk& desk);

/// The whole panel as the layout wants it.
void show_panel(BenchDesk& desk, const BenchLayout& layout);
/// The row of pages of a small window.
void show_pages(BenchDesk& desk, const BenchLayout& layout);

} // namespace scenes
