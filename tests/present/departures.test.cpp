#include "scenes/present/departures.hpp"
#include "scenes/present/bench_model.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace {

using scenes::BenchModel;
using scenes::Departure;
using scenes::Departures;

std::unique_ptr<BenchModel> running(const std::string& id)
{
    auto model = std::make_unique<BenchModel>(std::make_shared<const sim::Rig>(sim::load_rig(id)));
    model->begin_running();
    model->finish_replay();
    return model;
}

void ahead(BenchModel& model, double seconds)
{
    model.go_ahead_to(model.seconds() + seconds);
    model.finish_replay();
}

/// The departures of all samples so far.
std::vector<Departure> departures(const BenchModel& model)
{
    Departures found;
    found.follow(model.run(), model.run_number(), 1000000);
    return found.list();
}

const Departure* find(const BenchModel& model, const std::vector<Departure>& list,
                      std::string_view name)
{
    const std::size_t reading = model.run().machine().reading_index(name);
    const auto found = std::ranges::find(list, reading, &Departure::reading);
    return found == list.end() ? nullptr : &*found;
}

/// When a reading left, or long after everything.
double time_of(const BenchModel& model, const std::vector<Departure>& list, std::string_view name)
{
    const Departure* found = find(model, list, name);
    return found == nullptr ? 1e9 : found->at;
}

} // namespace

