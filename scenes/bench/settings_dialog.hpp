#pragma once

#include "scenes/bench/bench_desk.hpp"

namespace scenes {

/// The dialog of the settings, while it is open.
void show_settings(BenchDesk& desk);

/// From paper to blackboard or back.
void switch_ground(SettingsKeeper& settings);

/// To the next larger size of text, the next smaller one, or with 0 to the usual one.
void change_text_size(SettingsKeeper& settings, int steps);

/// Speaks the language, shows the units and looks as the settings say. A language that cannot be
/// had is told about and does not change what is remembered. The height is as for `look_of`.
void apply_settings(SettingsKeeper& settings, float projector_height, Interface& ui);

/// What everything looks like with these settings. In the projector view type grows with the height
/// of the window, in pixels, and lines are heavier; 0 is for the usual view.
Look look_of(const Settings& settings, float projector_height);

} // namespace scenes
