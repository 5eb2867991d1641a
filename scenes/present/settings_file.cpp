#include "scenes/present/settings_file.hpp"

#include "scenes/present/own_folders.hpp"
#include "scenes/present/run_files.hpp"
#include "sim/error.hpp"
#include "sim/file_write.hpp"
#include "sim/json_reader.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <filesystem>
#include <functional>

namespace scenes {
namespace {

namespace fs = std::filesystem;

template <class Value>
struct Named {
    std::string_view name;
    Value value;
};
constexpr std::array grounds{Named<Ground>{"paper", Ground::paper},
                             Named<Ground>{"blackboard", Ground::blackboard}};
constexpr std::array unit_sets{Named<UnitSet>{"si", UnitSet::si},
                               Named<UnitSet>{"us_customary", UnitSet::us_customary}};
constexpr std::array decimal_signs{Named<DecimalSign>{"of_language", DecimalSign::of_language},
                                   Named<DecimalSign>{"point", DecimalSign::point}};

template <class Value, std::size_t Count>
std::string name_of(const std::array<Named<Value>, Count>& all, Value value)
{
    return std::string(std::ranges::find(all, value, &Named<Value>::value)->name);
}

bool read_flag(const sim::JsonNode& node)
{
    const std::string text = node.dump();
    if (text != "true" && text != "false") {
        throw node.wrong("must be true or false");
    }
    return text == "true";
}

int read_whole(const sim::JsonNode& node, int low, int high)
{
    return static_cast<int>(std::lround(node.number_between(low, high)));
}

template <class Value, std::size_t Count>
Value read_name(const sim::JsonNode& node, const std::array<Named<Value>, Count>& all)
{
    const auto found = std::ranges::find(all, node.text(), &Named<Value>::name);
    if (found == all.end()) {
        throw node.wrong("is not among what can be chosen");
    }
    return found->value;
}

/// A language or a machine, whether it is there now or not.
std::string read_id(const sim::JsonNode& node)
{
    constexpr std::size_t longest = 100;
    if (node.text().empty() || node.text().size() > longest) {
        throw node.wrong("must be a short name");
    }
    return node.text();
}

WindowPlace read_window(const sim::JsonNode& node)
{
    constexpr int far = 100'000; // several screens
    constexpr auto least = static_cast<int>(least_window);
    constexpr auto most = static_cast<int>(most_window);
    return {read_whole(node.at("left"), -far, far), read_whole(node.at("top"), -far, far),
            static_cast<unsigned>(read_whole(node.at("width"), least, most)),
            static_cast<unsigned>(read_whole(node.at("height"), least, most))};
}

ProjectorParts read_projector(const sim::JsonNode& node)
{
    return {read_flag(node.at("grade")), read_flag(node.at("standpipes")),
            read_flag(node.at("charts")), read_flag(node.at("panel"))};
}

/// Reads what is there into `settings`; false when some of it makes no sense and was left out.
bool read_all(const sim::JsonNode& node, Settings& settings)
{
    using Read = std::function<void(const sim::JsonNode&)>;
    const std::vector<std::pair<std::string, Read>> readers{
        {"language", [&](const auto& n) { settings.language = read_id(n); }},
        {"decimal_sign",
         [&](const auto& n) { settings.decimal_sign = read_name(n, decimal_signs); }},
        {"units", [&](const auto& n) { settings.units = read_name(n, unit_sets); }},
        {"theme", [&](const auto& n) { settings.ground = read_name(n, grounds); }},
        {"text_percent", [&](const auto& n) { settings.scale_percent = read_whole(n, 100, 200); }},
        {"reduced_motion", [&](const auto& n) { settings.is_motion_reduced = read_flag(n); }},
        {"volume_percent", [&](const auto& n) { settings.volume_percent = read_whole(n, 0, 100); }},
        {"muted", [&](const auto& n) { settings.is_muted = read_flag(n); }},
        {"captions", [&](const auto& n) { settings.has_captions = read_flag(n); }},
        {"machine", [&](const auto& n) { settings.machine = read_id(n); }},
        {"window", [&](const auto& n) { settings.window = read_window(n); }},
        {"projector", [&](const auto& n) { settings.projector = read_projector(n); }}};
    bool is_whole = true;
    for (const std::string& key : node.keys()) {
        const auto reader = std::ranges::find(readers, key, &std::pair<std::string, Read>::first);
        try {
            if (reader != readers.end()) {
                reader->second(node.at(key));
            } else if (key != "format") {
                is_whole = false; // of a later version perhaps: not to be overwritten
            }
        } catch (const sim::AssetError&) {
            is_whole = false;
        }
    }
    return is_whole;
}

/// A path beside the settings that nothing has yet.
std::string free_path(const std::string& path)
{
    std::string aside;
    std::error_code trouble;
    int number = 1;
    do {
        aside = path + ".damaged-" + std::to_string(number++);
    } while (fs::exists(fs::symlink_status(aside, trouble)));
    return aside;
}

void put_aside(const std::string& path, Phrase what, LoadedSettings& loaded)
{
    const std::string aside = free_path(path);
    std::error_code trouble;
    fs::rename(path, aside, trouble);
    loaded.may_save = !trouble;
    if (trouble) {
        loaded.without.push_back(
            {phrase("The settings in {0} are damaged. What is changed now is not remembered."),
             short_path(path)});
    } else {
        loaded.without.push_back({what, short_path(aside)});
    }
}

} // namespace

std::string settings_path()
{
    const std::string folder = settings_folder();
    return folder.empty() ? folder : (fs::path(folder) / "settings.json").string();
}

LoadedSettings load_settings(const std::string& path, const Settings& usual)
{
    LoadedSettings loaded{usual, {}, true};
    std::error_code ignored;
    if (!fs::exists(fs::symlink_status(path, ignored))) {
        // We make the folder for this file alone: with the one and without the other, it was lost.
        if (!path.empty() && fs::exists(fs::path(path).parent_path(), ignored)) {
            loaded.without.push_back(
                {phrase("The settings were lost: {0} is gone. All is as at first."),
                 short_path(path)});
        }
        return loaded;
    }
    try {
        const sim::JsonNode node = sim::JsonNode::load(path);
        node.require_format(1);
        if (!read_all(node, loaded.settings)) {
            put_aside(path,
                      phrase("Some settings made no sense and are as at first. The old ones are "
                             "kept in {0}"),
                      loaded);
        }
    } catch (const sim::AssetError&) {
        loaded.settings = usual;
        put_aside(path,
                  phrase("The settings cannot be read and are as at first. The old file is kept "
                         "as {0}"),
                  loaded);
    }
    return loaded;
}

void save_settings(const Settings& settings, const std::string& path)
{
    nlohmann::ordered_json file{{"format", 1},
                                {"language", settings.language},
                                {"decimal_sign", name_of(decimal_signs, settings.decimal_sign)},
                                {"units", name_of(unit_sets, settings.units)},
                                {"theme", name_of(grounds, settings.ground)},
                                {"text_percent", settings.scale_percent},
                                {"reduced_motion", settings.is_motion_reduced},
                                {"volume_percent", settings.volume_percent},
                                {"muted", settings.is_muted},
                                {"captions", settings.has_captions},
                                {"machine", settings.machine},
                                {"projector",
                                 {{"grade", settings.projector.grade},
                                  {"standpipes", settings.projector.standpipes},
                                  {"charts", settings.projector.charts},
                                  {"panel", settings.projector.panel}}}};
    if (settings.window) {
        file["window"] = {{"left", settings.window->left},
                          {"top", settings.window->top},
                          {"width", settings.window->width},
                          {"height", settings.window->height}};
    }
    make_folder_for(path);
    sim::atomic_write(path, file.dump(2) + "\n");
}

} // namespace scenes
