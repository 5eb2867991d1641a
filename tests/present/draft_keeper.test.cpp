#include "scenes/present/draft_keeper.hpp"

#include "scenes/present/order_building.hpp"
#include "tests/shop/tools.hpp"
#include "tests/temporary_folder.hpp"

#include <doctest/doctest.h>

#include <array>
#include <csignal>
#include <filesystem>
#include <fstream>
#include <sys/wait.h>
#include <unistd.h>

using namespace scenes;

TEST_SUITE_BEGIN("present");

namespace {

KeptDraft small_draft()
{
    KeptDraft draft{.values = draft_of(*tests::small_order()), .path = {}};
    draft.values.accepted = {"a warning, with the name of a fault"};
    return draft;
}

KeptDraft with_title(KeptDraft draft, const std::string& title)
{
    draft.values.title = title;
    draft.is_saved = false;
    return draft;
}

/// Changes a draft again and again as a window does, until it is killed.
[[noreturn]] void write_until_killed(const std::string& folder, int told)
{
    DraftKeeper keeper(folder);
    keeper.take(tests::workshops());
    for (int i = 1;; ++i) {
        if (!keeper.keep(with_title(small_draft(), std::to_string(i)), tests::workshops()) ||
            ::write(told, &i, sizeof i) != sizeof i) {
            ::_exit(1);
        }
    }
}

} // namespace

TEST_CASE("a draft is read back as it was written, whatever is missing from it")
{
    KeptDraft draft = small_draft();
    draft.path = "/somewhere/mine.json";
    CHECK(read_draft(draft_text(draft, tests::workshops()), "draft", tests::workshops()) == draft);
    draft = {.values = empty_draft(tests::workshop("trimmer")), .path = {}, .is_saved = false};
    draft.values.weights = {0, 0, 0, 0, 0, 0, 0, 0};
    draft.values.checks.clear();
    CHECK(read_draft(draft_text(draft, tests::workshops()), "draft", tests::workshops()) == draft);
}

TEST_CASE("a draft's file does not say what is hidden")
{
    const std::string text = draft_text(small_draft(), tests::workshops());
    for (const char* word : {"bowl_vent", "vent was shut", "name of a fault"}) {
        CHECK(text.find(word) == std::string::npos);
    }
}

TEST_CASE("a draft comes back after its window was killed")
{
    const TemporaryFolder folder;
    tests::small_order(); // loaded once, before the child
    std::array<int, 2> ends{};
    REQUIRE(::pipe(ends.data()) == 0);
    const pid_t child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        ::close(ends[0]);
        write_until_killed(folder.file("drafts"), ends[1]);
    }
    ::close(ends[1]);
    int last = 0;
    for (int told = 0; last < 5 && ::read(ends[0], &told, sizeof told) == sizeof told;) {
        last = told;
    }
    ::kill(child, SIGKILL);
    int status = 0;
    ::waitpid(child, &status, 0);
    CHECK(WIFSIGNALED(status));
    for (int told = 0; ::read(ends[0], &told, sizeof told) == sizeof told;) {
        last = told;
    }
    ::close(ends[0]);
    DraftKeeper keeper(folder.file("drafts"));
    const auto found = keeper.take(tests::workshops());
    REQUIRE(found.has_value());
    const int kept = std::stoi(found->values.title);
    CHECK(kept >= last); // it may have been killed between writing and telling
    CHECK(kept <= last + 1);
    CHECK(*found == with_title(small_draft(), found->values.title));
    OrderBuilding building(tests::workshops());
    building.go_on(*found);
    CHECK(!building.draft().is_saved());
}

TEST_CASE("two windows keep two drafts and the one that was not saved comes back first")
{
    const TemporaryFolder folder;
    {
        DraftKeeper first(folder.file("drafts"));
        DraftKeeper second(folder.file("drafts"));
        CHECK(!first.take(tests::workshops()).has_value());
        CHECK(!second.take(tests::workshops()).has_value());
        CHECK(first.keep(small_draft(), tests::workshops()));
        CHECK(second.keep(with_title(small_draft(), "second"), tests::workshops()));
    }
    DraftKeeper next(folder.file("drafts"));
    const auto found = next.take(tests::workshops());
    REQUIRE(found.has_value());
    CHECK(found->values.title == "second");
}

TEST_CASE("a draft that cannot be read is set aside and nothing is written over it")
{
    const TemporaryFolder folder;
    const std::string drafts = folder.file("drafts");
    std::filesystem::create_directories(drafts);
    std::ofstream(drafts + "/draft_1.json") << "{\"format\": 1";
    DraftKeeper keeper(drafts);
    CHECK(!keeper.take(tests::workshops()).has_value());
    CHECK(keeper.set_aside() == drafts + "/draft_1_unreadable.json");
    CHECK(keeper.set_aside_reason() != "");
    CHECK(std::filesystem::exists(keeper.set_aside()));
    CHECK(keeper.keep(small_draft(), tests::workshops()));
}

TEST_CASE("a draft that cannot be kept says so")
{
    const TemporaryFolder folder;
    std::ofstream(folder.file("drafts")) << "a file where the folder should be";
    DraftKeeper keeper(folder.file("drafts"));
    CHECK(!keeper.take(tests::workshops()).has_value());
    CHECK(keeper.trouble() != "");
    CHECK(!keeper.keep(small_draft(), tests::workshops()));
    DraftKeeper nowhere;
    CHECK(!nowhere.take(tests::workshops()).has_value());
    CHECK(nowhere.trouble() == "");
    CHECK(!nowhere.is_due(1.0));
    CHECK(!nowhere.keep(small_draft(), tests::workshops()));
}

TEST_CASE("a draft is due twice a second at most")
{
    const TemporaryFolder folder;
    DraftKeeper keeper(folder.file("drafts"));
    keeper.take(tests::workshops());
    CHECK(!keeper.is_due(0.3));
    CHECK(keeper.is_due(0.3));
    CHECK(!keeper.is_due(0.3));
}

TEST_SUITE_END();
