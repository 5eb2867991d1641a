#include "sim/trajectory.hpp"
#include "tests/behaviour/trimmer.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

using namespace sim;
using namespace tests;

namespace {

/// A crank at a steady speed, and a vessel that it fills in strokes and that empties slowly:
/// x' = stroke (1 + cos wt) - x / emptying_time, taken from a store and given to a sink.
struct Stroker {
    AngularSpeed turning;
    Duration emptying_time;

    enum In : std::size_t { cosine, sine, speed, level, reads };
    enum Out : std::size_t { cosine_rate, sine_rate, speed_rate, filling, emptying, writes };

    static constexpr double stroke = 1.0;

    static void wire(Wiring& w)
    {
        w.state({"cosine", 0.02, -1.5, 1.5, 0.0, 0.0});
        w.state({"sine", 0.02, -1.5, 1.5, 0.0, 0.0});
        w.state({"speed", 1.0, 0.0, 2000.0, 0.0, 0.0});
        for (const char* name : {"level", "store", "sink"}) {
            w.state({.name = name, .scale = 1e-3, .fuel = 1.0});
        }
        for (const char* name : {"cosine", "sine", "speed", "level"}) {
            w.read(w.own(name));
        }
        w.flow("cosine_rate", {{w.own("cosine"), 1.0}});
        w.flow("sine_rate", {{w.own("sine"), 1.0}});
        w.flow("speed_rate", {{w.own("speed"), 1.0}});
        w.flow("filling", {{w.own("store"), -1.0}, {w.own("level"), 1.0}});
        w.flow("emptying", {{w.own("level"), -1.0}, {w.own("sink"), 1.0}});
        w.crank("cosine", "sine", "speed");
    }

    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        const S off = 20.0 * (1.0 - in[cosine] * in[cosine] - in[sine] * in[sine]);
        out[cosine_rate] = off * in[cosine] - in[speed] * in[sine];
        out[sine_rate] = off * in[sine] + in[speed] * in[cosine];
        out[speed_rate] = (turning.si - in[speed]) * 10.0;
        out[filling] = stroke * (1.0 + in[cosine]);
        out[emptying] = in[level] * (1.0 / emptying_time.si);
    }

    /// The level at a time after a start with the vessel empty and the crank at top dead centre.
    [[nodiscard]] double exact(double time) const
    {
        const double tau = emptying_time.si;
        const double w = turning.si;
        const auto swing = [&](double t) {
            return stroke * tau *
                   (1.0 +
                    (std::cos(w * t) + w * tau * std::sin(w * t)) / (1.0 + w * w * tau * tau));
        };
        return swing(time) - swing(0.0) * std::exp(-time / tau);
    }
};

const RegisterPart<Stroker> registered{
    "test_stroker", "Stroker",
    std::tuple{
        parameter("turning", "", &Stroker::turning, AngularSpeed{1.0}, AngularSpeed{1e4}),
        parameter("emptying_time", "", &Stroker::emptying_time, Duration{1e-3}, Duration{1e4})}};

constexpr Stroker stroker{AngularSpeed{700.0}, Duration{20.0}};

Network stroker_network()
{
    PartSpec spec;
    spec.id = "it";
    spec.kind = "test_stroker";
    spec.parameters = {{"turning", stroker.turning.si},
                       {"emptying_time", stroker.emptying_time.si}};
    Network network({spec});
    network.prepare({});
    return network;
}

/// It runs from top dead centre, empty, with leaps or without.
Trajectory started(const Network& network, double tolerance, bool leaps)
{
    Trajectory trajectory(network, {tolerance, tolerance});
    trajectory.allow_leaps(leaps);
    trajectory.begin(0.0, std::vector<double>{1.0, 0.0, stroker.turning.si, 0.0, 100.0, 100.0});
    return trajectory;
}

constexpr std::size_t level_state = 3;

/// Largest error of the level, looked at every 0.37 s, over its size in the end.
double level_error(Network& network, Trajectory& trajectory, double until)
{
    std::vector<double> state(network.state_count());
    double worst = 0.0;
    for (double time = 0.0; time < until; time += 0.37) {
        trajectory.reach(network, time);
        trajectory.at(network, time, state);
        worst = std::max(worst, std::abs(state[level_state] - stroker.exact(time)));
    }
    return worst / stroker.emptying_time.si;
}

} // namespace

TEST_SUITE_BEGIN("sim");

TEST_CASE("the Jacobian of a turn is what the exact solution says, and keeps what there is")
{
    Network network = stroker_network();
    TurnMap map(network, {1e-8, 1e-8});
    std::vector<double> state{1.0, 0.0, stroker.turning.si, 10.0, 90.0, 100.0};
    double time = 0.0;
    REQUIRE(map.learn(network, state, time));
    const std::vector<double> weights{1e-3, 1e-3, 1.0, 1e-3, 1e-3, 1e-3, 1.0};
    const auto jacobian = TurnJacobian::find(network, map, state, weights);
    REQUIRE(jacobian != nullptr);
    const auto slope = [&](std::size_t row, std::size_t column) {
        return jacobian->slopes[row * weights.size() + column];
    };
    const double turn = 2.0 * std::numbers::pi / stroker.turning.si;
    const double kept = std::exp(-turn / stroker.emptying_time.si);
    CHECK(slope(level_state, level_state) == doctest::Approx(kept - 1.0).epsilon(1e-5));
    CHECK(slope(5, level_state) == doctest::Approx(1.0 - kept).epsilon(1e-5));
    // The speed comes back with a time constant of 0.1 s; the turn is the shorter for what is left.
    CHECK(slope(2, 2) == doctest::Approx(std::expm1(-10.0 * turn)).epsilon(1e-3));
    CHECK(slope(6, 2) ==
          doctest::Approx(std::expm1(-10.0 * turn) / (10.0 * stroker.turning.si)).epsilon(1e-3));
    for (std::size_t column = 0; column < weights.size(); ++column) {
        CHECK(std::abs(slope(3, column) + slope(4, column) + slope(5, column)) < 1e-15);
    }
}

