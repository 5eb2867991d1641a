#include "scenes/present/engine_sound.hpp"
#include "scenes/present/engine_ear.hpp"
#include "scenes/present/firing_clock.hpp"
#include "scenes/present/sound_file.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <complex>
#include <cstring>
#include <functional>
#include <numbers>
#include <vector>

namespace {

using scenes::EngineMoment;
using scenes::Firing;

constexpr double pi = std::numbers::pi;
constexpr double rpm = 2.0 * pi / 60.0;

/// An engine's recording with all that made it.
struct Recording {
    std::vector<EngineMoment> moments;
    std::vector<Firing> firings;
    std::vector<float> samples;
};

/// Records what a course of moments sounds like, looked at every 2 ms.
Recording record(double seconds, const std::function<EngineMoment(double)>& course,
                 double turns_per_firing = 2.0, double size = 1.0)
{
    Recording result;
    scenes::FiringClock clock(turns_per_firing);
    for (int i = 0; i <= static_cast<int>(seconds * 500.0); ++i) {
        EngineMoment moment = course(i * 0.002);
        moment.seconds = i * 0.002;
        result.moments.push_back(moment);
        clock.take(moment, result.firings);
    }
    result.samples.resize(static_cast<std::size_t>(seconds * scenes::sound_rate));
    scenes::render(
        {.first_sample = 0, .firings = result.firings, .moments = result.moments, .size = size},
        result.samples);
    return result;
}

Recording steady(double speed, double burning = 1.0, double turns_per_firing = 2.0)
{
    return record(
        3.0, [=](double) { return EngineMoment{.speed = speed, .load = 0.6, .burning = burning}; },
        turns_per_firing);
}

/// The lag between `shortest` and `longest` at which the sound is most like itself, s.
///
/// source:  unbiased autocorrelation, textbook definition
double period_of(const std::vector<float>& samples, double shortest, double longest)
{
    const auto from = static_cast<std::size_t>(shortest * scenes::sound_rate);
    const auto to = static_cast<std::size_t>(longest * scenes::sound_rate);
    double best = -1e300;
    std::size_t at = from;
    const std::size_t count = samples.size() - to;
    for (std::size_t lag = from; lag <= to; ++lag) {
        double sum = 0.0;
        for (std::size_t i = 0; i < count; i += 3) {
            sum += static_cast<double>(samples[i]) * static_cast<double>(samples[i + lag]);
        }
        if (sum > best) {
            best = sum;
            at = lag;
        }
    }
    return static_cast<double>(at) / scenes::sound_rate;
}

/// Strength of a frequency, as a share of full scale.
///
/// source:  one bin of the discrete Fourier transform (Goertzel's), by its definition
double strength(const std::vector<double>& samples, double rate, double pitch)
{
    std::complex<double> sum;
    for (std::size_t i = 0; i < samples.size(); ++i) {
        sum += samples[i] * std::polar(1.0, -2.0 * pi * pitch * static_cast<double>(i) / rate);
    }
    return 2.0 * std::abs(sum) / static_cast<double>(samples.size());
}

/// Loudness over time: root mean squares of `window` seconds each.
std::vector<double> loudness(const std::vector<float>& samples, double window)
{
    const auto length = static_cast<std::size_t>(window * scenes::sound_rate);
    std::vector<double> result;
    for (std::size_t i = 0; i + length <= samples.size(); i += length) {
        double sum = 0.0;
        for (std::size_t k = i; k < i + length; ++k) {
            sum += static_cast<double>(samples[k]) * static_cast<double>(samples[k]);
        }
        result.push_back(std::sqrt(sum / static_cast<double>(length)));
    }
    return result;
}

double peak(const std::vector<float>& samples)
{
    double most = 0.0;
    for (const float sample : samples) {
        most = std::max(most, static_cast<double>(std::abs(sample)));
    }
    return most;
}

double greatest_jump(const std::vector<float>& samples)
{
    double most = 0.0;
    for (std::size_t i = 1; i < samples.size(); ++i) {
        most = std::max(most, std::abs(static_cast<double>(samples[i] - samples[i - 1])));
    }
    return most;
}

/// Energy of a firing's first 15 ms.
double bang(const Recording& recording, const Firing& firing)
{
    const auto from = static_cast<std::size_t>(firing.seconds * scenes::sound_rate);
    double sum = 0.0;
    for (std::size_t i = from; i < std::min(from + 660, recording.samples.size()); ++i) {
        sum += std::pow(static_cast<double>(recording.samples[i]), 2.0);
    }
    return sum;
}

} // namespace

