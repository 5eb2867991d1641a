#include "scenes/present/readout.hpp"
#include "scenes/present/phrase.hpp"
#include "sim/simulator.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <memory>
#include <set>

using namespace scenes;

TEST_SUITE_BEGIN("present");

namespace {

/// Shows US customary units while it lives.
struct Customary {
    Customary() { choose_units(UnitSet::us_customary); }
    ~Customary() { choose_units(UnitSet::si); }
    Customary(const Customary&) = delete;
    Customary& operator=(const Customary&) = delete;
};

} // namespace

// source: A. Thompson, B. Taylor, NIST Special Publication 811, 2008, appendix B.8
TEST_CASE("US customary units are those of the tables")
{
    const Customary us;
    const auto shown = [](const char* unit, double si) { return readout_of(unit).shown(si); };
    CHECK(shown("kPa", 6894.757) == doctest::Approx(1.0).epsilon(1e-6));
    CHECK(shown("mm", 0.0254) == doctest::Approx(1.0));
    CHECK(shown("m", 0.3048) == doctest::Approx(1.0));
    CHECK(shown("mL", 2.957353e-5) == doctest::Approx(1.0).epsilon(1e-6));
    CHECK(shown("mL/min", 2.957353e-5 / 60.0) == doctest::Approx(1.0).epsilon(1e-6));
    CHECK(shown("g/s", 1.259979e-4) == doctest::Approx(1.0).epsilon(1e-6));
    CHECK(shown("N m", 1.355818) == doctest::Approx(1.0).epsilon(1e-6));
    CHECK(shown("W", 745.6999) == doctest::Approx(1.0).epsilon(1e-6));
    CHECK(shown("degC", 273.15) == doctest::Approx(32.0));
    CHECK(shown("degC", 373.15) == doctest::Approx(212.0));
    CHECK(shown("rpm", 104.7197551) == doctest::Approx(1000.0));
    CHECK(readout_of("degC").sign == "\u00B0F");
    CHECK(readout_of("mL").text(2.957353e-5) == "1.000 fl oz");
}

TEST_CASE("a switch of units reaches every reading and ages what was worded before")
{
    const int age = wording_age();
    std::set<std::string> si;
    std::set<std::string> us;
    for (const std::string& id : sim::rig_ids()) {
        const sim::Simulator machine(std::make_shared<const sim::Rig>(sim::load_rig(id)));
        for (const sim::Network::Reading& reading : machine.readings()) {
            const Readout before = readout_of(reading);
            const Customary customary;
            const Readout after = readout_of(reading);
            si.insert(before.sign);
            us.insert(after.sign);
            // As fine a last figure as before, or finer, but never by more than a hundred times.
            const auto grain = [](const Readout& readout) {
                return readout.factor * std::pow(10.0, -readout.decimals);
            };
            CAPTURE(reading.name);
            CHECK(grain(after) <= grain(before) * 3.0);
            CHECK(grain(after) >= grain(before) / 100.0);
        }
    }
    CHECK(wording_age() > age);
    for (const char* metric : {"mm", "m", "kPa", "\u00B0C", "mL", "mL/min", "g/s", "N m", "W"}) {
        CAPTURE(metric);
        CHECK(si.contains(metric));
        CHECK_FALSE(us.contains(metric));
    }
}

TEST_SUITE_END();
