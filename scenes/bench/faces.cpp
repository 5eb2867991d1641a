#include "scenes/bench/faces.hpp"

#include "scenes/present/words.hpp"
#include "sim/rig.hpp"

namespace scenes {

Faces::Faces(SettingsKeeper& settings)
    : files(find_font_files(std::filesystem::path(sim::assets_folder()) / "fonts")), fonts(files)
{
    if (!files.unreadable.empty()) {
        settings.without().push_back({words::no_fonts, files.unreadable.front()});
    }
}

} // namespace scenes