TEST_SUITE_BEGIN("present");

TEST_CASE("an engine is heard at the pitch it fires at")
{
    for (const double turns : {2.0, 1.0}) {
        for (const double speed : {900.0, 1900.0, 3060.0, 5000.0, 9000.0}) {
            CAPTURE(turns);
            CAPTURE(speed);
            const double period = 60.0 * turns / speed;
            const Recording engine = steady(speed * rpm, 1.0, turns);
            const double heard = period_of(engine.samples, 0.55 * period, 1.45 * period);
            CHECK(heard == doctest::Approx(period).epsilon(0.02));
            // Nothing below it repeats: the spectrum has a line there and none half way.
            const std::vector<double> samples(engine.samples.begin(), engine.samples.end());
            const double line = strength(samples, scenes::sound_rate, 2.0 / period);
            CHECK(line > 4.0 * strength(samples, scenes::sound_rate, 1.5 / period));
        }
    }
}

TEST_CASE("hunting is heard as loudness that comes and goes with it")
{
    constexpr double hunting = 1.25; // Hz
    const Recording engine = record(8.0, [](double t) {
        const double swing = std::sin(2.0 * pi * hunting * t);
        return EngineMoment{.speed = 3000.0 * rpm * (1.0 + 0.08 * swing),
                            .load = 0.5 + 0.3 * swing,
                            .burning = 1.0};
    });
    std::vector<double> loud = loudness(engine.samples, 0.05);
    double mean = 0.0;
    for (const double value : loud) {
        mean += value / static_cast<double>(loud.size());
    }
    for (double& value : loud) {
        value /= mean;
        value -= 1.0;
    }
    CHECK(strength(loud, 20.0, hunting) > 0.15);
    for (const double other : {0.5, 0.75, 1.75, 3.1}) {
        CAPTURE(other);
        CHECK(strength(loud, 20.0, hunting) > 5.0 * strength(loud, 20.0, other));
    }
}

TEST_CASE("misfires are gaps, as many as charges that do not light")
{
    const Recording engine = steady(1900.0 * rpm, 0.7);
    double fired = 0.0;
    double missed = 0.0;
    double quietest_bang = 1e300;
    double loudest_gap = 0.0;
    for (const Firing& firing : engine.firings) {
        if (firing.seconds > 2.9) {
            continue;
        }
        (firing.is_misfire ? missed : fired) += 1.0;
        if (firing.is_misfire) {
            loudest_gap = std::max(loudest_gap, bang(engine, firing));
        } else {
            quietest_bang = std::min(quietest_bang, bang(engine, firing));
        }
    }
    REQUIRE(fired + missed > 40.0);
    CHECK(missed / (fired + missed) == doctest::Approx(0.3).epsilon(0.5)); // some 45 draws
    CHECK(quietest_bang > 4.0 * loudest_gap);
    for (const Firing& firing : steady(1900.0 * rpm).firings) {
        CHECK_FALSE(firing.is_misfire);
    }
    for (const Firing& firing : steady(1900.0 * rpm, 0.0).firings) {
        CHECK(firing.is_misfire);
    }
}

TEST_CASE("sound neither clips nor clicks")
{
    for (const double speed : {200.0, 1900.0, 3060.0, 9000.0}) {
        for (const double burning : {1.0, 0.6}) {
            CAPTURE(speed);
            CAPTURE(burning);
            const Recording engine = record(
                2.0,
                [=](double t) {
                    return EngineMoment{.speed = speed * rpm,
                                        .load = t < 1.0 ? 0.1 : 1.0, // the throttle flies open
                                        .burning = burning,
                                        .richness = 0.8};
                },
                1.0, 2.0);
            CHECK(peak(engine.samples) > 0.05);
            CHECK(peak(engine.samples) < 0.99);
            // A full-scale sine of 1.6 kHz moves so far from sample to sample.
            CHECK(greatest_jump(engine.samples) < 2.0 * pi * 1600.0 / scenes::sound_rate);
        }
    }
}

TEST_CASE("a standing engine is silent")
{
    CHECK(peak(steady(0.0).samples) == 0.0);
}

