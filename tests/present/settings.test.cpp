#include "scenes/present/settings.hpp"
#include "scenes/present/own_folders.hpp"
#include "scenes/present/settings_keeper.hpp"
#include "sim/error.hpp"
#include "tests/temporary_folder.hpp"

#include <doctest/doctest.h>

#include <cstdlib>
#include <iterator>
#include <optional>
#include <random>

using namespace scenes;

TEST_SUITE_BEGIN("present");

namespace {

/// Sets an environment variable while it lives; without a value, takes it away.
class Environment {
public:
    Environment(const char* name, const char* value) : name_(name)
    {
        const char* before = std::getenv(name);
        before_ = before == nullptr ? std::nullopt : std::optional<std::string>(before);
        put(value);
    }
    ~Environment() { put(before_ ? before_->c_str() : nullptr); }
    Environment(const Environment&) = delete;
    Environment& operator=(const Environment&) = delete;

private:
    void put(const char* value) const
    {
        if (value == nullptr) {
            ::unsetenv(name_);
        } else {
            ::setenv(name_, value, 1);
        }
    }
    const char* name_;
    std::optional<std::string> before_;
};

Settings unusual()
{
    Settings settings;
    settings.language = "es";
    settings.decimal_sign = DecimalSign::point;
    settings.units = UnitSet::us_customary;
    settings.ground = Ground::blackboard;
    settings.scale_percent = 175;
    settings.is_motion_reduced = true;
    settings.volume_percent = 5;
    settings.is_muted = true;
    settings.has_captions = true;
    settings.machine = "trimmer";
    settings.window = WindowPlace{-3, 40, 1366, 768};
    settings.projector = {false, false, true, true};
    return settings;
}

std::size_t files_in(const TemporaryFolder& folder)
{
    const auto all =
        std::filesystem::directory_iterator(std::filesystem::path(folder.file("x")).parent_path());
    return static_cast<std::size_t>(std::distance(begin(all), end(all)));
}

} // namespace

TEST_CASE("settings come back from their file as they were")
{
    const TemporaryFolder folder;
    const std::string path = folder.file("new/settings.json");
    save_settings(unusual(), path);
    const LoadedSettings loaded = load_settings(path, Settings());
    CHECK(loaded.settings == unusual());
    CHECK(loaded.without.empty());
    CHECK(loaded.may_save);
}

TEST_CASE("a first start has nothing to complain of and a lost file is told")
{
    const TemporaryFolder folder;
    const LoadedSettings first = load_settings(folder.file("none/settings.json"), unusual());
    CHECK(first.settings == unusual());
    CHECK(first.without.empty());
    const LoadedSettings lost = load_settings(folder.file("settings.json"), unusual());
    CHECK(lost.settings == unusual());
    REQUIRE(lost.without.size() == 1);
    CHECK(lost.without[0].line().find("settings.json") != std::string::npos);
}

TEST_CASE("settings full of noise are kept aside and give way to the usual ones")
{
    std::mt19937 random(7);
    for (const std::string& good : {std::string(), std::string("{\"format\": 1}")}) {
        for (int round = 0; round < 20; ++round) {
            const TemporaryFolder folder;
            std::string noise = good;
            for (int i = 0; i < 10 + 40 * round; ++i) {
                noise.insert(random() % (noise.size() + 1), 1, static_cast<char>(random() % 256));
            }
            const std::string path = folder.with("settings.json", noise);
            const LoadedSettings loaded = load_settings(path, Settings());
            CHECK(loaded.settings == Settings());
            CHECK(loaded.without.size() == 1);
            CHECK(loaded.may_save);
            CHECK(folder.text_of("settings.json.damaged-1") == noise);
        }
    }
}

TEST_CASE("what makes sense in a partly wrong file is kept and the file too")
{
    const TemporaryFolder folder;
    const std::string text = R"({"format": 1, "theme": "blackboard", "text_percent": 9000,
        "units": "furlongs", "volume_percent": 30, "of_a_later_version": true})";
    const std::string path = folder.with("settings.json", text);
    Settings expected;
    expected.ground = Ground::blackboard;
    expected.volume_percent = 30;
    SettingsKeeper keeper(path, load_settings(path, Settings()));
    CHECK(keeper.now() == expected);
    CHECK(keeper.without().size() == 1);
    CHECK(folder.text_of("settings.json.damaged-1") == text);
    keeper.save();
    CHECK(load_settings(path, Settings()).settings == expected);
    CHECK(load_settings(path, Settings()).without.empty());
    CHECK(files_in(folder) == 2);
}

