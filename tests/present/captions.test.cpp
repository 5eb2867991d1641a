#include "scenes/present/captions.hpp"
#include "scenes/present/firing_clock.hpp"
#include "scenes/present/hand_words.hpp"
#include "scenes/present/sample_ring.hpp"
#include "scenes/present/sound_feed.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <functional>
#include <numbers>
#include <set>
#include <vector>

namespace {

using scenes::Captions;
using scenes::EngineMoment;
using scenes::Firing;
using Event = Captions::Event;

/// All that is said during a course of moments, looked at sixty times a second.
std::set<Event> said(
    double seconds, const std::function<EngineMoment(double)>& course,
    const std::function<double(double)>& cord = [](double) { return 0.0; }, bool is_touched = false)
{
    Captions captions;
    scenes::FiringClock clock(2.0);
    std::set<Event> events;
    for (double t = 0.0; t < seconds; t += 1.0 / 60.0) {
        EngineMoment moment = course(t);
        moment.seconds = t;
        std::vector<Firing> firings;
        clock.take(moment, firings);
        captions.take(t, moment, firings, cord(t), is_touched);
        events.insert(captions.now());
    }
    events.erase(Event::none);
    return events;
}

} // namespace

TEST_SUITE_BEGIN("present");

TEST_CASE("an engine that runs well needs no caption")
{
    CHECK(said(20.0, [](double t) {
              // 0.5 % of unrest is no hunting
              return EngineMoment{.speed = 320.0 + 1.6 * std::sin(7.0 * t), .burning = 1.0};
          }).empty());
}

TEST_CASE("speed that swings by itself is called hunting")
{
    for (const double pitch : {0.6, 1.5, 4.0}) {
        CAPTURE(pitch);
        const auto course = [pitch](double t) {
            return EngineMoment{.speed =
                                    320.0 + 20.0 * std::sin(2.0 * std::numbers::pi * pitch * t),
                                .burning = 1.0};
        };
        CHECK(said(10.0, course) == std::set{Event::hunts});
        // Speed that follows a lever which is moved to and fro is not.
        CHECK(said(
                  10.0, course, [](double) { return 0.0; }, true)
                  .empty());
    }
}

TEST_CASE("a load that comes and stays is not hunting")
{
    CHECK(said(12.0, [](double t) {
              return EngineMoment{.speed = t < 6.0 ? 320.0 : 300.0, .burning = 1.0};
          }).empty());
}

TEST_CASE("pull, start, misfire and stop are told in their order's words")
{
    const auto course = [](double t) {
        const double speed = t < 1.0 ? 0.0 : t < 1.4 ? 60.0 : t < 8.0 ? 320.0 : 0.0;
        return EngineMoment{.speed = speed, .burning = t < 5.0 ? 1.0 : 0.6};
    };
    const auto cord = [](double t) {
        return t < 1.0 ? 0.0 : std::max(0.0, 0.75 - 2.0 * (t - 1.0));
    };
    CHECK(said(10.0, course, cord) ==
          std::set{Event::cord_pulled, Event::starts, Event::misfires, Event::stops});
    CHECK(said(4.5, course, cord) == std::set{Event::cord_pulled, Event::starts});
}

TEST_CASE("a caption goes away, and its words are the trade's")
{
    Captions captions;
    captions.take(0.0, {}, {}, 0.0, false);
    captions.take(0.1, {}, {}, 0.75, false);
    CHECK(captions.words() == "cord pulled");
    captions.take(4.0, {}, {}, 0.0, false);
    CHECK(captions.words().empty());
}

TEST_CASE("a sound that breaks off and comes back does not click")
{
    for (const std::size_t gap : {1U, 10U, 500U, 5000U}) {
        CAPTURE(gap);
        scenes::SampleRing ring;
        const std::vector<float> loud(3000, 0.8F);
        ring.push(loud);
        std::vector<std::int16_t> heard(3000 + gap);
        ring.pull(heard);
        ring.push(loud);
        std::vector<std::int16_t> more(4000);
        ring.pull(more);
        heard.insert(heard.end(), more.begin(), more.end());
        int most = 0;
        for (std::size_t i = 1; i < heard.size(); ++i) {
            most = std::max(most, std::abs(heard[i] - heard[i - 1]));
        }
        CHECK(most < 700); // 2 % of full scale
        CHECK(*std::max_element(heard.begin(), heard.end()) > 26000);
        CHECK(heard.back() < 50);
        CHECK(ring.fill() == 0);
    }
}

TEST_CASE("a ring that is full drops what does not fit and keeps the rest in order")
{
    scenes::SampleRing ring;
    ring.push(std::vector<float>(scenes::SampleRing::capacity - 10, 0.5F));
    ring.push(std::vector<float>(100, 0.5F));
    CHECK(ring.fill() == scenes::SampleRing::capacity);
}

TEST_CASE("what is fed lasts as long as what went by, at every pace that is heard")
{
    const auto rig = std::make_shared<const sim::Rig>(sim::load_rig("mower"));
    const sim::Simulator machine(rig);
    std::vector<double> values(machine.readings().size());
    values[machine.reading_index("engine.speed")] = 300.0;
    values[machine.reading_index("engine.burning")] = 1.0;
    values[machine.reading_index("engine.air_fuel_ratio")] = 14.0;
    values[machine.reading_index("engine.fuel_rate")] = 2e-4;
    values[machine.reading_index("engine.excess_air")] = 1.0;
    for (const double pace : {1.0, 0.1, 0.01, 10.0}) {
        CAPTURE(pace);
        scenes::SoundFeed feed;
        scenes::SampleRing ring;
        feed.listen_to(machine);
        std::vector<std::int16_t> out(735);
        double loudest = 0.0;
        std::size_t firings = 0;
        for (int frame = 1; frame <= 600; ++frame) {
            feed.go_on(frame / 60.0 * pace, values, pace, 1.0, ring);
            firings += feed.new_firings().size();
            ring.pull(out);
            for (const std::int16_t sample : out) {
                loudest = std::max(loudest, std::abs(static_cast<double>(sample)));
            }
            if (frame > 60 && scenes::is_heard_at(pace)) {
                CHECK(ring.fill() > 500);
                CHECK(ring.fill() < 5000);
            }
        }
        if (scenes::is_heard_at(pace)) {
            CHECK(loudest > 3000.0);
            CHECK(firings ==
                  doctest::Approx(10.0 * pace * 300.0 / 4.0 / std::numbers::pi).epsilon(0.15));
        } else {
            CHECK(loudest == 0.0);
        }
    }
}

TEST_SUITE_END();
