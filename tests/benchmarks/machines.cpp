// How fast the machines run with their own stepper and with SUNDIALS CVODE on the same equations,
// each at several tolerances, with the error of the readings against CVODE at 1e-11. One core.

#include "tests/reference/cvode_machine.hpp"
#include "tests/reference/reading_error.hpp"
#include "tests/reference/sheets.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <limits>
#include <random>

using namespace sim;
using namespace tests;

namespace {

constexpr std::size_t most_repetitions = 5;
/// No more repetitions once they have taken this long together.
constexpr double patience = 1.0; // s
constexpr Tick look_stride = 100;
/// Some ten seconds of CVODE; at loose tolerances it may chatter about a valve without end.
constexpr long most_steps = 100'000;
constexpr long most_steps_when_steady = 100'000'000;

Tick tick_at(double seconds)
{
    return std::llround(seconds / tick_length);
}

/// A run from the shelf of which the part from `from` to `to` is timed, in seconds.
struct Course {
    const char* title;
    std::shared_ptr<const Rig> rig;
    std::vector<TimedCommand> commands;
    double from;
    double to;
    /// Readings that do not swing within a turn, by which a long steady course is judged: two ways
    /// through thousands of turns are soon at different places of the turn. None: by all readings.
    std::vector<std::string> slow{};

    /// So that leaps over many turns are worth a try.
    [[nodiscard]] bool is_steady() const { return !slow.empty(); }
};

/// What is right on a course: CVODE at 1e-11 (1e-9 on a steady one), and the ranges of the readings
/// from the shelf on.
struct Truth {
    explicit Truth(const Course& course) : readings(Simulator(course.rig).readings())
    {
        const double tolerance = course.is_steady() ? 1e-9 : 1e-11;
        CvodeMachine machine(course.rig, course.commands,
                             {tolerance, tolerance, CvodeMatrix::analytic_klu});
        Record whole = record_of(machine, readings.size(), 0, tick_at(course.to), look_stride);
        ranges = ranges_of(whole, readings);
        whole.erase(whole.begin(), whole.begin() + tick_at(course.from) / look_stride);
        record = std::move(whole);
    }