TEST_CASE("the same input gives the same samples, whole or in pieces")
{
    const Recording once = steady(3060.0 * rpm, 0.8);
    const Recording again = steady(3060.0 * rpm, 0.8);
    REQUIRE(once.samples.size() == again.samples.size());
    CHECK(std::memcmp(once.samples.data(), again.samples.data(),
                      once.samples.size() * sizeof(float)) == 0);
    std::vector<float> pieces(once.samples.size());
    for (std::size_t at = 0; at < pieces.size(); at += 777) {
        const std::size_t count = std::min<std::size_t>(777, pieces.size() - at);
        scenes::render({.first_sample = static_cast<std::int64_t>(at),
                        .firings = once.firings,
                        .moments = once.moments},
                       std::span(pieces).subspan(at, count));
    }
    CHECK(std::memcmp(once.samples.data(), pieces.data(), pieces.size() * sizeof(float)) == 0);
}

TEST_CASE("firings of a known crank fall on top dead centre, however rarely it is looked at")
{
    for (const double every : {0.001, 0.0167}) { // several looks a turn; two turns a look
        CAPTURE(every);
        constexpr double speed = 7000.0 * rpm;
        scenes::FiringClock clock(1.0);
        std::vector<Firing> firings;
        double last = 0.0;
        for (double t = 0.0; t < 1.0; t += every) {
            last = t;
            clock.take({.seconds = t,
                        .speed = speed * 1.01, // a reading within the turn is not its mean
                        .burning = 1.0,
                        .crank_angle = std::remainder(speed * t, 2.0 * pi)},
                       firings);
        }
        CHECK(std::abs(static_cast<double>(firings.size()) - 7000.0 / 60.0 * last) <= 1.0);
        for (const Firing& firing : firings) {
            CHECK(std::abs(std::remainder(speed * firing.seconds, 2.0 * pi)) < 0.25);
        }
    }
}

TEST_CASE("the mower is heard at half its turns, the trimmer at each")
{
    struct Machine {
        const char* rig;
        double begin;
        double turns;
    };
    for (const Machine& machine : {Machine{"mower", 90.0, 2.0}, Machine{"trimmer", 24.0, 1.0}}) {
        CAPTURE(machine.rig);
        const auto rig = std::make_shared<const sim::Rig>(sim::load_rig(machine.rig));
        sim::Simulator simulator(rig);
        for (const sim::TimedCommand& timed : rig->default_sheet.commands) {
            if (timed.at < std::llround(machine.begin * 1000.0)) {
                simulator.post(timed.command, timed.at);
            }
        }
        const scenes::EngineEar ear(simulator);
        CHECK(ear.turns_per_firing() == machine.turns);
        std::vector<double> values(simulator.readings().size());
        const auto begin = static_cast<sim::Tick>(machine.begin * 1000.0);
        simulator.advance(begin);
        double speed = 0.0;
        const Recording engine = record(
            1.0,
            [&](double t) {
                simulator.advance(begin + std::llround(t * 1000.0));
                simulator.read(values);
                const EngineMoment moment = ear.hear(values, t);
                speed += moment.speed / 501.0;
                CHECK(moment.burning > 0.9);
                return moment;
            },
            machine.turns);
        const double period = machine.turns * 2.0 * pi / speed;
        CHECK(period_of(engine.samples, 0.6 * period, 1.4 * period) ==
              doctest::Approx(period).epsilon(0.02));
    }
}

TEST_CASE("a second of sound is rendered in a small share of a second")
{
    const Recording engine = steady(9000.0 * rpm, 1.0, 1.0);
    std::vector<float> second(44100);
    const auto begin = std::chrono::steady_clock::now();
    scenes::render({.first_sample = 44100, .firings = engine.firings, .moments = engine.moments},
                   second);
    const std::chrono::duration<double> spent = std::chrono::steady_clock::now() - begin;
    MESSAGE("a second at 9000 rpm takes ", spent.count() * 1e3, " ms");
    CHECK(spent.count() < 0.5); // also under a sanitizer
}

TEST_CASE("a WAV file says how long it is and what it holds")
{
    const std::vector<float> samples{0.0F, 1.0F, -1.0F, 0.5F};
    const std::string bytes = scenes::wav_bytes(samples);
    REQUIRE(bytes.size() == 44 + 8);
    CHECK(bytes.substr(0, 4) == "RIFF");
    CHECK(bytes.substr(8, 8) == "WAVEfmt ");
    CHECK(static_cast<unsigned char>(bytes[4]) == 44);
    CHECK(static_cast<unsigned char>(bytes[40]) == 8);
    CHECK(static_cast<unsigned char>(bytes[24]) + 256 * static_cast<unsigned char>(bytes[25]) ==
          44100);
    CHECK(bytes.substr(46, 2) == "\xff\x7f"); // 32767, low byte first
    CHECK(bytes.substr(48, 2) == "\x01\x80"); // -32767
}

TEST_SUITE_END();
