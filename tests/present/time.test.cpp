#include "scenes/present/bench_model.hpp"
#include "scenes/present/command_text.hpp"

#include <doctest/doctest.h>

// Going back and ahead in time, branches, undoing and doing again.

namespace {

using scenes::BenchModel;
using Gesture = scenes::Gesture;

bool always()
{
    return true;
}

std::shared_ptr<const sim::Rig> machine(const std::string& id)
{
    return std::make_shared<const sim::Rig>(sim::load_rig(id));
}

std::unique_ptr<BenchModel> running(const std::string& id)
{
    auto model = std::make_unique<BenchModel>(machine(id));
    model->begin_running();
    model->finish_replay();
    return model;
}

void run_for(BenchModel& model, double seconds)
{
    model.pace.is_paused = false;
    const int frames = static_cast<int>(std::lround(seconds * 60.0));
    for (int i = 0; i < frames; ++i) {
        model.advance(1.0 / 60.0, always);
    }
}

std::vector<double> state(BenchModel& model)
{
    const auto seen = model.run().machine().state();
    return {seen.begin(), seen.end()};
}

} // namespace

TEST_SUITE("present")
{
    TEST_CASE("any moment of a run can be shown again, bit for bit")
    {
        const std::unique_ptr<BenchModel> model = running("mower");
        model->post(sim::SetControl{"load", 0.5});
        model->post(sim::SetFault{"bowl_vent_plugged", 1.0});
        std::vector<std::pair<double, std::vector<double>>> seen;
        for (int i = 0; i < 20; ++i) {
            run_for(*model, 0.25);
            seen.emplace_back(model->seconds(), state(*model));
        }
        const auto values = model->run().values();
        const auto twin = model->run().twin_values();
        const double end = model->end_seconds();
        CHECK(model->is_at_end());
        for (const std::size_t i : {3U, 17U, 0U, 9U, 10U}) {
            CAPTURE(i);
            model->go_to(seen[i].first);
            CHECK(model->pace.is_paused);
            CHECK_FALSE(model->is_at_end());
            CHECK(model->end_seconds() == end);
            CHECK(model->seconds() == seen[i].first);
            CHECK(state(*model) == seen[i].second);
        }
        model->go_to(0.0);
        CHECK(model->seconds() == 0.0);
        CHECK(model->run().machine().severity("bowl_vent_plugged") == 0.0);
        model->go_to(1e9);
        CHECK(model->is_at_end());
        CHECK(model->seconds() == end);
        CHECK(model->run().values() == values);
        CHECK(model->run().twin_values() == twin);
        CHECK(model->branches().size() == 1);
    }

    TEST_CASE("going on from an earlier moment repeats the run and then goes on with it")
    {
        const std::unique_ptr<BenchModel> model = running("mower");
        run_for(*model, 1.0);
        model->post(sim::SetControl{"load", 0.5});
        run_for(*model, 2.0);
        const double end = model->end_seconds();
        const auto before = state(*model);
        const auto samples = model->run().history().fine().end();
        model->go_to(end - 2.5);
        CHECK(model->run().machine().control("load") != 0.5);
        run_for(*model, 2.5);
        CHECK(model->run().machine().control("load") == 0.5);
        CHECK(std::abs(model->seconds() - end) < 0.0011);
        model->go_to(end);
        CHECK(state(*model) == before);
        CHECK(model->run().history().fine().end() == samples);
        run_for(*model, 1.0);
        CHECK(model->end_seconds() > end + 0.9);
        CHECK(model->branches().size() == 1);
    }

    TEST_CASE("doing something at an earlier moment begins a branch and keeps the one so far")
    {
        const std::unique_ptr<BenchModel> model = running("mower");
        model->post(sim::SetControl{"load", 0.5});
        run_for(*model, 2.0);
        const double end = model->end_seconds();
        const auto old_end = state(*model);
        const double left = end - 1.5;
        model->go_to(left);
        const int number = model->run_number();
        model->post(sim::SetControl{"choke", 0.6});
        REQUIRE(model->branches().size() == 2);
        CHECK(model->active_branch() == 1);
        CHECK(model->run_number() > number);
        const scenes::Branch& branch = model->branches()[1];
        CHECK(branch.parent == model->branches()[0].id);
        CHECK(static_cast<double>(branch.left_at) * sim::tick_length == doctest::Approx(left));
        REQUIRE(branch.change.has_value());
        CHECK(scenes::command_text(model->rig(), *branch.change) == "Choke: 60 %");
        CHECK(model->is_at_end());
        run_for(*model, 0.5);
        CHECK(model->run().machine().control("choke") == 0.6);
        const auto new_end = state(*model);

        model->switch_to(0);
        CHECK(model->run().machine().control("choke") == 0.0);
        CHECK(model->seconds() == end);
        CHECK(state(*model) == old_end);
        CHECK(model->sheet().commands.back() ==
              sim::TimedCommand{branch.left_at == 0 ? 0 : model->sheet().commands.back().at,
                                sim::SetControl{"load", 0.5}});
        model->switch_to(1);
        CHECK(state(*model) == new_end);

        // The branch's sheet alone makes the same run.
        sim::Simulator plain(machine("mower"));
        for (const sim::TimedCommand& timed : model->sheet().commands) {
            plain.post(timed.command, timed.at);
        }
        plain.advance(model->run().machine().now());
        const auto replayed = plain.state();
        CHECK(std::vector<double>(replayed.begin(), replayed.end()) == new_end);
    }

    TEST_CASE("commands of the future are no part of a branch that leaves before them")
    {
        BenchModel model(machine("mower"));
        model.begin_running();
        model.finish_replay();
        model.go_to(2.0); // before the cord is pulled
        CHECK(model.sheet().commands.size() > 1);
        model.post(sim::SetControl{"choke", 0.3});
        CHECK(model.branches().size() == 2);
        run_for(model, 1.0);
        for (const sim::TimedCommand& timed : model.sheet().commands) {
            CHECK(timed.at <= 2000);
        }
    }

    TEST_CASE("branches are named and removed, and undoing brings them back")
    {
        const std::unique_ptr<BenchModel> model = running("mower");
        CHECK_FALSE(model->can_remove_branch());
        run_for(*model, 1.0);
        const auto old_end = state(*model);
        model->go_to(model->end_seconds() - 0.5);
        model->post(sim::SetControl{"load", 1.0});
        model->rename_branch(1, "Loaded");
        CHECK(model->branches()[1].name == "Loaded");
        model->remove_branch(1); // the one that is shown stays
        CHECK(model->branches().size() == 2);
        model->remove_branch(0);
        REQUIRE(model->branches().size() == 1);
        CHECK(model->branches()[0].name == "Loaded");
        CHECK(model->can_undo());
        model->undo();
        REQUIRE(model->branches().size() == 2);
        CHECK(model->active_branch() == 1);
        model->switch_to(0); // its history was let go of: it is replayed
        model->finish_replay();
        CHECK(model->active_branch() == 0);
        CHECK(state(*model) == old_end);
        model->switch_to(1);
        model->undo(); // now the load
        model->finish_replay();
        CHECK(model->run().machine().control("load") < 1.0);
    }

    TEST_CASE("many branches keep their commands, and only a few their histories")
    {
        const std::unique_ptr<BenchModel> model = running("mower");
        run_for(*model, 0.5);
        std::vector<std::vector<double>> ends;
        for (int i = 0; i < 6; ++i) {
            ends.push_back(state(*model));
            model->go_to(model->end_seconds() - 0.1);
            model->post(sim::SetControl{"load", 0.1 * (i + 1)});
            run_for(*model, 0.3);
        }
        CHECK(model->branches().size() == 7);
        const auto held = std::ranges::count_if(
            model->branches(), [](const scenes::Branch& branch) { return branch.run != nullptr; });
        CHECK(held == 4);
        for (std::size_t i = 0; i < ends.size(); ++i) {
            CAPTURE(i);
            model->switch_to(i);
            model->finish_replay();
            CHECK(state(*model) == ends[i]);
        }
    }

    TEST_CASE("what was undone can be done again until something else is done")
    {
        const std::unique_ptr<BenchModel> model = running("mower");
        CHECK_FALSE(model->can_redo());
        const double usual = model->run().machine().control("load");
        model->post(sim::SetControl{"load", 0.3});
        model->post(sim::SetControl{"load", 0.6}, Gesture::continues);
        run_for(*model, 0.5);
        model->post(sim::SetFault{"bowl_vent_plugged", 1.0});
        run_for(*model, 0.5);
        const auto before = state(*model);
        const auto sheet = model->sheet().commands;
        model->undo();
        model->finish_replay();
        CHECK(model->run().machine().severity("bowl_vent_plugged") == 0.0);
        CHECK(model->run().values() == model->run().twin_values());
        model->undo();
        model->finish_replay();
        CHECK(model->run().machine().control("load") == usual);
        model->redo();
        model->finish_replay();
        CHECK(model->run().machine().control("load") == 0.6);
        model->redo();
        model->finish_replay();
        CHECK(state(*model) == before);
        CHECK(model->sheet().commands == sheet);
        CHECK_FALSE(model->can_redo());
        model->undo();
        model->finish_replay();
        model->post(sim::SetControl{"load", 0.1});
        CHECK_FALSE(model->can_redo());
    }

    TEST_CASE("a new run that was undone can be had again, branches included")
    {
        const std::unique_ptr<BenchModel> model = running("mower");
        run_for(*model, 0.5);
        model->go_to(model->end_seconds() - 0.2);
        model->post(sim::SetControl{"load", 0.7});
        model->begin_cold();
        model->finish_replay();
        CHECK(model->branches().size() == 1);
        model->undo();
        model->finish_replay();
        CHECK(model->branches().size() == 2);
        CHECK(model->run().machine().control("load") == 0.7);
        model->redo();
        model->finish_replay();
        CHECK(model->branches().size() == 1);
        CHECK(model->seconds() == 0.0);
    }

    TEST_CASE("going ahead works in pieces, says how far it is and keeps what a cancel leaves")
    {
        const std::unique_ptr<BenchModel> model = running("mower");
        const double begin = model->seconds();
        model->go_ahead_to(begin + 60.0);
        CHECK(model->is_going_ahead());
        CHECK_FALSE(model->is_ready());
        int leave = 0;
        const auto some = [&leave] { return ++leave % 100 != 0; };
        model->advance(1.0, some);
        CHECK(model->is_going_ahead());
        CHECK(model->seconds() > begin);
        CHECK(model->seconds() < begin + 60.0);
        CHECK(model->work_share() == doctest::Approx((model->seconds() - begin) / 60.0));
        REQUIRE(model->work_left().has_value());
        CHECK(*model->work_left() ==
              doctest::Approx((1.0 - model->work_share()) / model->work_share()));
        const double reached = model->seconds();
        model->cancel_ahead();
        CHECK(model->is_ready());
        CHECK(model->seconds() == reached);
        CHECK(model->end_seconds() == reached);
        model->go_ahead_to(begin + 60.0);
        model->finish_replay();
        CHECK(model->seconds() == doctest::Approx(begin + 60.0));
        CHECK(model->pace.is_paused);
        model->go_ahead_to(begin); // it has passed
        CHECK_FALSE(model->is_going_ahead());
    }

    TEST_CASE("a night is passed over coarsely and its last minutes finely")
    {
        BenchModel model(machine("mower"));
        model.go_ahead_to(12.0 * 3600.0);
        model.finish_replay();
        CHECK(model.seconds() == 12.0 * 3600.0);
        const scenes::History& history = model.run().history();
        CHECK(history.store_for(43000.0, 43200.0).interval() == doctest::Approx(0.02));
        CHECK(history.store_for(32000.0, 43200.0).interval() == doctest::Approx(1.0));
        CHECK(history.store_for(0.0, 43200.0).interval() == doctest::Approx(60.0));
        model.go_to(6.0 * 3600.0);
        CHECK(model.seconds() == 6.0 * 3600.0);
    }

    TEST_CASE("a frozen bench thaws when it goes back, and freezes again at the same tick")
    {
        BenchModel model(machine("mower"), {}, sim::Tolerance{.relative = 0.0, .absolute = 1e-300});
        run_for(model, 0.2);
        model.post(sim::SetControl{"tap", 1.0});
        run_for(model, 1.0);
        REQUIRE(model.is_frozen());
        const std::string trouble = model.trouble();
        model.go_to(0.0);
        CHECK_FALSE(model.is_frozen());
        run_for(model, 2.0);
        CHECK(model.is_frozen());
        CHECK(model.trouble() == trouble);
    }

    TEST_CASE("the trimmer too shows its moments again, in a piece of work that is short")
    {
        const std::unique_ptr<BenchModel> model = running("trimmer");
        model->post(sim::SetFault{"adapter_loose", 0.5});
        run_for(*model, 0.3);
        const double middle = model->seconds();
        const auto seen = state(*model);
        run_for(*model, 0.3);
        const auto before = model->run().machine().work().evaluations;
        model->go_to(middle);
        // Twice the work between two moments at most, the last step's included.
        CHECK(model->run().machine().work().evaluations - before < 6000);
        CHECK(state(*model) == seen);
    }

    TEST_CASE("ten minutes of readings and moments of machine and twin stay under 200 MB")
    {
        // Of the trimmer at full speed, scaled up from three seconds: what a moment and a sample
        // take does not change, and their number goes with time.
        const std::unique_ptr<BenchModel> model = running("trimmer");
        model->post(sim::SetControl{"throttle", 1.0});
        model->post(sim::SetFault{"adapter_loose", 0.2});
        const scenes::BenchRun& run = model->run();
        const std::size_t moments_before = run.moments().size();
        run_for(*model, 3.0);
        const double of_moments =
            static_cast<double>(run.moments().size() - moments_before) * 600.0 / 3.0;
        scenes::History full(run.values().size());
        for (sim::Tick at = 0; at <= 600000; at += scenes::History::swift_ticks) {
            full.record_swift(at, run.values());
            if (at % scenes::History::fine_ticks == 0) {
                full.record(at, run.values());
            }
        }
        const double of_readings = 2.0 * static_cast<double>(full.size());
        MESSAGE("ten minutes of the trimmer: " << of_readings / 1e6 << " MB of readings, "
                                               << of_moments / 1e6 << " MB of moments");
        CHECK(of_moments + of_readings < 200e6);
    }
}
