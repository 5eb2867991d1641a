#include "sim/rig.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <set>

using namespace sim;

namespace {

/// The kinds that the model brings; tests register some of their own, called test_something.
std::vector<PartKind> shipped_kinds()
{
    std::vector<PartKind> kinds;
    for (const PartKind& kind : part_kinds()) {
        if (!kind.id.starts_with("test_")) {
            kinds.push_back(kind);
        }
    }
    return kinds;
}

bool is_snake_case(std::string_view name)
{
    return !name.empty() && std::ranges::all_of(name, [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_';
    });
}

/// What must hold of a table of parameters.
void check_table(std::span<const ParameterInfo> table)
{
    std::set<std::string_view> ids;
    for (const ParameterInfo& info : table) {
        CAPTURE(info.id);
        CHECK(is_snake_case(info.id));
        CHECK(ids.insert(info.id).second);
        CHECK_FALSE(info.title.empty());
        CHECK(std::isfinite(info.low));
        CHECK(std::isfinite(info.high));
        CHECK(info.low < info.high);
    }
}

} // namespace

TEST_SUITE_BEGIN("laws");

TEST_CASE("every part file registers one kind, under the file's own name")
{
    const auto kinds = shipped_kinds();
    CHECK(kinds.size() == PART_FILE_COUNT);
    for (const PartKind& kind : kinds) {
        CAPTURE(kind.id);
        CHECK(is_snake_case(kind.id));
        CHECK_FALSE(kind.title.empty());
        CHECK(std::filesystem::exists(SOURCE_DIR "/sim/parts/" + std::string(kind.id) + ".cpp"));
    }
}

TEST_CASE("the catalogue is sorted, each kind once")
{
    const auto kinds = part_kinds();
    for (std::size_t i = 1; i < kinds.size(); ++i) {
        CHECK(kinds[i - 1].id < kinds[i].id);
        CHECK(find_part_kind(kinds[i].id) == &kinds[i]);
    }
    CHECK(find_part_kind("no_such_kind") == nullptr);
}

TEST_CASE("every parameter has a name, a title and a range")
{
    for (const PartKind& kind : shipped_kinds()) {
        CAPTURE(kind.id);
        check_table(kind.parameters);
    }
    check_table(fuel_parameters());
}

TEST_CASE("each row of a parameter table leads to a number of its own")
{
    for (const PartKind& kind : shipped_kinds()) {
        CAPTURE(kind.id);
        const auto part = kind.make();
        std::set<const double*> places;
        for (const ParameterInfo& info : kind.parameters) {
            CAPTURE(info.id);
            CHECK(places.insert(&info.member(part->address())).second);
        }
    }
}

TEST_CASE("every kind is used by a shipped rig")
{
    std::set<std::string> used;
    for (const std::string& id : rig_ids()) {
        for (const PartSpec& spec : load_rig(id).parts) {
            used.insert(spec.kind);
        }
    }
    for (const PartKind& kind : shipped_kinds()) {
        CAPTURE(kind.id);
        CHECK(used.contains(std::string(kind.id)));
    }
}

TEST_SUITE_END();