    std::vector<Network::Reading> readings;
    std::vector<double> ranges;
    Record record;
};

struct Counts {
    long steps = 0;
    long failed = 0;
    long evaluations = 0;
    long factorisations = 0;
};

Counts counts_of(const Simulator& simulator)
{
    const Work& work = simulator.work();
    return {static_cast<long>(work.steps), static_cast<long>(work.rejected),
            static_cast<long>(work.evaluations), static_cast<long>(work.factorisations)};
}

Counts counts_of(const CvodeMachine& machine)
{
    const CvodeWork work = machine.work();
    return {work.steps, work.failed, work.evaluations, work.factorisations};
}

/// One way to solve a course, at one tolerance.
struct Entry {
    double tolerance = 0.0;
    double seconds = 0.0; ///< of wall time, median
    double error = 0.0;   ///< largest of any reading, as a share of its range
    std::string worst;    ///< that reading
    Counts counts;
};

/// Times the course on a machine that `make` gives fresh each time; then measures its error.
template <class Make>
Entry measured(const Course& course, const Truth& truth, double tolerance, Make make)
{
    Entry entry;
    entry.tolerance = tolerance;
    std::vector<double> times;
    double spent = 0.0;
    while (times.size() < most_repetitions && spent < patience) {
        auto machine = make();
        machine.advance(tick_at(course.from));
        const Counts before = counts_of(machine);
        const auto start = std::chrono::steady_clock::now();
        machine.advance(tick_at(course.to));
        const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - start;
        times.push_back(taken.count());
        spent += taken.count();
        const Counts after = counts_of(machine);
        entry.counts = {after.steps - before.steps, after.failed - before.failed,
                        after.evaluations - before.evaluations,
                        after.factorisations - before.factorisations};
    }
    std::ranges::sort(times);
    entry.seconds = times[times.size() / 2];
    auto machine = make();
    const Record record = record_of(machine, truth.readings.size(), tick_at(course.from),
                                    tick_at(course.to), look_stride);
    const auto errors = reading_errors(record, truth.record, truth.ranges, truth.readings);
    const auto worst = std::ranges::find_if(errors, [&](const ReadingError& error) {
        return !course.is_steady() ||
               std::ranges::find(course.slow, error.reading) != course.slow.end();
    });
    entry.error = worst->share;
    entry.worst = worst->reading;
    return entry;
}

/// Wall time at an error, straight in the logarithms between the entries around it; beyond them all
/// that of the entry next to it. Without end when there are none.
double seconds_at(std::vector<Entry> entries, double error)
{
    if (entries.empty()) {
        return std::numeric_limits<double>::infinity();
    }
    std::ranges::sort(entries, {}, &Entry::error);
    const auto above = std::ranges::lower_bound(entries, error, {}, &Entry::error);
    if (above == entries.begin()) {
        return above->seconds;
    }
    const Entry& a = *std::prev(above);
    if (above == entries.end()) {
        return a.seconds;
    }
    const double slope = std::log(above->seconds / a.seconds) / std::log(above->error / a.error);
    return a.seconds * std::exp(slope * std::log(error / a.error));
}

void print(const Course& course, const char* solver, const Entry& entry)
{
    std::printf("  %-22s %7.0e %11.3f ms %9.0f x %9.1e %8ld %7ld %9ld %8ld  %s\n", solver,
                entry.tolerance, 1e3 * entry.seconds, (course.to - course.from) / entry.seconds,
                entry.error, entry.counts.steps, entry.counts.failed, entry.counts.evaluations,
                entry.counts.factorisations, entry.worst.c_str());
}

Entry run_own(const Course& course, const Truth& truth, double tolerance, bool leaps)
{
    const Entry entry = measured(course, truth, tolerance, [&] {
        Simulator simulator(course.rig, {}, Tolerance{tolerance, tolerance});
        for (const TimedCommand& timed : course.commands) {
            simulator.post(timed.command, timed.at);
        }
        if (leaps) {
            simulator.post(SetLeaps{true}, tick_at(course.from));
        }
        return simulator;
    });
    const bool usual = tolerance == course.rig->tolerance.relative;
    print(course,
          leaps   ? "own, with leaps"
          : usual ? "own stepper, default"
                  : "own stepper",
          entry);
    return entry;
}

std::vector<Entry> run_ours(const Course& course, const Truth& truth)
{
    std::vector<Entry> entries;
    std::vector<double> tolerances{1e-5, 1e-6, 5e-8, 1e-8};
    if (course.is_steady()) {
        tolerances = {1e-5};
    }
    if (std::ranges::find(tolerances, course.rig->tolerance.relative) == tolerances.end()) {
        tolerances.insert(tolerances.begin(), course.rig->tolerance.relative);
    }
    for (const double tolerance : tolerances) {
        entries.push_back(run_own(course, truth, tolerance, false));
    }
    if (course.is_steady()) {
        for (const double tolerance : {1e-4, 1e-5}) {
            entries.push_back(run_own(course, truth, tolerance, true));
        }
    }
    return entries;
}

std::vector<Entry> run_cvode(const Course& course, const Truth& truth, const char* name,
                             CvodeMatrix matrix)
{
    std::vector<Entry> entries;
    const std::vector<double> tolerances =
        course.is_steady() ? std::vector{1e-5, 1e-6} : std::vector{1e-4, 1e-5, 1e-6, 1e-7, 1e-8};
    const long most = course.is_steady() ? most_steps_when_steady : most_steps;
    for (const double tolerance : tolerances) {
        try {
            entries.push_back(measured(course, truth, tolerance, [&] {
                return CvodeMachine(course.rig, course.commands,
                                    {tolerance, tolerance, matrix, most});
            }));
            print(course, name, entries.back());
        } catch (const std::runtime_error& error) {
            std::printf("  %-22s %7.0e   gave up after %ld steps (%s)\n", name, tolerance, most,
                        error.what());
        }
    }
    return entries;
}

void compare(const Course& course, std::string_view wanted)
{
    if (std::string_view(course.title).find(wanted) == std::string_view::npos) {
        return;
    }
    std::printf("\n%s: %.0f s to %.0f s\n", course.title, course.from, course.to);
    std::printf("  %-22s %7s %14s %11s %9s %8s %7s %9s %8s  %s\n", "solver", "tol", "wall time",
                "real time", "error", "steps", "failed", "rates", "factors", "worst reading");
    const Truth truth(course);
    const auto ours = run_ours(course, truth);
    if (course.is_steady()) { // minutes a row: the best that CVODE can be given must do
        const auto sparse =
            run_cvode(course, truth, "CVODE, our Jac., KLU", CvodeMatrix::analytic_klu);
        for (const Entry& entry : ours) {
            std::printf(
                "  at error %.1e CVODE takes %.1f times as long with our Jacobian and KLU\n",
                entry.error, seconds_at(sparse, entry.error) / entry.seconds);
        }
        return;
    }
    const auto out_of_the_box =
        run_cvode(course, truth, "CVODE, own quotients", CvodeMatrix::quotient_dense);
    const auto dense = run_cvode(course, truth, "CVODE, our Jacobian", CvodeMatrix::analytic_dense);
    const auto sparse = run_cvode(course, truth, "CVODE, the same, KLU", CvodeMatrix::analytic_klu);
    for (const Entry& entry : ours) {
        std::printf("  at error %.1e CVODE takes %.1f times as long out of the box, %.1f with our "
                    "Jacobian, %.1f with KLU\n",
                    entry.error, seconds_at(out_of_the_box, entry.error) / entry.seconds,
                    seconds_at(dense, entry.error) / entry.seconds,
                    seconds_at(sparse, entry.error) / entry.seconds);
    }
}

/// A load that changes a little every second, as grass does.
std::vector<TimedCommand> mowing(double from, double to)
{
    auto commands = after_cold_start({set(50.0, "load", 0.6)});
    std::mt19937_64 random(1);
    std::uniform_real_distribution<double> load(0.5, 0.7);
    for (double at = from; at < to; at += 1.0) {
        commands.push_back(set(at, "load", load(random)));
    }
    return commands;
}

} // namespace

