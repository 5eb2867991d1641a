#include "sim/stepper.hpp"
#include "sim/error.hpp"
#include "tests/deviation.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

using namespace sim;

namespace {

/// Wires a part whose given numbers are the rates of its states, in order.
void wire_rates(Wiring& wiring, std::initializer_list<StateInfo> states)
{
    for (const StateInfo& info : states) {
        wiring.state(info);
        wiring.read(wiring.own(info.name));
    }
    for (const StateInfo& info : states) {
        wiring.flow(info.name + "_rate", {{wiring.own(info.name), 1.0}});
    }
}

/// x' = stiffness (y^2 - x) - 2 x, y' = x - y (1 + y), solved by x = e^-2t, y = e^-t however stiff.
/// source:  P. Kaps, Rosenbrock-type methods, 1981; in Hairer and Wanner II, from memory
struct Kaps {
    Ratio stiffness;
    enum In : std::size_t { x, y, reads };
    enum Out : std::size_t { x_rate, y_rate, writes };
    static void wire(Wiring& wiring) { wire_rates(wiring, {{.name = "x"}, {.name = "y"}}); }
    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        out[x_rate] = stiffness.si * (in[y] * in[y] - in[x]) - 2.0 * in[x];
        out[y_rate] = in[x] - in[y] * (1.0 + in[y]);
    }
};

/// Van der Pol's oscillator, y' = z, z' = stiffness ((1 - y^2) z - y).
/// source:  Hairer and Wanner II, sect. IV.10
struct VanDerPol {
    Ratio stiffness;
    enum In : std::size_t { y, z, reads };
    enum Out : std::size_t { y_rate, z_rate, writes };
    static void wire(Wiring& wiring) { wire_rates(wiring, {{.name = "y"}, {.name = "z"}}); }
    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        out[y_rate] = in[z];
        out[z_rate] = stiffness.si * ((1.0 - in[y] * in[y]) * in[z] - in[y]);
    }
};

/// Robertson's reaction of three substances, whose amounts add up to 1.
/// source:  Hairer and Wanner II, sect. IV.10
struct Robertson {
    enum In : std::size_t { a, b, c, reads };
    enum Out : std::size_t { slow, fast, back, writes };
    static void wire(Wiring& wiring)
    {
        wiring.state({.name = "a", .scale = 1.0});
        wiring.state({.name = "b", .scale = 1e-5});
        wiring.state({.name = "c", .scale = 1.0});
        for (const char* name : {"a", "b", "c"}) {
            wiring.read(wiring.own(name));
        }
        wiring.flow("slow", {{wiring.own("a"), -1.0}, {wiring.own("b"), 1.0}});
        wiring.flow("fast", {{wiring.own("b"), -1.0}, {wiring.own("c"), 1.0}});
        wiring.flow("back", {{wiring.own("b"), -1.0}, {wiring.own("a"), 1.0}});
    }
    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        out[slow] = 0.04 * in[a];
        out[fast] = 3e7 * in[b] * in[b];
        out[back] = 1e4 * in[b] * in[c];
    }
};

/// x' = damping x - turning y, y' = turning x + damping y: the test equation with a complex rate.
struct Spiral {
    Ratio damping;
    Ratio turning;
    enum In : std::size_t { x, y, reads };
    enum Out : std::size_t { x_rate, y_rate, writes };
    static void wire(Wiring& wiring) { wire_rates(wiring, {{.name = "x"}, {.name = "y"}}); }
    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        out[x_rate] = damping.si * in[x] - turning.si * in[y];
        out[y_rate] = turning.si * in[x] + damping.si * in[y];
    }
};

/// y' = growth y^2 - drain, with y held between 0 and 1e6.
struct Runaway {
    Ratio growth;
    Ratio drain;
    enum In : std::size_t { y, reads };
    enum Out : std::size_t { y_rate, writes };
    static void wire(Wiring& wiring)
    {
        wire_rates(wiring, {{.name = "y", .low = 0.0, .high = 1e6}});
    }
    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        out[y_rate] = growth.si * in[y] * in[y] - drain.si;
    }
};

constexpr Ratio far{1e12};
const RegisterPart<Kaps> kaps{
    "test_kaps", "Kaps", std::tuple{parameter("stiffness", "", &Kaps::stiffness, Ratio{}, far)}};
const RegisterPart<VanDerPol> van_der_pol{
    "test_van_der_pol", "Van der Pol",
    std::tuple{parameter("stiffness", "", &VanDerPol::stiffness, Ratio{}, far)}};
const RegisterPart<Robertson> robertson{"test_robertson", "Robertson", std::tuple{}};
const RegisterPart<Spiral> spiral{
    "test_spiral", "Spiral",
    std::tuple{parameter("damping", "", &Spiral::damping, -far, far),
               parameter("turning", "", &Spiral::turning, -far, far)}};
const RegisterPart<Runaway> runaway{"test_runaway", "Runaway",
                                    std::tuple{parameter("growth", "", &Runaway::growth, -far, far),
                                               parameter("drain", "", &Runaway::drain, -far, far)}};

