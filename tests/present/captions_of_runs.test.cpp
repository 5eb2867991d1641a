#include "scenes/present/captions.hpp"
#include "scenes/present/engine_ear.hpp"
#include "scenes/present/firing_clock.hpp"

#include <doctest/doctest.h>

#include <map>
#include <string>
#include <vector>

namespace {

using Event = scenes::Captions::Event;

/// Seconds for which each caption stands in a stretch of a mower's default run with some faults.
std::map<Event, double> told(const std::vector<sim::SetFault>& faults, double from, double to)
{
    const auto rig = std::make_shared<const sim::Rig>(sim::load_rig("mower"));
    sim::Simulator machine(rig);
    for (const sim::TimedCommand& timed : rig->default_sheet.commands) {
        machine.post(timed.command, timed.at);
    }
    for (const sim::SetFault& fault : faults) {
        machine.post(fault, 70000);
    }
    const scenes::EngineEar ear(machine);
    const std::size_t cord = machine.reading_index("recoil.cord");
    scenes::FiringClock clock(ear.turns_per_firing());
    scenes::Captions captions;
    std::vector<double> values(machine.readings().size());
    std::map<Event, double> seconds;
    std::map<std::string, double> controls;
    for (sim::Tick at = 0; at < static_cast<sim::Tick>(to * 1000.0); at += 17) {
        machine.advance(at);
        machine.read(values);
        bool was_touched = false;
        for (const sim::Control& control : rig->controls) {
            const double now = machine.control(control.id);
            was_touched = was_touched || controls[control.id] != now;
            controls[control.id] = now;
        }
        std::vector<scenes::Firing> firings;
        const scenes::EngineMoment moment = ear.hear(values, machine.seconds());
        clock.take(moment, firings);
        captions.take(machine.seconds(), moment, firings, values[cord], was_touched);
        if (machine.seconds() >= from) {
            seconds[captions.now()] += 0.017;
        }
    }
    seconds.erase(Event::none);
    return seconds;
}

} // namespace

TEST_SUITE_BEGIN("present");

TEST_CASE("a cold start is told as pull and start, and as misfires while the choke stays shut")
{
    const auto start = told({}, 0.0, 62.0);
    CHECK(start.contains(Event::cord_pulled));
    CHECK(start.contains(Event::starts));
    CHECK(start.at(Event::starts) > 0.5);
    CHECK(start.contains(Event::misfires)); // 0.44 of the air that the fuel wants
    CHECK_FALSE(start.contains(Event::hunts));
}

TEST_CASE("a warm healthy mower under changing load needs no caption")
{
    for (const auto& [event, seconds] : told({}, 66.0, 120.0)) {
        CAPTURE(seconds);
        CHECK(event == Event::none);
    }
}

TEST_CASE("a sticking governor is told as hunting and a dead spark as a stop")
{
    CHECK(told({{"governor_sticky", 1.0}}, 72.0, 120.0).contains(Event::hunts));
    CHECK(told({{"no_spark", 1.0}}, 70.0, 90.0).contains(Event::stops));
}

TEST_SUITE_END();
