#include "scenes/present/bench_model.hpp"

#include "sim/error.hpp"
#include "sim/run_sheet.hpp"
#include "tests/temporary_folder.hpp"

#include <doctest/doctest.h>

#include <algorithm>

namespace {

using scenes::BenchModel;
using Gesture = scenes::BenchModel::Gesture;

std::shared_ptr<const sim::Rig> mower()
{
    static const auto rig = std::make_shared<const sim::Rig>([] {
        sim::Rig loaded = sim::load_rig("mower");
        // A fault of our own, so that these tests do not depend on the ones that are shipped.
        loaded.faults = {{.id = "test_jet_shut",
                          .title = "Jet shut",
                          .where = "jet",
                          .about = {},
                          .found = {},
                          .cures = {},
                          .changes = {{"main_jet", "open", sim::FaultChange::How::set, 0.0}}}};
        return loaded;
    }());
    return rig;
}

bool always()
{
    return true;
}

sim::SetControl tap(double to)
{
    return {"tap", to};
}

const sim::Rig& rig()
{
    return *mower();
}

double reading(const BenchModel& model, std::string_view name)
{
    return model.run().values()[model.run().machine().reading_index(name)];
}

/// Lets a model run at 60 frames a second.
void run_for(BenchModel& model, double seconds)
{
    const int frames = static_cast<int>(std::lround(seconds * 60.0));
    for (int i = 0; i < frames; ++i) {
        model.advance(1.0 / 60.0, always);
    }
}

} // namespace

