#include "scenes/present/bench_model.hpp"
#include "scenes/present/readout.hpp"

#include <doctest/doctest.h>

#include <cmath>

namespace {

std::shared_ptr<const sim::Rig> mower()
{
    static const auto rig = std::make_shared<const sim::Rig>(sim::load_rig("mower"));
    return rig;
}

/// A machine with its tap open for a time, engine at rest.
scenes::FuelHeads at_rest(double seconds, double tap)
{
    scenes::BenchModel model(mower());
    model.begin({"mower", {{0, sim::SetControl{"tap", tap}}}},
                std::llround(seconds / sim::tick_length));
    model.finish_replay();
    return model.run().heads();
}

} // namespace

TEST_SUITE("present")
{
    TEST_CASE("with no flow the grade line is level from the tank's surface to the needle")
    {
        // Hydrostatics: with nothing flowing the total head is the same all along a full pipe. The
        // surface stands where the tank's own reading says, in the rig's geometry.
        scenes::BenchModel model(mower());
        model.begin({"mower", {{0, sim::SetControl{"tap", 1.0}}}}, 120000);
        model.finish_replay();
        const auto heads = model.run().heads();
        const auto& machine = model.run().machine();
        const double level = model.run().values()[machine.reading_index("tank.level")];
        const double surface = level + 0.150 - 0.020; // tank floor at 150 mm, datum at 20 mm
        CHECK(heads.at("tank outlet") == doctest::Approx(surface * 1e3).epsilon(0.01));
        CHECK(std::abs(heads.at("hose end") - heads.at("tank outlet")) < 1.5);
        // The float holds the bowl at its healthy mark, and the well stands as high.
        CHECK(std::abs(heads.at("bowl")) < 0.5);
        CHECK(std::abs(heads.at("nozzle") - heads.at("bowl")) < 0.5);
        CHECK(heads.lip > heads.at("bowl"));
    }

    TEST_CASE("each station begins where the one before it ends")
    {
        for (const double tap : {0.0, 0.3, 1.0}) {
            CAPTURE(tap);
            const auto heads = at_rest(10.0, tap);
            for (std::size_t i = 1; i < heads.stations.size(); ++i) {
                CAPTURE(std::string(heads.stations[i].name));
                CHECK(heads.stations[i].before ==
                      doctest::Approx(heads.stations[i - 1].after).epsilon(1e-9));
            }
        }
    }

    TEST_CASE("a shut tap is the cliff")
    {
        const auto heads = at_rest(10.0, 0.0);
        const auto& tap = heads.stations[2];
        CHECK(std::string(tap.name) == "tap");
        // The column over the tap, 56 mm of fuel in the 70 mm tank, 80 % full.
        CHECK(tap.before - tap.after == doctest::Approx(56.0).epsilon(0.02));
    }

    TEST_CASE("readings are shown in their own units")
    {
        const auto shown = [](const char* unit, double si) {
            return scenes::readout_of({"a.b", unit, 0, 0}).shown(si);
        };
        CHECK(shown("degC", 293.15) == doctest::Approx(20.0));
        CHECK(shown("kPa", 1500.0) == doctest::Approx(1.5));
        CHECK(shown("mL/min", 1e-6) == doctest::Approx(60.0));
        CHECK(shown("", 0.7) == doctest::Approx(0.7));
        CHECK_THROWS_AS(scenes::readout_of({"a.b", "furlong", 0, 0}), std::logic_error);
        CHECK(scenes::reading_title("main_jet.flow") == "main jet flow");
        CHECK(scenes::clock_text(0.0) == "0:00.00");
        CHECK(scenes::clock_text(123.456) == "2:03.45");
        CHECK(scenes::clock_text(3661.5) == "1:01:01.50");
    }
}