TEST_CASE("leaps follow what changes slowly to the exact solution with fewer steps")
{
    Network network = stroker_network();
    Trajectory leaping = started(network, 1e-5, true);
    Trajectory plain = started(network, 1e-5, false);
    const double until = 100.0;
    // A leap may be off by a tolerance every thirty turns: 3.7e-3 over these eleven thousand.
    CHECK(level_error(network, leaping, until) < 1e-3);
    CHECK(level_error(network, plain, until) < 1e-3);
    // The looks within leaps, 270 turns of them, are among the steps.
    CHECK(leaping.work().steps * 4 < plain.work().steps);
}

TEST_CASE("a closer tolerance makes leaps closer")
{
    Network network = stroker_network();
    Trajectory loose = started(network, 1e-4, true);
    Trajectory close = started(network, 1e-7, true);
    CHECK(level_error(network, close, 60.0) < 0.1 * level_error(network, loose, 60.0));
}

TEST_CASE("nothing is lost in leaps nor within them")
{
    Network network = stroker_network();
    Trajectory trajectory = started(network, 1e-5, true);
    std::vector<double> state(network.state_count());
    for (double time = 0.0; time < 50.0; time += 0.37) {
        trajectory.reach(network, time);
        trajectory.at(network, time, state);
        CHECK(std::abs(state[3] + state[4] + state[5] - 200.0) < 1e-9);
    }
}

TEST_CASE("a leap is undone up to a time within it")
{
    Network network = stroker_network();
    Trajectory trajectory = started(network, 1e-5, true);
    trajectory.reach(network, 40.0);
    const double inside = 40.2;
    REQUIRE(trajectory.end() > inside);
    trajectory.land(network, inside);
    CHECK(trajectory.end() == doctest::Approx(inside));
    CHECK(trajectory.last()[level_state] == doctest::Approx(stroker.exact(inside)).epsilon(1e-3));
}

TEST_CASE("the trimmer with leaps does what it does without")
{
    Trimmer slow;
    slow.running(1.0, 4.0);
    slow.set(slow.now(), "load", 1.0).to(slow.now() + 4.0);
    Simulator leaping = slow.machine();
    Simulator plain = slow.machine();
    leaping.post(SetLeaps{true});
    const Tick end = leaping.now() + 12000;
    // Followed more closely than the rig asks for: at the rig's own tolerance the plain run is the
    // one that is off.
    double mean_speed[2]{};
    double used[2]{};
    int which = 0;
    for (Simulator* simulator : {&leaping, &plain}) {
        used[which] = simulator->read("tank.fuel");
        for (Tick at = simulator->now(); at <= end; at += 37) {
            simulator->advance(at);
            mean_speed[which] += simulator->read("engine.speed") / (12000.0 / 37.0);
        }
        used[which] -= simulator->read("tank.fuel");
        ++which;
    }
    CHECK(mean_speed[0] == doctest::Approx(mean_speed[1]).epsilon(0.01));
    CHECK(used[0] == doctest::Approx(used[1]).epsilon(0.02));
    CHECK(std::abs(leaping.fuel_error()) < 1e-9 * leaping.fuel_total());
}

TEST_CASE("a run with leaps replays bit for bit: looked at or not, commands known or not")
{
    Trimmer start;
    start.running(1.0, 2.0);
    Simulator live = start.machine();
    Simulator known = start.machine();
    Simulator looked_at = start.machine();
    const Tick begin = live.now();
    live.post(SetLeaps{true});
    live.advance(begin + 5000);
    live.post(SetControl{"load", 0.5});
    live.advance(begin + 9000);
    for (Simulator* simulator : {&known, &looked_at}) {
        simulator->post(SetLeaps{true}, begin);
        simulator->post(SetControl{"load", 0.5}, begin + 5000);
    }
    known.advance(begin + 9000);
    for (Tick at = begin; at <= begin + 9000; at += 450) {
        looked_at.advance(at);
        looked_at.read("engine.speed");
    }
    const auto state = live.state();
    for (Simulator* simulator : {&known, &looked_at}) {
        CHECK(std::ranges::equal(state, simulator->state()));
    }
}

TEST_CASE("a mean-value engine has nothing to leap over")
{
    Simulator mower(std::make_shared<const Rig>(load_rig("mower")));
    CHECK(mower.check(SetLeaps{true}) ==
          "this engine is not followed turn by turn: nothing to leap over");
}

TEST_SUITE_END();
