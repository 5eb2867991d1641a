#include "scenes/present/settings.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <string_view>

namespace scenes {
namespace {

/// The language that the system speaks, as the first letters of a locale's name.
///
/// source: POSIX.1-2017, 8.2: LC_ALL before LC_MESSAGES before LANG
std::string_view system_language()
{
    for (const char* variable : {"LC_ALL", "LC_MESSAGES", "LANG"}) {
        const char* set = std::getenv(variable); // NOLINT(concurrency-mt-unsafe): nothing sets it
        if (set != nullptr && *set != '\0') {
            const std::string_view locale = set;
            return locale.substr(0, locale.find_first_of("_.@"));
        }
    }
    return {};
}

} // namespace

WindowPlace fitted(const WindowPlace& wanted, unsigned screen_width, unsigned screen_height)
{
    const auto along = [](int from, unsigned length, unsigned screen) {
        const auto room = static_cast<int>(screen) - static_cast<int>(length);
        return std::clamp(from, 0, std::max(0, room));
    };
    WindowPlace place;
    place.width = std::clamp(wanted.width, least_window, std::max(least_window, screen_width));
    place.height = std::clamp(wanted.height, least_window, std::max(least_window, screen_height));
    place.left = along(wanted.left, place.width, screen_width);
    place.top = along(wanted.top, place.height, screen_height);
    return place;
}

Settings usual_settings()
{
    Settings settings;
    const std::string_view wanted = system_language();
    for (const Language& language : languages()) {
        if (language.id == wanted) {
            settings.language = language.id;
        }
    }
    return settings;
}

} // namespace scenes
