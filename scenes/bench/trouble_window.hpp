#pragma once

#include "scenes/present/settings_keeper.hpp"

namespace scenes {

/// A window that only says what is missing, until the person closes it; gives the exit code.
int show_trouble(SettingsKeeper& settings, unsigned frames_per_second);

} // namespace scenes