Network network_of(const std::string& kind, std::map<std::string, double> parameters = {})
{
    PartSpec spec;
    spec.id = "part";
    spec.kind = kind;
    spec.parameters = std::move(parameters);
    return Network({spec});
}

constexpr double endless = std::numeric_limits<double>::infinity();
/// A tolerance that lets any step pass, so that its length is the caller's choice.
constexpr Tolerance lax{1e30, 1e30};

/// Steps of one length from 0 to `until`; gives each to `look`.
template <class Look>
void fixed_steps(Network& network, const std::vector<double>& start, double until, int count,
                 Look look)
{
    Stepper stepper(network, lax);
    Step step(network.state_count());
    Stepper::begin(step, 0.0, start);
    for (int i = 0; i < count; ++i) {
        double length = until / count;
        stepper.advance(network, step, length, endless);
        look(step);
    }
}

/// The state at `until` within a tolerance.
std::vector<double> solved(Network& network, const std::vector<double>& start, double until,
                           double tolerance)
{
    Stepper stepper(network, {tolerance, tolerance});
    Step step(network.state_count());
    Stepper::begin(step, 0.0, start);
    double length = 1e-6 * until;
    while (step.end() < until) {
        stepper.advance(network, step, length, until);
    }
    return {step.last().begin(), step.last().end()};
}

/// Errors of Kaps's problem on [0, 1] in `count` steps: at step ends, and anywhere inside.
struct Errors {
    double ends = 0.0;
    double inside = 0.0;
};
Errors kaps_errors(double stiffness, int count)
{
    Network network = network_of("test_kaps", {{"stiffness", stiffness}});
    Errors errors;
    const auto miss = [](double time, std::span<const double> state) {
        return std::max(std::abs(state[0] - std::exp(-2.0 * time)),
                        std::abs(state[1] - std::exp(-time)));
    };
    fixed_steps(network, {1.0, 1.0}, 1.0, count, [&](const Step& step) {
        errors.ends = std::max(errors.ends, miss(step.end(), step.last()));
        std::array<double, 2> state{};
        for (double share = 0.1; share < 0.95; share += 0.1) {
            const double time = step.start() + share * (step.end() - step.start());
            step.at(time, state);
            errors.inside = std::max(errors.inside, miss(time, state));
        }
    });
    return errors;
}

} // namespace

TEST_SUITE_BEGIN("sim");

// Outside check: the exact solution. RODAS is of order 4, in the stiff limit too, and its dense
// output of order 3 (Hairer and Wanner II, sect. IV.7 and VI.4). The finest errors are small enough
// to show a wrong digit in any coefficient.
TEST_CASE("the stepper converges with order four to the exact solution")
{
    for (const double stiffness : {1.0, 1e9, 1e12}) {
        CAPTURE(stiffness);
        const Errors coarse = kaps_errors(stiffness, 32);
        const Errors fine = kaps_errors(stiffness, 128);
        const double order = std::log(coarse.ends / fine.ends) / std::log(4.0);
        const double order_inside = std::log(coarse.inside / fine.inside) / std::log(4.0);
        CHECK(order > 3.8);
        CHECK(order < 4.5);
        CHECK(fine.ends < 5e-11);
        CHECK(order_inside > 2.9);
        MESSAGE("stiffness " << stiffness << ": order " << order << ", inside " << order_inside);
    }
}

// Between easy and stiff the order of every Rosenbrock method dips (Hairer and Wanner II, sect.
// IV.15); errors must stay below those of the stiff limit at a coarser step.
TEST_CASE("problems half way to stiff are solved as closely as stiff ones")
{
    for (const double stiffness : {1e1, 1e2, 1e3, 1e4, 1e6}) {
        CAPTURE(stiffness);
        CHECK(kaps_errors(stiffness, 64).ends < 5e-7);
        CHECK(kaps_errors(stiffness, 64).inside < kaps_errors(1e9, 16).inside);
        CHECK(kaps_errors(stiffness, 256).ends < 2e-8);
    }
}

// Published values from memory, checked here to the accuracy asked for: Robertson at t = 40 from
// the CVODE documentation and Hairer and Wanner's test set, t = 1e11 from the latter.
TEST_CASE("Robertson's reaction ends where the literature says")
{
    Network network = network_of("test_robertson");
    const auto at_40 = solved(network, {1.0, 0.0, 0.0}, 40.0, 1e-8);
    CHECK(deviation(at_40[0], 0.7158270688) < 1e-6);
    CHECK(deviation(at_40[1], 9.185534765e-6) < 1e-6);
    CHECK(deviation(at_40[2], 0.2841637457) < 1e-6);
    const auto late = solved(network, {1.0, 0.0, 0.0}, 1e11, 1e-10);
    CHECK(deviation(late[0], 0.2083340149701255e-7) < 1e-3);
    CHECK(deviation(late[2], 0.9999999791665050) < 1e-9);
}

