#include "sim/network.hpp"
#include "sim/error.hpp"
#include "sim/simulator.hpp"
#include "tests/reference/sheets.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <stdexcept>

using namespace sim;
using namespace tests;

namespace {

/// Gives the image that another one gives: two of them facing each other cannot be put in order.
struct Mirror {
    enum In : std::size_t { seen, reads };
    enum Out : std::size_t { image, writes };
    static void wire(Wiring& wiring)
    {
        wiring.read(wiring.of("other", "image"));
        wiring.publish("image");
    }
    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        out[image] = in[seen];
    }
};
const RegisterPart<Mirror> registered{"test_mirror", "Mirror of the tests", std::tuple{}};

/// A machine's equations with the parameters of some moment, and its state then.
struct Moment {
    Simulator simulator;
    std::vector<double> state;
};

/// The mower at every `every` seconds of a run.
std::vector<Moment> moments(const std::vector<TimedCommand>& commands, double until, double every)
{
    Simulator simulator(mower());
    for (const TimedCommand& timed : commands) {
        simulator.post(timed.command, timed.at);
    }
    std::vector<Moment> found;
    const auto stride = std::llround(every / tick_length);
    for (Tick at = stride; at <= std::llround(until / tick_length); at += stride) {
        simulator.advance(at);
        const auto state = simulator.state();
        found.push_back({simulator, {state.begin(), state.end()}});
    }
    return found;
}

/// A cold start, running light and loaded, stopped hot.
std::vector<Moment> running()
{
    return moments(after_cold_start({set(60.0, "load", 0.6), set(75.0, "load", 1.0),
                                     set(85.0, "load", 0.1), act(90.0, "stop")}),
                   100.0, 2.3);
}

/// The primer worked until the runner is full of fuel, then pulled.
std::vector<Moment> flooded()
{
    std::vector<TimedCommand> commands{set(0.5, "tap", 1.0)};
    for (int stroke = 0; stroke < 8; ++stroke) {
        commands.push_back(act(20.0 + stroke, "press_primer"));
        commands.push_back(act(20.5 + stroke, "release_primer"));
    }
    commands.push_back(set(29.0, "choke", 1.0));
    commands.push_back(act(30.0, "pull_cord"));
    return moments(commands, 36.0, 0.93);
}

/// Laid on each side and on its nose with the tap open.
std::vector<Moment> tipped()
{
    return moments({set(0.5, "tap", 1.0), set(20.0, "tilt_side", 90.0),
                    set(25.0, "tilt_side", -90.0), set(30.0, "tilt_side", 0.0),
                    set(30.0, "tilt_forward", 80.0), set(35.0, "tilt_forward", -35.0)},
                   40.0, 1.7);
}

using Matrix = std::vector<std::vector<double>>;

/// The analytic Jacobian with each entry times `scale` of its column over `scale` of its row.
Matrix scaled_jacobian(Network& network, std::span<const double> state)
{
    const std::size_t n = network.state_count();
    std::vector<double> rates(n);
    std::vector<double> slots(network.pattern().slot_count());
    network.differentiate(state, rates, slots);
    Matrix matrix(n, std::vector<double>(n, 0.0));
    for (std::size_t i = 0; i < n; ++i) {
        for (std::size_t j = 0; j < n; ++j) {
            try {
                matrix[i][j] = slots[network.pattern().slot(i, j)] * network.states()[j].scale /
                               network.states()[i].scale;
            } catch (const std::out_of_range&) { // the pattern leaves this entry out: it is nothing
            }
        }
    }
    return matrix;
}

/// Column `j` of the same by central differences `share` of the state's scale to either side.
std::vector<double> difference_column(Network& network, std::vector<double> state, std::size_t j,
                                      double share)
{
    const std::size_t n = network.state_count();
    std::vector<double> above(n);
    std::vector<double> below(n);
    const double middle = state[j];
    const double step = share * network.states()[j].scale;
    state[j] = middle + step;
    network.evaluate(state, above);
    state[j] = middle - step;
    network.evaluate(state, below);
    const double taken = (middle + step) - (middle - step);
    for (std::size_t i = 0; i < n; ++i) {
        above[i] =
            (above[i] - below[i]) / taken * network.states()[j].scale / network.states()[i].scale;
    }
    return above;
}

/// The entry of a Jacobian that is furthest from its difference quotient.
struct Worst {
    double miss = 0.0;
    std::string entry;
};

/// Each entry against the best of several step widths, as a share of the entry and of a
/// `row_share` of the largest entry of its row.
Worst worst_entry(Network& network, const std::vector<double>& state, double row_share)
{
    const Matrix exact = scaled_jacobian(network, state);
    const std::size_t n = exact.size();
    Worst worst;
    for (std::size_t j = 0; j < n; ++j) {
        std::vector<double> miss(n, 1e300);
        for (double share = 0.1; share > 1e-8; share *= 0.25) {
            const auto column = difference_column(network, state, j, share);
            for (std::size_t i = 0; i < n; ++i) {
                const double largest = std::abs(*std::ranges::max_element(
                    exact[i], {}, [](double value) { return std::abs(value); }));
                const double size = std::abs(exact[i][j]) + row_share * largest + 1e-3;
                miss[i] = std::min(miss[i], std::abs(column[i] - exact[i][j]) / size);
            }
        }
        for (std::size_t i = 0; i < n; ++i) {
            if (miss[i] > worst.miss) {
                worst = {miss[i],
                         "d " + network.states()[i].name + " / d " + network.states()[j].name};
            }
        }
    }
    return worst;
}

} // namespace

