#include "sim/rig.hpp"
#include "tests/laws/source_files.hpp"

#include <doctest/doctest.h>

#include <regex>
#include <set>

using namespace tests;

namespace {

/// What a file includes, with its quotes or angle brackets.
std::vector<std::string> includes_of(const std::string& text)
{
    static const std::regex line(R"((?:^|\n)[ \t]*#[ \t]*include[ \t]*([<"][^>"\n]*[>"]))");
    std::vector<std::string> found;
    for (std::sregex_iterator it(text.begin(), text.end(), line), end; it != end; ++it) {
        found.push_back((*it)[1]);
    }
    return found;
}

/// Paths of the project that a text names: a top-level folder, a slash and what follows.
std::set<std::string> paths_in(const std::string& text)
{
    static const std::regex path(R"((?:^|[\s`("'])((?:sim|scenes|assets|tests|\.ci)/[\w./*-]*))");
    std::set<std::string> found;
    for (std::sregex_iterator it(text.begin(), text.end(), path), end; it != end; ++it) {
        std::string name = (*it)[1];
        while (name.ends_with('.')) {
            name.pop_back();
        }
        found.insert(name);
    }
    return found;
}

} // namespace

TEST_SUITE_BEGIN("laws");

TEST_CASE(
    "the model includes nothing but itself, the standard library and, each in its place, JSON and "
    "matrices")
{
    static const std::set<std::string> json{"json_parse.hpp", "json_reader.hpp"};
    static const std::string matrices = "turn_jacobian.cpp";
    for (const auto& file : sources_under("sim")) {
        CAPTURE(file.string());
        for (const std::string& name : includes_of(text_of(file))) {
            CAPTURE(name);
            CHECK(name.find("scenes/") == std::string::npos);
            if (name.starts_with("<Eigen/")) {
                CHECK(file.filename() == matrices);
            } else if (name.starts_with('<') && name.find_first_of("./") != std::string::npos) {
                const bool is_json =
                    name == "<nlohmann/json.hpp>" && json.contains(file.filename().string());
                const bool is_system =
                    name == "<unistd.h>" || name == "<fcntl.h>" || name.starts_with("<sys/");
                CHECK((is_json || is_system));
            }
        }
    }
}

TEST_CASE("no part includes another part")
{
    for (const auto& file : sources_under("sim/parts")) {
        CAPTURE(file.string());
        for (const std::string& name : includes_of(text_of(file))) {
            CAPTURE(name);
            CHECK(name.find("parts/") == std::string::npos);
            CHECK((name.starts_with('<') || name.starts_with("\"../")));
        }
    }
}

TEST_CASE("no fault is named in the sources of the model or of the screens")
{
    std::set<std::string> faults;
    for (const std::string& id : sim::rig_ids()) {
        for (const sim::Fault& fault : sim::load_rig(id).faults) {
            faults.insert(fault.id);
        }
    }
    REQUIRE(faults.size() >= 40);
    for (const char* folder : {"sim", "scenes"}) {
        for (const auto& file : sources_under(folder)) {
            const std::string text = text_of(file);
            CAPTURE(file.string());
            for (const std::string& fault : faults) {
                CAPTURE(fault);
                CHECK_FALSE(has_word(text, fault));
            }
        }
    }
}

TEST_CASE("every path that DEVELOPERS.md names exists")
{
    const std::string text = text_of(SOURCE_DIR "/DEVELOPERS.md");
    REQUIRE_FALSE(text.empty());
    const auto paths = paths_in(text);
    CHECK(paths.size() >= 10);
    for (const std::string& path : paths) {
        CAPTURE(path);
        const std::string fixed = path.substr(0, path.find('*')); // of sim/*.cpp the folder
        CHECK(std::filesystem::exists(std::string(SOURCE_DIR) + "/" + fixed));
    }
}

TEST_SUITE_END();
