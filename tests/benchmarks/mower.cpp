// How fast the mower runs with its own stepper and with SUNDIALS CVODE on the same equations, each
// at several tolerances, with the error of the readings against CVODE at 1e-10. One core.

#include "tests/reference/cvode_machine.hpp"
#include "tests/reference/reading_error.hpp"
#include "tests/reference/sheets.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <functional>
#include <random>

using namespace sim;
using namespace tests;

namespace {

/// A run of which the part from `from` to `to` is timed, in seconds.
struct Course {
    std::string title;
    std::vector<TimedCommand> commands;
    double from = 0.0;
    double to = 0.0;
};

struct Counts {
    long steps = 0;
    long failed = 0;
    long evaluations = 0;
    long factorisations = 0;
};

/// One way to solve a course, at one tolerance.
struct Entry {
    std::string solver;
    double tolerance = 0.0;
    double seconds = 0.0; ///< of wall time, median
    double error = 0.0;   ///< largest of any reading, as a share of its range
    Counts counts;
};

constexpr int repetitions = 5;
constexpr Tick look_stride = 100;

Tick tick_at(double seconds)
{
    return std::llround(seconds / tick_length);
}

Simulator our_machine(const Course& course, double tolerance)
{
    Simulator simulator(mower(), {}, {tolerance, tolerance});
    for (const TimedCommand& timed : course.commands) {
        simulator.post(timed.command, timed.at);
    }
    return simulator;
}

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

/// Times the course on a machine that `make` gives fresh each time; then measures its error.
template <class Make>
Entry measured(const Course& course, const Record& reference, Make make)
{
    Entry entry;
    std::vector<double> times;
    for (int i = 0; i < repetitions; ++i) {
        auto machine = make();
        machine.advance(tick_at(course.from));
        const Counts before = counts_of(machine);
        const auto start = std::chrono::steady_clock::now();
        machine.advance(tick_at(course.to));
        const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - start;
        times.push_back(taken.count());
        const Counts after = counts_of(machine);
        entry.counts = {after.steps - before.steps, after.failed - before.failed,
                        after.evaluations - before.evaluations,
                        after.factorisations - before.factorisations};
    }
    std::ranges::sort(times);
    entry.seconds = times[times.size() / 2];
    const auto readings = Simulator(mower()).readings();
    auto machine = make();
    const Record record = record_of(machine, readings.size(), tick_at(course.from),
                                    tick_at(course.to), look_stride);
    entry.error = reading_errors(record, reference, readings).front().share;
    return entry;
}

/// Wall time at an error, between the entries next to it in error; straight in the logarithms.
double seconds_at(std::vector<Entry> entries, double error)
{
    std::ranges::sort(entries, {}, &Entry::error);
    std::size_t upper = 1;
    while (upper + 1 < entries.size() && entries[upper].error < error) {
        ++upper;
    }
    const Entry& a = entries[upper - 1];
    const Entry& b = entries[upper];
    const double slope = std::log(b.seconds / a.seconds) / std::log(b.error / a.error);
    return a.seconds * std::exp(slope * std::log(error / a.error));
}

void print(const Course& course, const Entry& entry)
{
    std::printf("  %-22s %8.0e %10.3f ms %10.0f x %10.2e %8ld %8ld %9ld %9ld\n",
                entry.solver.c_str(), entry.tolerance, 1e3 * entry.seconds,
                (course.to - course.from) / entry.seconds, entry.error, entry.counts.steps,
                entry.counts.failed, entry.counts.evaluations, entry.counts.factorisations);
}

void compare(const Course& course)
{
    std::printf("\n%s: %.0f s to %.0f s\n", course.title.c_str(), course.from, course.to);
    std::printf("  %-22s %8s %13s %12s %10s %8s %8s %9s %9s\n", "solver", "tol", "wall",
                "real time", "error", "steps", "failed", "rates", "factors");
    CvodeMachine best(mower(), course.commands, {1e-10, 1e-10, CvodeMatrix::analytic_klu});
    const Record reference =
        record_of(best, Simulator(mower()).readings().size(), tick_at(course.from),
                  tick_at(course.to), look_stride);
    std::vector<Entry> ours;
    for (const double tolerance : {1e-4, 1e-5, 1e-6, 1e-7, 1e-8}) {
        Entry entry =
            measured(course, reference, [&] { return our_machine(course, tolerance); });
        entry.solver = tolerance == Tolerance{}.relative ? "own stepper (default)" : "own stepper";
        entry.tolerance = tolerance;
        print(course, entry);
        ours.push_back(entry);
    }
    struct Mode {
        const char* name;
        CvodeMatrix matrix;
    };
    for (const Mode& mode : {Mode{"CVODE, own quotients", CvodeMatrix::quotient_dense},
                             Mode{"CVODE, our Jacobian", CvodeMatrix::analytic_dense},
                             Mode{"CVODE, the same, KLU", CvodeMatrix::analytic_klu}}) {
        std::vector<Entry> theirs;
        for (const double tolerance : {1e-4, 1e-5, 1e-6, 1e-7, 1e-8}) {
            Entry entry = measured(course, reference, [&] {
                return CvodeMachine(mower(), course.commands, {tolerance, tolerance, mode.matrix});
            });
            entry.solver = mode.name;
            entry.tolerance = tolerance;
            print(course, entry);
            theirs.push_back(entry);
        }
        for (const Entry& entry : ours) {
            std::printf("    at error %.2e: CVODE takes %6.2f times as long\n", entry.error,
                        seconds_at(theirs, entry.error) / entry.seconds);
        }
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

int main()
{
    std::setvbuf(stdout, nullptr, _IOLBF, 0); // a line at a time, also into a pipe
    compare({"Governed load, steady", after_cold_start({set(50.0, "load", 0.6)}), 300.0, 900.0});
    compare({"Governed load, changing every second", mowing(300.0, 360.0), 300.0, 360.0});
    compare({"Start, load steps, bowl vent shut and open, hot soak",
             after_cold_start({set(60.0, "load", 0.7), break_at(70.0, "bowl_vent_plugged", 1.0),
                               break_at(85.0, "bowl_vent_plugged", 0.0), act(150.0, "stop")}),
             0.0, 600.0});
    return 0;
}