TEST_SUITE_BEGIN("sim");

// Outside check: central differences of the same equations. States that rest at nothing sit exactly
// where a smooth corner begins, so each is moved off it, by more and by less than the corner's
// width.
TEST_CASE("the network's Jacobian is the derivative of its rates wherever a run leads")
{
    std::mt19937_64 random(1);
    std::uniform_real_distribution<double> share(0.1, 1.0);
    for (auto make : {running, flooded, tipped}) {
        for (Moment& moment : make()) {
            for (const double offset : {1e-3, 1e-5}) {
                std::vector<double> state = moment.state;
                for (std::size_t i = 0; i < state.size(); ++i) {
                    state[i] +=
                        offset * share(random) * moment.simulator.network().states()[i].scale;
                }
                const Worst worst = worst_entry(moment.simulator.network(), state, 1e-5);
                CAPTURE(moment.simulator.seconds());
                CAPTURE(worst.entry);
                CHECK(worst.miss < 1e-4);
            }
        }
    }
}
TEST_CASE("the rates that come with the Jacobian are the rates")
{
    for (Moment& moment : running()) {
        Network& network = moment.simulator.network();
        std::vector<double> alone(network.state_count());
        std::vector<double> beside(network.state_count());
        std::vector<double> slots(network.pattern().slot_count());
        network.evaluate(moment.state, alone);
        network.differentiate(moment.state, beside, slots);
        for (std::size_t i = 0; i < alone.size(); ++i) {
            CAPTURE(network.states()[i].name);
            CHECK(std::abs(alone[i] - beside[i]) <= 1e-9 * network.states()[i].scale);
        }
    }
}

TEST_CASE("what leaves one part arrives in another, whatever the state")
{
    std::mt19937_64 random(2);
    std::uniform_real_distribution<double> spread(-2.0, 2.0);
    for (auto make : {running, flooded, tipped}) {
        for (Moment& moment : make()) {
            Network& network = moment.simulator.network();
            std::vector<double> rates(network.state_count());
            for (std::size_t i = 0; i < rates.size(); ++i) {
                const StateInfo& info = network.states()[i];
                moment.state[i] =
                    std::clamp(moment.state[i] + spread(random) * info.scale, info.low, info.high);
            }
            network.evaluate(moment.state, rates);
            for (const auto share : {&StateInfo::fuel, &StateInfo::air}) {
                double sum = 0.0;
                double gross = 0.0;
                for (std::size_t i = 0; i < rates.size(); ++i) {
                    sum += network.states()[i].*share * rates[i];
                    gross += std::abs(network.states()[i].*share * rates[i]);
                }
                CHECK(gross > 0.0);
                CHECK(std::abs(sum) <= 1e-14 * gross); // rounding of some ten additions
            }
        }
    }
}

TEST_CASE("a copy of a network has parameters of its own")
{
    Network first(mower()->parts);
    Network second(first);
    const double before = first.parameter("main_jet", "bore");
    second.parameter("main_jet", "bore") = 0.5 * before;
    CHECK(first.parameter("main_jet", "bore") == before);
}

TEST_CASE("a network names what is missing in it")
{
    Network network(mower()->parts);
    CHECK_THROWS_WITH_AS(static_cast<void>(network.state_index("bowl.nothing")),
                         "there is no state bowl.nothing", RequestError);
    CHECK_THROWS_WITH_AS(static_cast<void>(network.parameter("nothing", "area")),
                         "there is no part nothing", RequestError);
    CHECK_THROWS_WITH_AS(static_cast<void>(network.parameter("bowl_vent", "bore")),
                         "part bowl_vent of kind hole has no parameter bore", RequestError);
    std::vector<double> state(network.state_count());
    CHECK_FALSE(network.fill("nothing", 0.5, state));
    CHECK_FALSE(network.fill("bowl_vent", 0.5, state));
    CHECK(network.fill("tank", 0.5, state));
}

TEST_CASE("a network that cannot be put together says why")
{
    PartSpec stranger;
    stranger.id = "thing";
    stranger.kind = "no_such_kind";
    CHECK_THROWS_WITH_AS(Network({stranger}),
                         "part thing is of kind no_such_kind, which does not exist", RequestError);
    PartSpec lonely;
    lonely.id = "mirror";
    lonely.kind = "test_mirror";
    CHECK_THROWS_WITH_AS(Network({lonely}),
                         "part mirror of kind test_mirror needs a link \"other\"", RequestError);
    lonely.links["other"] = "nobody";
    CHECK_THROWS_WITH_AS(Network({lonely}), "part mirror reads nobody.image, which no part gives",
                         RequestError);
    PartSpec facing = lonely;
    lonely.links["other"] = "facing";
    facing.id = "facing";
    facing.links["other"] = "mirror";
    CHECK_THROWS_WITH_AS(Network({lonely, facing}),
                         "the signals of the parts depend on each other in a circle", RequestError);
    lonely.links["other"] = "mirror";
    CHECK_THROWS_WITH_AS(Network({lonely}),
                         "the signals of the parts depend on each other in a circle", RequestError);
}

TEST_SUITE_END();
