#include "scenes/present/run_files.hpp"

#include "scenes/present/own_folders.hpp"
#include "sim/error.hpp"
#include "sim/printable.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string_view>
#include <system_error>

namespace scenes {

namespace fs = std::filesystem;

std::string runs_folder()
{
    const std::string data = data_folder();
    return data.empty() ? "runs" : (fs::path(data) / "runs").string();
}

namespace {

/// What the person's user-dirs file says about documents; empty when it says nothing.
std::string documents_by_file(const fs::path& home)
{
    const char* config = std::getenv("XDG_CONFIG_HOME");
    const fs::path folder =
        config != nullptr && fs::path(config).is_absolute() ? fs::path(config) : home / ".config";
    std::ifstream file(folder / "user-dirs.dirs");
    constexpr std::string_view key = "XDG_DOCUMENTS_DIR=\"";
    constexpr std::string_view home_word = "$HOME/";
    for (std::string line; std::getline(file, line);) {
        if (!line.starts_with(key) || !line.ends_with('"') || line.size() <= key.size()) {
            continue;
        }
        const std::string value = line.substr(key.size(), line.size() - key.size() - 1);
        if (value.starts_with(home_word)) {
            return (home / value.substr(home_word.size())).string();
        }
        return fs::path(value).is_absolute() ? value : "";
    }
    return "";
}

} // namespace

std::string charts_folder()
{
    const char* documents = std::getenv("XDG_DOCUMENTS_DIR");
    if (documents != nullptr && fs::path(documents).is_absolute()) {
        return documents;
    }
    const char* home = std::getenv("HOME");
    if (home == nullptr || !fs::path(home).is_absolute()) {
        return ".";
    }
    const std::string by_file = documents_by_file(home);
    if (!by_file.empty()) {
        return by_file;
    }
    std::error_code trouble;
    const fs::path usual = fs::path(home) / "Documents";
    return fs::is_directory(usual, trouble) ? usual.string() : std::string(home);
}

std::string new_run_path(const std::string& folder, const std::string& rig, std::time_t now)
{
    return new_path(folder, rig, now, ".json");
}

std::string new_path(const std::string& folder, const std::string& word, std::time_t now,
                     std::string_view extension)
{
    std::tm day{};
    localtime_r(&now, &day);
    std::array<char, 32> stamp{};
    std::strftime(stamp.data(), stamp.size(), "-%Y-%m-%d-%H%M%S", &day);
    const std::string stem = (fs::path(folder) / word).string() + stamp.data();
    std::string path = stem + std::string(extension);
    std::error_code trouble;
    for (int i = 2; fs::exists(path, trouble); ++i) {
        path = stem + "-" + std::to_string(i) + std::string(extension);
    }
    return path;
}

std::vector<std::string> saved_runs(const std::string& folder)
{
    std::vector<std::string> paths;
    std::error_code trouble;
    fs::directory_iterator entry(folder, trouble);
    for (; !trouble && entry != fs::directory_iterator(); entry.increment(trouble)) {
        if (entry->path().extension() == ".json") {
            paths.push_back(entry->path().string());
        }
    }
    std::ranges::sort(paths, std::ranges::greater());
    return paths;
}

std::string short_path(const std::string& path)
{
    const char* home = std::getenv("HOME");
    const std::string prefix = home == nullptr ? "" : std::string(home) + "/";
    return prefix.size() > 1 && path.starts_with(prefix) ? "~/" + path.substr(prefix.size()) : path;
}

void make_folder_for(const std::string& path)
{
    const fs::path folder = fs::path(path).parent_path();
    std::error_code trouble;
    if (!folder.empty()) {
        fs::create_directories(folder, trouble);
    }
    if (trouble) {
        throw sim::RequestError("cannot make the folder " + sim::in_quotes(folder.string()) + ": " +
                                trouble.message());
    }
}

} // namespace scenes