TEST_SUITE("present")
{
    TEST_CASE("the bench keeps pace with the real clock at every speed")
    {
        for (std::size_t i = 0; i < scenes::Pace::speeds.size(); ++i) {
            CAPTURE(scenes::Pace::speeds[i]);
            BenchModel model(mower());
            model.pace.choose(i);
            run_for(model, 1.0);
            // A tick may be owed at the end.
            CHECK(std::abs(model.seconds() - scenes::Pace::speeds[i]) <= 1.001e-3);
            CHECK_FALSE(model.pace.is_late());
        }
    }

    TEST_CASE("a paused bench moves by single ticks and by frames only")
    {
        BenchModel model(mower());
        model.pace.is_paused = true;
        model.advance(5.0, always);
        CHECK(model.run().machine().now() == 0);
        model.step_tick();
        CHECK(model.run().machine().now() == 1);
        model.step_frame(); // a sixtieth of a second, 16.7 ms
        CHECK(model.run().machine().now() == 18);
        model.pace.choose(5); // 60 times: a second
        model.step_frame();
        CHECK(model.run().machine().now() == 1018);
    }

    TEST_CASE("a bench without leave to go on says that it is late")
    {
        BenchModel model(mower());
        model.pace.choose(5);
        for (int i = 0; i < 60; ++i) {
            model.advance(1.0 / 60.0, [] { return false; });
        }
        CHECK(model.pace.is_late());
        CHECK(model.pace.reached() < 0.5);
        CHECK(model.seconds() < 30.0);
        model.pace.is_paused = true;
        CHECK_FALSE(model.pace.is_late());
    }

    TEST_CASE("a long pause of the window makes the machine leap by a tenth of a second at most")
    {
        BenchModel model(mower());
        model.advance(3600.0, always);
        CHECK(model.run().machine().now() == 100);
    }

    TEST_CASE("the default start leaves the engine running at its governed speed")
    {
        BenchModel model(mower());
        model.begin_running();
        CHECK(model.is_replaying());
        model.advance(1.0, [] { return false; });
        CHECK(model.replay_share() < 0.01);
        model.finish_replay();
        CHECK_FALSE(model.is_frozen());
        CHECK(model.seconds() == doctest::Approx(rig().default_length));
        // Governed at 3060 rpm (the rig's own figure), with the governor's droop of some 260 rpm.
        const double rpm = reading(model, "engine.speed") * 60.0 / (2.0 * 3.14159265358979);
        CHECK(rpm > 2800.0);
        CHECK(rpm < 3320.0);
    }

    TEST_CASE("commands are taken at once, even while paused")
    {
        BenchModel model(mower());
        model.pace.is_paused = true;
        model.post(tap(1.0));
        CHECK(model.run().machine().control("tap") == 1.0);
        CHECK(model.sheet().commands.size() == 1);
        CHECK_THROWS_AS(model.post(tap(2.0)), sim::RequestError);
    }

    TEST_CASE("the twin gets every command but the faults")
    {
        BenchModel model(mower());
        model.begin_running();
        model.finish_replay();
        const std::size_t flow = model.run().machine().reading_index("main_jet.flow");
        model.post(sim::SetFault{"test_jet_shut", 1.0});
        run_for(model, 5.0);
        const auto last = [&](const scenes::History& history) {
            const scenes::Series series = history.series(flow, 50.0, 60.0);
            return static_cast<double>(series.at(series.end() - 1));
        };
        REQUIRE(model.run().has_twin());
        CHECK(last(model.run().twin_history()) > 1e-8);
        CHECK(std::abs(last(model.run().history())) < 1e-10);
    }

    TEST_CASE("histories count time from the run's beginning")
    {
        BenchModel model(mower());
        run_for(model, 2.5);
        const auto& history = model.run().history();
        const std::size_t level = model.run().machine().reading_index("tank.level");
        const scenes::Series fine = history.series(level, 0.0, 10.0);
        const scenes::Series coarse = history.series(level, 0.0, 3600.0);
        CHECK(fine.time_of(fine.end() - 1) == doctest::Approx(2.5).epsilon(0.01));
        CHECK(coarse.time_of(coarse.end() - 1) == 2.0);
        CHECK(fine.interval() == doctest::Approx(0.02));
    }

    TEST_CASE("undoing replays the run without the last gesture, bit for bit")
    {
        BenchModel model(mower());
        model.post(tap(1.0));
        run_for(model, 2.0);
        model.post(sim::SetControl{"load", 0.1}); // a drag of three steps
        model.post(sim::SetControl{"load", 0.2}, Gesture::continues);
        run_for(model, 0.5);
        model.post(sim::SetControl{"load", 0.3}, Gesture::continues);
        run_for(model, 0.5);
        const sim::Tick now = model.run().machine().now();
        model.undo();
        CHECK_FALSE(model.is_ready());
        model.finish_replay();
        CHECK(model.run().machine().now() == now);
        CHECK(model.run().machine().control("load") == 0.0);
        CHECK(model.run().machine().control("tap") == 1.0);

        sim::Simulator plain(mower());
        plain.post(tap(1.0), 0);
        plain.advance(now);
        std::vector<double> values(plain.readings().size());
        plain.read(values);
        CHECK(values == model.run().values());

        model.undo();
        model.finish_replay();
        CHECK(model.run().machine().control("tap") == 0.0);
        CHECK_FALSE(model.can_undo());
    }

    TEST_CASE("a new run can be undone, back to the one before")
    {
        BenchModel model(mower());
        model.begin_cold();
        model.finish_replay();
        model.post(tap(0.7));
        run_for(model, 1.0);
        const auto values = model.run().values();
        model.begin_cold();
        model.finish_replay();
        CHECK(model.run().machine().control("tap") == 0.0);
        model.undo();
        model.finish_replay();
        CHECK(model.run().machine().control("tap") == 0.7);
        CHECK(model.run().values() == values);
    }

    TEST_CASE("a cancelled replay leaves everything as it was")
    {
        BenchModel model(mower());
        model.post(tap(1.0));
        run_for(model, 1.0);
        const int number = model.run_number();
        model.undo();
        model.post(tap(0.5)); // not taken while replaying
        model.cancel_replay();
        CHECK(model.is_ready());
        CHECK(model.run_number() == number);
        CHECK(model.run().machine().control("tap") == 1.0);
        CHECK(model.can_undo());
    }

    TEST_CASE("what is pressed is held until it is let go, a blink at least")
    {
        BenchModel model(mower());
        const auto actions = scenes::actions_of(rig());
        const auto primer = std::ranges::find(actions, "press_primer", &scenes::Action::id);
        REQUIRE(primer != actions.end());
        CHECK(primer->release == "release_primer");
        CHECK(std::ranges::find(actions, "release_primer", &scenes::Action::id) == actions.end());
        const double full = reading(model, "bulb.volume");
        model.press(*primer);
        run_for(model, 1.0);
        CHECK(reading(model, "bulb.volume") < 0.8 * full);
        model.release(*primer);
        run_for(model, 5.0);
        CHECK(reading(model, "bulb.volume") == doctest::Approx(full).epsilon(0.02));
        // A click within one frame still moves the bulb.
        model.press(*primer);
        model.release(*primer);
        run_for(model, 0.1);
        CHECK(reading(model, "bulb.volume") < 0.98 * full);
        CHECK(model.sheet().commands.size() == 4);
        model.undo(); // a press and its release are one gesture
        model.finish_replay();
        CHECK(model.sheet().commands.size() == 2);
    }

    TEST_CASE("a saved run opens again and ends where it ended")
    {
        const TemporaryFolder folder;
        const std::string path = folder.file("run.json");
        BenchModel model(mower());
        model.post(tap(1.0));
        run_for(model, 1.0);
        model.post(sim::SetFault{"test_jet_shut", 0.5});
        model.save(path);
        BenchModel other(mower());
        other.open(path);
        other.finish_replay();
        CHECK(other.sheet().commands == model.sheet().commands);
        CHECK(other.run().machine().severity("test_jet_shut") == 0.5);
        CHECK_THROWS_AS(other.open(path + ".missing"), std::runtime_error);
        CHECK(other.is_ready());
    }

    TEST_CASE("equations that cannot be carried on freeze the bench and keep the run")
    {
        // No step meets a tolerance of nothing.
        BenchModel model(mower(), {}, sim::Tolerance{.relative = 0.0, .absolute = 1e-300});
        model.pace.is_paused = true;
        model.post(tap(1.0));
        model.pace.is_paused = false;
        run_for(model, 1.0);
        REQUIRE(model.is_frozen());
        CHECK(model.trouble().find("cannot go on") != std::string::npos);
        CHECK(model.trouble().find('\n') == std::string::npos);
        CHECK(model.sheet().commands.size() == 1);
        const TemporaryFolder folder;
        model.save(folder.file("kept.json"));
        CHECK(sim::load_run_sheet(folder.file("kept.json"), rig()).commands ==
              model.sheet().commands);
        model.post(tap(0.0)); // not taken any more
        model.step_tick();
        CHECK(model.sheet().commands.size() == 1);
        CHECK(model.can_undo());
    }
}