TEST_SUITE("present")
{
    TEST_CASE("nothing has left the band of a healthy machine")
    {
        const std::unique_ptr<BenchModel> model = running("mower");
        model->post(sim::SetControl{"load", 0.6});
        ahead(*model, 5.0);
        CHECK(departures(*model).empty());
        model->post(sim::SetFault{"bowl_vent_plugged", 0.0}); // a twin, and no fault
        ahead(*model, 5.0);
        CHECK(departures(*model).empty());
    }

    // common practice, no source: the vent tells first, the bowl and what it feeds next, the engine
    // last. Bowl, jet and mixture follow each other within the 20 ms of a sample; their order among
    // themselves is not told apart.
    TEST_CASE("with the bowl vent shut the vent tells first, the bowl next, the speed later")
    {
        const std::unique_ptr<BenchModel> model = running("mower");
        const double begin = model->seconds();
        model->post(sim::SetFault{"bowl_vent_plugged", 1.0});
        ahead(*model, 2.0);
        model->post(sim::SetControl{"load", 0.9});
        ahead(*model, 30.0);
        const std::vector<Departure> list = departures(*model);
        REQUIRE_FALSE(list.empty());
        CHECK(std::ranges::is_sorted(list, {}, &Departure::at));
        CHECK(list.front().at >= begin);
        CHECK(list.front().reading == model->run().machine().reading_index("bowl_vent.air"));
        for (const char* name : {"bowl.pressure", "main_jet.flow", "engine.air_fuel_ratio"}) {
            CAPTURE(name);
            CHECK(time_of(*model, list, name) < begin + 0.03);
        }
        const double level = time_of(*model, list, "bowl.level");
        const double speed = time_of(*model, list, "engine.speed");
        const double heat = time_of(*model, list, "engine.head_temperature");
        CHECK(level > begin + 0.2);
        CHECK(level < speed);
        CHECK(speed < heat);
        CHECK(heat < 1e9);
        CHECK(find(*model, list, "bowl.pressure")->amount < 0.0);
        CHECK(find(*model, list, "engine.speed")->amount < 0.0);
        CHECK(find(*model, list, "tank.temperature") == nullptr);
    }

    TEST_CASE("departures of samples taken as they come are those of all samples at once")
    {
        const std::unique_ptr<BenchModel> model = running("mower");
        model->post(sim::SetFault{"main_jet_plugged", 1.0});
        Departures live;
        for (int i = 0; i < 100; ++i) {
            ahead(*model, 0.05);
            live.follow(model->run(), model->run_number());
        }
        const auto whole = departures(*model);
        REQUIRE_FALSE(whole.empty());
        REQUIRE(live.list().size() == whole.size());
        for (std::size_t i = 0; i < whole.size(); ++i) {
            CHECK(live.list()[i].reading == whole[i].reading);
            CHECK(live.list()[i].at == whole[i].at);
            CHECK(live.list()[i].amount == whole[i].amount);
        }
        const auto* jet = find(*model, whole, "main_jet.flow");
        REQUIRE(jet != nullptr);
        CHECK(jet->amount < 0.0);
        // A branch without the fault has nothing left to show.
        model->undo();
        model->finish_replay();
        live.follow(model->run(), model->run_number(), 1000000);
        CHECK(live.list().empty());
    }

    TEST_CASE("the swing of a trimmer's turn is no departure")
    {
        const std::unique_ptr<BenchModel> model = running("trimmer");
        model->post(sim::SetFault{"adapter_loose", 0.0}); // a twin, and no fault
        ahead(*model, 1.0);
        CHECK(departures(*model).empty());
        model->post(sim::SetFault{"inlet_screen_plugged", 1.0});
        ahead(*model, 1.0);
        const std::vector<Departure> list = departures(*model);
        REQUIRE_FALSE(list.empty());
        CHECK(list.front().reading == model->run().machine().reading_index("needle.screen_drop"));
    }

    // Checked against two machines run side by side tick by tick, without history or moments.
    TEST_CASE("departures within one sample stand in the order of their ticks")
    {
        const auto rig = std::make_shared<const sim::Rig>(sim::load_rig("mower"));
        const std::unique_ptr<BenchModel> model = running("mower");
        ahead(*model, 0.007); // not on a sample
        model->post(sim::SetFault{"bowl_vent_plugged", 1.0});
        ahead(*model, 3.0);
        Departures found;
        found.follow(model->run(), model->run_number(), 1000000);
        CHECK_FALSE(found.is_refined());
        const std::vector<Departure> rough = found.list();
        int frames = 0;
        for (; !found.is_refined() && frames < 100000; ++frames) {
            bool is_first = true; // a little at a time
            found.refine(model->run(), [&] { return std::exchange(is_first, false); });
        }
        CHECK(frames > 1);
        const std::vector<Departure>& list = found.list();
        CHECK(std::ranges::is_sorted(list, {}, &Departure::at));

        sim::Simulator machine(rig);
        sim::Simulator twin(rig);
        for (const sim::TimedCommand& timed : model->sheet().commands) {
            machine.post(timed.command, timed.at);
            if (!std::holds_alternative<sim::SetFault>(timed.command)) {
                twin.post(timed.command, timed.at);
            }
        }
        std::vector<double> values(machine.readings().size());
        std::vector<double> healthy(values.size());
        std::vector<sim::Tick> left(values.size(), 0); // out since then
        int checked = 0;
        int pairs = 0;
        const auto begin = static_cast<sim::Tick>(model->seconds() * 1000.0 + 0.5) - 3010;
        for (sim::Tick at = begin; at < begin + 3000; ++at) {
            machine.advance(at);
            twin.advance(at);
            machine.read(values);
            twin.read(healthy);
            for (const Departure& each : list) {
                const std::size_t i = each.reading;
                const bool is_out = std::abs(values[i] - healthy[i]) > each.band;
                left[i] = !is_out ? 0 : left[i] == 0 ? at : left[i];
                // What stood out at the sample must have left at the tick that was found.
                const auto exit = std::llround(each.at * 1000.0);
                if (at % 20 == 0 && at >= exit && at < exit + 20) {
                    CAPTURE(machine.readings()[i].name);
                    CHECK(each.off_by == 0.0);
                    CHECK(left[i] == exit);
                    ++checked;
                }
            }
        }
        CHECK(checked == static_cast<int>(list.size()));
        for (std::size_t i = 1; i < list.size(); ++i) {
            const bool is_one_sample =
                std::ceil(list[i - 1].at / 0.02 - 1e-6) == std::ceil(list[i].at / 0.02 - 1e-6);
            pairs += is_one_sample && list[i].at > list[i - 1].at ? 1 : 0;
        }
        CHECK(pairs > 0); // two that the samples could not tell apart
        CHECK(rough.size() == list.size());
    }

    TEST_CASE("a departure within leaps says how loose its time is")
    {
        const std::unique_ptr<BenchModel> model = running("trimmer");
        model->post(sim::SetFault{"inlet_screen_plugged", 1.0});
        ahead(*model, 3.0); // with leaps
        Departures found;
        found.follow(model->run(), model->run_number(), 1000000);
        found.refine(model->run(), [] { return true; });
        REQUIRE_FALSE(found.list().empty());
        CHECK(found.is_refined());
        for (const Departure& each : found.list()) {
            CHECK(each.off_by == doctest::Approx(0.2));
        }
        // Followed turn by turn there are samples, and ticks to be found.
        model->undo();
        model->finish_replay();
        model->pace.is_paused = false;
        model->post(sim::SetFault{"inlet_screen_plugged", 1.0});
        for (int i = 0; i < 50; ++i) {
            model->advance(0.01, [] { return true; });
        }
        Departures exact;
        exact.follow(model->run(), model->run_number(), 1000000);
        exact.refine(model->run(), [] { return true; });
        REQUIRE_FALSE(exact.list().empty());
        for (const Departure& each : exact.list()) {
            CHECK(each.off_by == 0.0);
        }
    }
}
