#include "scenes/present/bench_model.hpp"
#include "scenes/present/turn_mean.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

// The bench while the trimmer leaps over turns.

namespace {

using scenes::BenchModel;

std::unique_ptr<BenchModel> cutting_trimmer()
{
    auto model =
        std::make_unique<BenchModel>(std::make_shared<const sim::Rig>(sim::load_rig("trimmer")));
    model->begin_running();
    model->finish_replay();
    return model;
}

void go_ahead(BenchModel& model, double seconds)
{
    model.go_ahead_to(model.end_seconds() + seconds);
    model.finish_replay();
}

std::vector<double> state(BenchModel& model)
{
    const auto seen = model.run().machine().state();
    return {seen.begin(), seen.end()};
}

} // namespace

TEST_SUITE("present")
{
    TEST_CASE("the mean over a turn is that of a sine's offset, whatever the turn's length")
    {
        for (const double ticks : {6.3, 8.5, 9.0, 21.7}) {
            CAPTURE(ticks);
            scenes::TurnMean mean;
            mean.begin(1, ticks);
            for (std::size_t before = mean.reach() + 3; before + 1 > 0; --before) {
                const double angle = 2.0 * std::numbers::pi * static_cast<double>(before) / ticks;
                const double value = 5.0 + std::sin(angle + 0.7);
                mean.add(before, {&value, 1});
                if (before == 0) {
                    break;
                }
            }
            CHECK(mean.mean()[0] == doctest::Approx(5.0).epsilon(0.006));
        }
    }

    TEST_CASE("going ahead leaps, and real time goes turn by turn again")
    {
        const std::unique_ptr<BenchModel> model = cutting_trimmer();
        CHECK_FALSE(model->run().machine().may_leap());
        const bool could_undo = model->can_undo();
        model->go_ahead_to(model->end_seconds() + 4.0);
        model->finish_replay();
        CHECK(model->run().machine().may_leap());
        CHECK(model->can_undo() == could_undo);
        model->pace.is_paused = false;
        model->advance(1.0 / 60.0, [] { return true; });
        CHECK_FALSE(model->run().machine().may_leap());
        model->pace.choose(4);
        model->advance(1.0 / 60.0, [] { return true; });
        CHECK(model->run().machine().may_leap());
    }

    TEST_CASE("moments, branches, undoing and run sheets among leaps are had again bit for bit")
    {
        const std::unique_ptr<BenchModel> model = cutting_trimmer();
        model->post(sim::SetFault{"adapter_loose", 0.3});
        go_ahead(*model, 3.0);
        const double middle = model->end_seconds() - 0.737;
        model->go_to(middle);
        const auto seen = state(*model);
        const auto twin = model->run().twin_values();
        model->go_to(0.0);
        model->go_to(1e9);
        const auto end = state(*model);
        model->go_to(middle);
        CHECK(state(*model) == seen);
        CHECK(model->run().twin_values() == twin);
        model->go_to(1e9);
        model->post(sim::SetControl{"choke", 0.2});
        go_ahead(*model, 1.0);
        const auto after = state(*model);
        model->undo();
        model->finish_replay();
        CHECK_FALSE(state(*model) == after);
        CHECK(model->run().machine().may_leap());
        model->redo();
        model->finish_replay();
        CHECK(state(*model) == after);
        sim::Simulator again(std::make_shared<const sim::Rig>(model->rig()));
        for (const sim::TimedCommand& timed : model->sheet().commands) {
            again.post(timed.command, timed.at);
        }
        again.advance(model->run().machine().now());
        const auto replayed = again.state();
        CHECK(std::vector<double>(replayed.begin(), replayed.end()) == after);
        model->go_to(middle);
        model->post(sim::SetControl{"choke", 0.4});
        CHECK(model->branches().size() == 2);
        model->switch_to(0);
        model->finish_replay();
        CHECK(state(*model) == after);
    }

    TEST_CASE("the history has no gaps where the engine leapt")
    {
        const std::unique_ptr<BenchModel> model = cutting_trimmer();
        go_ahead(*model, 3.0);
        const scenes::SampleStore& fine = model->run().history().fine();
        CHECK(fine.end() == static_cast<std::size_t>(model->end_seconds() / 0.02 + 1e-6) + 1);
        const std::size_t speed = model->run().machine().reading_index("engine.speed");
        for (std::size_t i = fine.first(); i < fine.end(); ++i) {
            CHECK(std::isfinite(fine.at(speed, i)));
        }
        const double to = model->end_seconds();
        CHECK(&model->run().history().store_for(to - 2.0, to) == &fine);
    }
}
