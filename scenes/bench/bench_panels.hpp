#pragma once

#include "scenes/bench/bench_desk.hpp"
#include "scenes/ui/controls.hpp"

#include <functional>

// The parts of the panel, from top to bottom; all of them inside an open Panel.

namespace scenes {

/// Pause, steps and speed; while a run is replayed, how far that is.
void show_time(BenchDesk& desk);

/// Buttons for the doings and sliders for the controls of the rig.
void show_controls(BenchDesk& desk);

/// What is broken, the faults that match the search, a severity slider each; a hidden one.
void show_faults(BenchDesk& desk);

/// Sound on or off, its volume, captions.
void show_sound(BenchDesk& desk);

/// Undo, run sheets, and what the bench looks like.
void show_run(BenchDesk& desk);

/// Shows a slider and posts what it is moved to; a drag is one gesture.
void command_slider(BenchDesk& desk, const Slider& spec, const std::string& id, double value,
                    const std::function<sim::Command(double)>& command);

/// The whole panel as the layout wants it.
void show_panel(BenchDesk& desk, const BenchLayout& layout);
/// The row of pages of a small window.
void show_pages(BenchDesk& desk, const BenchLayout& layout);

} // namespace scenes