TEST_CASE("a damaged file never takes the place of another one")
{
    const TemporaryFolder folder;
    (void)folder.with("settings.json.damaged-1", "the first");
    const std::string path = folder.with("settings.json", "{");
    (void)load_settings(path, Settings());
    CHECK(folder.text_of("settings.json.damaged-1") == "the first");
    CHECK(folder.text_of("settings.json.damaged-2") == "{");
}

TEST_CASE("an option is in effect and not remembered until it is changed by hand")
{
    const TemporaryFolder folder;
    const std::string path = folder.file("settings.json");
    save_settings(unusual(), path);
    {
        SettingsKeeper keeper(path, load_settings(path, Settings()));
        keeper.override_with([](Settings& s) {
            s.ground = Ground::paper;
            s.scale_percent = 100;
        });
        CHECK(keeper.now().ground == Ground::paper);
        keeper.change([](Settings& s) { s.is_muted = false; });
        keeper.change([](Settings& s) { s.scale_percent = 125; });
        keeper.save();
    }
    Settings expected = unusual();
    expected.is_muted = false;
    expected.scale_percent = 125;
    CHECK(load_settings(path, Settings()).settings == expected);
}

TEST_CASE("changes are written down once they have settled")
{
    const TemporaryFolder folder;
    const std::string path = folder.file("settings.json");
    save_settings(Settings(), path);
    SettingsKeeper keeper(path, load_settings(path, Settings()));
    for (int percent = 0; percent < 50; ++percent) {
        keeper.change([=](Settings& s) { s.volume_percent = percent; });
        keeper.tend(0.1);
    }
    CHECK(load_settings(path, Settings()).settings == Settings());
    keeper.tend(0.6);
    CHECK(load_settings(path, Settings()).settings.volume_percent == 49);
}

TEST_CASE("settings that cannot be written are told once")
{
    const TemporaryFolder folder;
    const std::string path = folder.with("a file", "") + "/settings.json";
    SettingsKeeper keeper(path, LoadedSettings{});
    for (int i = 0; i < 3; ++i) {
        keeper.change([=](Settings& s) { s.volume_percent = i; });
        keeper.save();
    }
    CHECK(keeper.now().volume_percent == 2);
    CHECK(keeper.without().size() == 1);
}

// source: XDG Base Directory Specification 0.8
TEST_CASE("settings lie where the platform wants them")
{
#if !defined(_WIN32) && !defined(__APPLE__)
    const Environment home("HOME", "/home/someone");
    {
        const Environment config("XDG_CONFIG_HOME", "/somewhere/else");
        CHECK(settings_path() == "/somewhere/else/standpipe/settings.json");
    }
    for (const char* config : {static_cast<const char*>(nullptr), "", "relative/path"}) {
        const Environment none("XDG_CONFIG_HOME", config);
        CHECK(settings_path() == "/home/someone/.config/standpipe/settings.json");
    }
    const Environment no_config("XDG_CONFIG_HOME", nullptr);
    const Environment no_home("HOME", nullptr);
    CHECK(settings_path().empty());
#endif
}

TEST_CASE("a window comes back onto the screen there is")
{
    CHECK(fitted({100, 50, 1280, 720}, 1920, 1080) == WindowPlace{100, 50, 1280, 720});
    CHECK(fitted({0, 0, 1280, 720}, 1024, 600) == WindowPlace{0, 0, 1024, 600});
    CHECK(fitted({1900, 1000, 1280, 720}, 1920, 1080) == WindowPlace{640, 360, 1280, 720});
    CHECK(fitted({-5000, -5000, 1280, 720}, 1920, 1080) == WindowPlace{0, 0, 1280, 720});
    CHECK(fitted({0, 0, 1, 1}, 1920, 1080) == WindowPlace{0, 0, least_window, least_window});
}

// source: POSIX.1-2017, 8.2
TEST_CASE("somebody who never chose is spoken to in the system's language")
{
    const Environment all("LC_ALL", nullptr);
    const Environment messages("LC_MESSAGES", nullptr);
    {
        const Environment lang("LANG", "es_MX.UTF-8");
        CHECK(usual_settings().language == "es");
        const Environment first("LC_MESSAGES", "en_US.UTF-8");
        CHECK(usual_settings().language == "en");
    }
    const Environment lang("LANG", "tlh");
    CHECK(usual_settings().language == "en");
}

TEST_SUITE_END();
