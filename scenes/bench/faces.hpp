#pragma once

#include "scenes/present/settings_keeper.hpp"
#include "scenes/view/fonts.hpp"

namespace scenes {

/// The fonts of the program; those that cannot be read are told, and others stand in.
struct Faces {
    explicit Faces(SettingsKeeper& settings);

    FontFiles files;
    Fonts fonts;
};

} // namespace scenes
