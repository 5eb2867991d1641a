#include "trimmer.hpp"

#include <doctest/doctest.h>

// What a healthy trimmer does. Facts of the trade are common practice, no source, unless a line
// names one.

using tests::Run;
using tests::Trimmer;

TEST_SUITE("behaviour")
{
    TEST_CASE("a dry trimmer is purged in a few squeezes and its bulb comes back in about a second")
    {
        Trimmer trimmer;
        trimmer.to(0.5);
        const int first = trimmer.purge(10);
        // 5 to 10 squeezes until fuel shows: common practice.
        CHECK(first >= 5);
        CHECK(first <= 10);
        CHECK(trimmer.read("suction_hose.liquid") > 95.0);
        CHECK(trimmer.read("metering.liquid") > 50.0);
        // 0.5 to 1.5 s, wet: common practice.
        CHECK(trimmer.read("bulb.return_time") > 0.5);
        CHECK(trimmer.read("bulb.return_time") < 1.5);
        CHECK(trimmer.read("floor.fuel") < 0.01);
    }
}

// With the engine running, resolved stroke by stroke, these take their time.
TEST_SUITE("long")
{
    TEST_CASE("a cold trimmer starts on the choke and idles and pulls at sane speed and fuel use")
    {
        Trimmer trimmer;
        trimmer.to(0.5);
        trimmer.purge();
        const int pulls = trimmer.pull_until_it_runs();
        CHECK(pulls > 0);
        CHECK(pulls <= 8);
        // Low idle of hand-held two-strokes: 2,500 to 3,200 rpm, the head at rest.
        trimmer.at_throttle(0.0, 6.0);
        const double idle = trimmer.mean("engine.speed", 2.0);
        CHECK(idle > 2200.0);
        CHECK(idle < 3300.0);
        CHECK(trimmer.read("engine.power") < 20.0);
        trimmer.set(trimmer.now(), "load", 1.0);
        trimmer.at_throttle(1.0, 6.0);
        CHECK(trimmer.mean("engine.speed", 1.0) > 6500.0);
        CHECK(trimmer.mean("engine.speed", 1.0) < 8500.0);
        CHECK(trimmer.mean("engine.air_fuel_ratio", 1.0) > 11.0);
        CHECK(trimmer.mean("engine.air_fuel_ratio", 1.0) < 14.5);
        // US EPA NONROAD, hand-held two-strokes of 1 to 3 hp: 500 to 830 g/kWh, 10 %.
        const double grams_per_hour = 3600.0 * trimmer.mean("engine.fuel_rate", 1.0);
        const double use = grams_per_hour / (1e-3 * trimmer.mean("engine.power", 1.0));
        CHECK(use > 450.0);
        CHECK(use < 913.0);
        // Pressure of the metering chamber: a fraction of a kilopascal under the open air, needle a
        // hundredth of a millimetre or two up (the design notes' prototype: -0.36 kPa, 0.02 mm).
        CHECK(trimmer.mean("metering.pressure", 1.0) < -0.1);
        CHECK(trimmer.mean("metering.pressure", 1.0) > -0.8);
        CHECK(trimmer.mean("needle.lift", 1.0) > 0.003);
        CHECK(trimmer.mean("needle.lift", 1.0) < 0.05);
    }

    // Half choke until it is warm: common practice.
    TEST_CASE("in frost a trimmer dies when the choke is opened at once and runs on when it waits")
    {
        Trimmer hasty(-10.0);
        hasty.to(0.5);
        hasty.purge();
        int pulls = 1;
        while (!hasty.fires_at_a_pull() && pulls < 10) {
            ++pulls;
        }
        Trimmer patient = hasty;
        MESSAGE("fires at pull " << pulls);
        CHECK(pulls <= 6);
        CHECK_FALSE(hasty.runs_on_after(0.0));
        CHECK(patient.runs_on_after(20.0));
    }

    TEST_CASE("a trimmer runs on upside down")
    {
        Trimmer trimmer;
        trimmer.running(1.0, 2.0).set(trimmer.now(), "load", 1.0).to(trimmer.now() + 2.0);
        const double before = trimmer.mean("engine.speed", 0.5);
        trimmer.set(trimmer.now(), "tilt_side", 180.0).to(trimmer.now() + 6.0);
        CHECK(trimmer.read("pickup.height") > -25.0); // the weight has fallen to what was the roof
        CHECK(trimmer.mean("engine.speed", 0.5) > 0.97 * before);
        CHECK(trimmer.read("floor.fuel") < 0.05);
    }

    TEST_CASE("the crankcase's pulse works the pump in step with the crank")
    {
        Trimmer trimmer;
        trimmer.running(1.0, 3.0);
        const Run::Spread pulse = trimmer.over("crankcase.pressure", 1.0);
        // Some -30 to +50 kPa: common practice.
        CHECK(pulse.low < -5.0);
        CHECK(pulse.low > -40.0);
        CHECK(pulse.high > 15.0);
        CHECK(pulse.high < 60.0);
        CHECK(trimmer.read("pump.stroke") > 0.05);
        CHECK(trimmer.mean("gallery.pressure", 0.5) > 5.0);
    }
}