// Published value from memory: test set for initial value problems, VDPOL, stiffness 1e6, t = 2.
TEST_CASE("Van der Pol's oscillator ends where the literature says")
{
    Network network = network_of("test_van_der_pol", {{"stiffness", 1e6}});
    const auto state = solved(network, {2.0, 0.0}, 2.0, 1e-8);
    CHECK(deviation(state[0], 1.706167732170483) < 1e-5);
    CHECK(deviation(state[1], -0.8928097010247975) < 1e-5);
}

TEST_CASE("the error that is left falls with the tolerance")
{
    Network network = network_of("test_van_der_pol", {{"stiffness", 1e6}});
    double before = 1.0;
    for (const double tolerance : {1e-3, 1e-5, 1e-7, 1e-9}) {
        CAPTURE(tolerance);
        const auto state = solved(network, {2.0, 0.0}, 2.0, tolerance);
        const double error = deviation(state[0], 1.706167732170483);
        CHECK(error < 30.0 * tolerance);
        CHECK(error < before);
        before = error;
    }
}

// Outside check: for an L-stable method the step's amplification goes to 0 with the rate, and for
// an A-stable one it never exceeds 1 left of the imaginary axis (Hairer and Wanner II, sect. IV.3).
TEST_CASE("the stepper is A-stable and L-stable")
{
    for (double size = 1e-2; size < 1e11; size *= 10.0) {
        for (const double angle : {0.0, 0.3, 0.6, 0.9, 1.2, 1.5, 1.5707963267948966}) {
            CAPTURE(size);
            CAPTURE(angle);
            Network network = network_of("test_spiral", {{"damping", -size * std::cos(angle)},
                                                         {"turning", size * std::sin(angle)}});
            fixed_steps(network, {1.0, 0.0}, 1.0, 1, [&](const Step& step) {
                const double left = std::hypot(step.last()[0], step.last()[1]);
                CHECK(left <= 1.0 + 1e-12);
                CHECK(left <= 100.0 / size + 1e-9);
            });
        }
    }
}

TEST_CASE("what is kept by the equations is kept by every step, however rough, and inside it")
{
    for (const double tolerance : {1e-1, 1e-3, 1e-6}) {
        CAPTURE(tolerance);
        Network network = network_of("test_robertson");
        Stepper stepper(network, {tolerance, tolerance});
        Step step(3);
        Stepper::begin(step, 0.0, std::array{1.0, 0.0, 0.0});
        double length = 1e-3;
        double worst = 0.0;
        while (step.end() < 1e6) {
            stepper.advance(network, step, length, endless);
            std::array<double, 3> state{};
            for (double share = 0.0; share <= 1.0; share += 0.125) {
                step.at(step.start() + share * (step.end() - step.start()), state);
                worst = std::max(worst, std::abs(state[0] + state[1] + state[2] - 1.0));
            }
        }
        CHECK(worst < 1e-13);
    }
}

TEST_CASE("a step begins where the last one ended and its inside meets both ends")
{
    Network network = network_of("test_van_der_pol", {{"stiffness", 1e3}});
    Stepper stepper(network, {1e-5, 1e-5});
    Step step(2);
    Stepper::begin(step, 0.0, std::array{2.0, 0.0});
    double length = 1e-6;
    std::array<double, 2> before{2.0, 0.0};
    std::array<double, 2> state{};
    while (step.end() < 1.0) {
        const double end = step.end();
        stepper.advance(network, step, length, endless);
        CHECK(step.start() == end);
        step.at(step.start(), state);
        CHECK(state == before);
        std::ranges::copy(step.last(), before.begin());
        step.at(step.end(), state);
        CHECK(deviation(state[0], before[0]) < 1e-11); // the place in the step is rounded
        CHECK(deviation(state[1], before[1]) < 1e-11);
    }
    CHECK(stepper.work().steps > 20);
    CHECK(stepper.work().factorisations == stepper.work().steps + stepper.work().rejected);
}

TEST_CASE("a step goes no further than its limit")
{
    Network network = network_of("test_kaps", {{"stiffness", 10.0}});
    Stepper stepper(network, {1e-3, 1e-3});
    Step step(2);
    Stepper::begin(step, 0.0, std::array{1.0, 1.0});
    double length = 100.0;
    stepper.advance(network, step, length, 1e-3);
    CHECK(step.end() == 1e-3);
    CHECK(length > 1e-3); // the next step is not kept short by a limit
}

TEST_CASE("a state that must leave its bounds stops the run and is named")
{
    Network sinking = network_of("test_runaway", {{"growth", 0.0}, {"drain", 1.0}});
    CHECK_THROWS_AS(solved(sinking, {1.0}, 2.0, 1e-6), NumericsError);
    Network bursting = network_of("test_runaway", {{"growth", 1.0}, {"drain", 0.0}});
    try {
        solved(bursting, {1.0}, 2.0, 1e-6); // 1 / (1 - t)
        FAIL("there is no solution at t = 2");
    } catch (const NumericsError& error) {
        CHECK(std::string(error.what()).find("state part.y") != std::string::npos);
    }
}

TEST_SUITE_END();