/// With a word, only the courses whose titles have it.
int main(int count, char** words)
{
    const std::string_view wanted = count > 1 ? words[1] : "";
    std::setvbuf(stdout, nullptr, _IOLBF, 0); // a line at a time, into a pipe too
    compare({"Mower at governed load, steady", mower(), after_cold_start({set(50.0, "load", 0.6)}),
             100.0, 400.0},
            wanted);
    compare({"Mower, load changing every second", mower(), mowing(70.0, 90.0), 70.0, 90.0}, wanted);
    compare({"Mower: load, bowl vent shut and open, hot soak", mower(),
             after_cold_start({set(60.0, "load", 0.7), break_at(65.0, "bowl_vent_plugged", 1.0),
                               break_at(70.0, "bowl_vent_plugged", 0.0), act(80.0, "stop")}),
             60.0, 300.0},
            wanted);
    const auto trimmer = std::make_shared<const Rig>(load_rig("trimmer"));
    compare({"Trimmer near 7,000 rpm, resolved stroke by stroke", trimmer,
             trimmer->default_sheet.commands, 15.0, 16.0},
            wanted);
    // Its default run goes on at full throttle and load from 28 s on, and is tipped over at 30 s.
    std::vector<TimedCommand> cutting = trimmer->default_sheet.commands;
    std::erase_if(cutting, [](const TimedCommand& timed) { return timed.at > tick_at(29.0); });
    compare({"Trimmer cutting at full throttle",
             trimmer,
             cutting,
             40.0,
             60.0,
             {"tank.fuel", "exhaust.fuel", "head.temperature", "carburetor.temperature"}},
            wanted);
    return 0;
}
