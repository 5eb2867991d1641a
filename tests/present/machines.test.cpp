#include "scenes/present/bench_model.hpp"
#include "scenes/present/part_finder.hpp"
#include "scenes/present/words.hpp"
#include "sim/fluid.hpp"
#include "sim/run_sheet.hpp"
#include "tests/temporary_folder.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

namespace {

using scenes::BenchModel;

std::shared_ptr<const sim::Rig> rig_of(const char* id)
{
    return std::make_shared<const sim::Rig>(sim::load_rig(id));
}

/// A trimmer's run with commands of one's own up to a tick.
std::unique_ptr<BenchModel> trimmer_at(sim::Tick to, std::vector<sim::TimedCommand> commands = {})
{
    auto model = std::make_unique<BenchModel>(rig_of("trimmer"));
    model->begin({"trimmer", std::move(commands)}, to);
    model->finish_replay();
    REQUIRE_FALSE(model->is_frozen());
    return model;
}

double reading(const BenchModel& model, std::string_view name)
{
    return model.run().values()[model.run().machine().reading_index(name)];
}

} // namespace

TEST_SUITE("present")
{
    TEST_CASE("another machine comes on the bench, and undo brings the first one back as it was")
    {
        BenchModel model(rig_of("mower"));
        model.begin({"mower", {{0, sim::SetControl{"tap", 1.0}}}}, 500);
        model.finish_replay();
        model.post(sim::SetControl{"choke", 0.5});
        const std::vector<double> before = model.run().values();

        sim::Rig quick = sim::load_rig("trimmer");
        quick.default_length = 0.2;
        model.choose(std::make_shared<const sim::Rig>(std::move(quick)));
        CHECK(model.rig().id == "mower"); // until the other one is ready
        model.finish_replay();
        CHECK(model.rig().id == "trimmer");
        CHECK(model.sheet().rig == "trimmer");
        CHECK(model.run().machine().now() == 200);

        REQUIRE(model.can_undo());
        model.undo();
        model.finish_replay();
        CHECK(model.rig().id == "mower");
        CHECK(model.run().machine().control("choke") == 0.5);
        CHECK(model.run().values() == before);
        model.undo();
        model.finish_replay();
        CHECK(model.run().machine().control("choke") == 0.0);
    }

    TEST_CASE("a choice that is cancelled leaves the machine on the bench")
    {
        BenchModel model(rig_of("mower"));
        model.choose(rig_of("trimmer"));
        model.cancel_replay();
        CHECK(model.rig().id == "mower");
        CHECK(model.is_ready());
    }

    TEST_CASE("a run file is opened on the machine it is for")
    {
        const TemporaryFolder folder;
        const std::string path = folder.with("run.json", R"({"format":1,"rig":"trimmer",
            "commands":[{"at":"10 ms","do":"squeeze_bulb"}]})");
        CHECK(sim::rig_of_run_sheet(path) == "trimmer");
        BenchModel model(rig_of("mower"));
        model.open(path);
        CHECK(model.is_replaying());
        while (model.run().machine().rig().id == "mower" && model.is_replaying()) {
            model.advance(0.1, [] { return true; });
        }
        CHECK(model.rig().id == "trimmer");
    }

    TEST_CASE("the bulb of every machine has one button, which lets go of it too")
    {
        for (const char* id : {"mower", "trimmer"}) {
            CAPTURE(std::string(id));
            const auto actions = scenes::actions_of(*rig_of(id));
            const auto bulb = std::ranges::find_if(actions, [](const scenes::Action& action) {
                return action.release.starts_with("release_");
            });
            REQUIRE(bulb != actions.end());
            CHECK(std::ranges::find(actions, bulb->release, &scenes::Action::id) == actions.end());
            CHECK(std::ranges::count_if(actions, [](const scenes::Action& action) {
                      return !action.release.empty();
                  }) == 1);
        }
    }

    TEST_CASE("the trimmer's grade line begins at its fuel's surface")
    {
        // Hydrostatics: total head = p / (rho g) + height of the surface over the datum. The tank's
        // floor is 75 mm, its start fill 48 mm deep; the needle's seat, the datum, is at 18 mm.
        const auto model = trimmer_at(20);
        const auto heads = model->run().heads();
        const double weight =
            sim::fuel_density({750.0}, reading(*model, "tank.temperature")) * sim::gravity;
        const double gauge = reading(*model, "tank.pressure") / weight * 1e3;
        CHECK(heads.at(scenes::words::tank) ==
              doctest::Approx(-75.0 + 48.0 - 18.0 + gauge).epsilon(0.02));
        // Lying on its left side the tank is 80 mm high about its middle, which is level with the
        // seat: 0.8 of that is 24 mm over it.
        const auto tipped = trimmer_at(40, {{0, sim::SetControl{"tilt_side", 90.0}}});
        const double push = reading(*tipped, "tank.pressure") / weight * 1e3;
        CHECK(tipped->run().heads().at(scenes::words::tank) ==
              doctest::Approx(24.0 + push).epsilon(0.02));
    }

    TEST_CASE("each station of the trimmer's path begins where the one before it ends")
    {
        const auto model =
            trimmer_at(1200, {{500, sim::Do{"squeeze_bulb"}}, {1000, sim::Do{"release_bulb"}}});
        const auto heads = model->run().heads();
        REQUIRE(heads.gauges.size() == 5);
        for (std::size_t i = 1; i < heads.stations.size(); ++i) {
            CAPTURE(std::string(heads.stations[i].name));
            CHECK(heads.stations[i].before ==
                  doctest::Approx(heads.stations[i - 1].after).epsilon(1e-9));
        }
        CHECK_THROWS_AS((void)heads.at("bowl"), sim::RequestError);
    }

    TEST_CASE("the healthy twin parts from its machine with the first fault only")
    {
        BenchModel model(rig_of("mower"));
        model.begin({"mower", {{0, sim::SetControl{"tap", 1.0}}}}, 2000);
        model.finish_replay();
        CHECK(model.run().twin_heads().at(scenes::words::bowl) ==
              model.run().heads().at(scenes::words::bowl));
        model.post(sim::SetFault{"bowl_drain_weeping", 1.0});
        for (int i = 0; i < 600; ++i) {
            model.advance(1.0 / 60.0, [] { return true; });
        }
        CHECK(model.run().twin_heads().at(scenes::words::bowl) >
              model.run().heads().at(scenes::words::bowl) + 0.1);
    }
}
