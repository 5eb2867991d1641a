#include "scenes/present/order_building.hpp"

#include "tests/shop/tools.hpp"
#include "tests/temporary_folder.hpp"

#include <doctest/doctest.h>

#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <thread>

using namespace scenes;

TEST_SUITE_BEGIN("present");

namespace {

/// Tables are kept in a folder of the test.
class OwnCache {
public:
    OwnCache() { ::setenv("XDG_CACHE_HOME", folder_.file("cache").c_str(), 1); }
    OwnCache(const OwnCache&) = delete;
    OwnCache& operator=(const OwnCache&) = delete;
    OwnCache(OwnCache&&) = delete;
    OwnCache& operator=(OwnCache&&) = delete;
    ~OwnCache() { ::unsetenv("XDG_CACHE_HOME"); }
    [[nodiscard]] std::string orders() const { return folder_.file("orders"); }

private:
    TemporaryFolder folder_;
};

void finish(OrderBuilding& building)
{
    while (building.under_way() != nullptr) {
        std::this_thread::sleep_for(std::chrono::milliseconds(5));
        building.tend();
    }
}

template <class Edit>
void edit(OrderBuilding& building, Edit change)
{
    DraftValues next = building.draft().now();
    change(next);
    building.draft().change(std::move(next));
}

} // namespace

TEST_CASE("an order is saved only as it was tried out and with its warnings accepted")
{
    const OwnCache cache;
    OrderBuilding building(tests::workshops());
    building.begin(draft_of(*tests::small_order()));
    CHECK(!building.can_save());
    building.try_out();
    finish(building);
    REQUIRE(building.trouble() == "");
    REQUIRE(building.is_tried());
    CAPTURE(building.review()->refusals.size());
    REQUIRE(building.review()->is_good());
    edit(building, [](DraftValues& values) { values.answer.advice = shop::Advice::replace; });
    CHECK(!building.is_tried());
    CHECK(!building.can_save());
    building.try_out();
    finish(building);
    REQUIRE(!building.open_warnings().empty()); // the advice is not that of good work
    CHECK(!building.can_save());
    building.accept_warnings();
    finish(building);
    CHECK(building.open_warnings().empty());
    REQUIRE(building.can_save());
    building.save(cache.orders(), "mine");
    CHECK(building.draft().is_saved());
    CHECK(std::filesystem::exists(cache.orders() + "/mine.json"));
    building.draft().undo(); // the warnings are open again
    CHECK(!building.draft().is_saved());
    CHECK(!building.can_save());
}

TEST_CASE("an order that cannot be solved is not saved and says why")
{
    const OwnCache cache;
    OrderBuilding building(tests::workshops());
    building.begin(draft_of(*tests::small_order()));
    edit(building, [](DraftValues& values) { values.repairs = {"replace_cap"}; });
    building.try_out();
    finish(building);
    REQUIRE(building.is_tried());
    CHECK(!building.review()->is_good());
    building.accept_warnings();
    finish(building);
    CHECK(!building.can_save());
}

TEST_CASE("a trial that is broken off leaves the draft as it was")
{
    const OwnCache cache;
    OrderBuilding building(tests::workshops());
    building.begin(draft_of(*tests::small_order()));
    const DraftValues before = building.draft().now();
    building.try_out();
    CHECK(building.under_way() != nullptr);
    building.break_off();
    CHECK(building.under_way() == nullptr);
    building.tend();
    CHECK(building.review() == nullptr);
    CHECK(building.draft().now() == before);
}

TEST_CASE("an order without a folder to lie in is refused")
{
    OrderBuilding building(tests::workshops());
    building.begin(draft_of(*tests::small_order()));
    CHECK_THROWS_AS(building.save("", "mine"), sim::RequestError);
}

TEST_SUITE_END();
