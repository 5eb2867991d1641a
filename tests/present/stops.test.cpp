#include "scenes/present/stops.hpp"

#include <doctest/doctest.h>

// What a presenter steps through.

TEST_SUITE("present")
{
    TEST_CASE("a clicker steps through what was done and then through the branches")
    {
        scenes::BenchModel model(std::make_shared<const sim::Rig>(sim::load_rig("mower")));
        model.begin_running();
        model.finish_replay();
        const double first = model.seconds();
        model.post(sim::SetControl{"load", 0.3});
        model.go_ahead_to(first + 2.0);
        model.finish_replay();
        model.go_to(first + 1.0);
        model.post(sim::SetControl{"load", 0.6});
        model.go_ahead_to(first + 3.0);
        model.finish_replay();
        REQUIRE(model.branches().size() == 2);
        const auto at = [&model] { return std::pair(model.active_branch(), model.seconds()); };
        using At = std::pair<std::size_t, double>;
        show_stop_before(model);
        CHECK(at() == At{1, first + 1.0});
        show_stop_before(model);
        CHECK(at() == At{1, first});
        show_stop_before(model);
        CHECK(at() == At{1, 0.0});
        show_stop_before(model);
        CHECK(at() == At{0, first + 2.0});
        show_next_stop(model);
        CHECK(at() == At{1, first + 1.0});
        show_next_stop(model);
        CHECK(at() == At{1, first + 3.0});
        CHECK(model.pace.is_paused);
        show_next_stop(model);
        CHECK_FALSE(model.pace.is_paused);
    }
}
