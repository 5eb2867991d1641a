#include "scenes/present/own_folders.hpp"

#include <cstdlib>
#include <filesystem>

namespace scenes {
namespace {

namespace fs = std::filesystem;

constexpr const char* program = "standpipe";

/// The folder an environment variable names, with more of the way; empty when it names none. A
/// relative path names none: the specification has such ones ignored.
fs::path folder_from(const char* variable, const fs::path& rest)
{
    const char* named = std::getenv(variable); // NOLINT(concurrency-mt-unsafe): nothing sets it
    return named != nullptr && fs::path(named).is_absolute() ? fs::path(named) / rest : fs::path();
}

std::string first_of(const fs::path& wanted, const fs::path& otherwise)
{
    return (wanted.empty() ? otherwise : wanted).string();
}

} // namespace

std::string settings_folder()
{
#if defined(_WIN32)
    return first_of(folder_from("APPDATA", program), {});
#elif defined(__APPLE__)
    return first_of(folder_from("HOME", fs::path("Library/Application Support") / program), {});
#else
    return first_of(folder_from("XDG_CONFIG_HOME", program),
                    folder_from("HOME", fs::path(".config") / program));
#endif
}

std::string data_folder()
{
#if defined(_WIN32) || defined(__APPLE__)
    return settings_folder();
#else
    return first_of(folder_from("XDG_DATA_HOME", program),
                    folder_from("HOME", fs::path(".local/share") / program));
#endif
}

std::string cache_folder()
{
#if defined(_WIN32)
    return first_of(folder_from("LOCALAPPDATA", program), {});
#elif defined(__APPLE__)
    return first_of(folder_from("HOME", fs::path("Library/Caches") / program), {});
#else
    return first_of(folder_from("XDG_CACHE_HOME", program),
                    folder_from("HOME", fs::path(".cache") / program));
#endif
}

} // namespace scenes
