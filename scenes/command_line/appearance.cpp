#include "scenes/app.hpp"

namespace scenes {

void Appearance::apply(Settings& settings) const
{
    settings.ground = ground.value_or(settings.ground);
    settings.scale_percent = scale_percent.value_or(settings.scale_percent);
    settings.language = language.value_or(settings.language);
    settings.units = units.value_or(settings.units);
    if (size) {
        const WindowPlace place = settings.window.value_or(WindowPlace{});
        settings.window = WindowPlace{place.left, place.top, size->width, size->height};
    }
}

} // namespace scenes
