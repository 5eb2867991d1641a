#include "turn.hpp"

#include "error.hpp"

#include <algorithm>
#include <limits>

namespace sim {

namespace {
/// A step of a repeated pattern may be this much rougher than one that was free to choose.
constexpr double most_rough = 10.0;
/// The last step of a turn reaches past top dead centre by this much more, to find it inside.
constexpr double overreach = 1.1;
/// A turn has steps between these; so a turn's first step is not taken for its last.
constexpr std::size_t fewest_steps = 4;
/// Steps more than the pattern has, before a turn counts as lost.
constexpr std::size_t spare_steps = 2;
constexpr std::size_t most_steps = 1000;
/// An engine slower than this is not followed turn by turn, rad/s.
constexpr double slowest = 50.0;
} // namespace

std::optional<double> top_dead_centre(const Step& step, const Network::Crank& crank)
{
    if (!(step.first()[crank.sine] < 0.0 && step.last()[crank.sine] >= 0.0 &&
          step.last()[crank.cosine] > 0.0)) {
        return {};
    }
    double before = step.start();
    double after = step.end();
    for (;;) {
        const double middle = 0.5 * (before + after);
        if (!(middle > before && middle < after)) {
            return after;
        }
        (step.at(middle, crank.sine) >= 0.0 ? after : before) = middle;
    }
}

double first_step_of_turn(double speed)
{
    constexpr double angle = 0.05; // rad
    return angle / std::max(speed, slowest);
}

TurnMap::TurnMap(const Network& network, Tolerance tolerance)
    : stepper_(network, tolerance), step_(network.state_count())
{
}

bool TurnMap::learn(Network& network, std::span<double> state, double& time)
{
    const Network::Crank& crank = *network.crank();
    angles_.clear();
    Stepper::begin(step_, 0.0, state);
    double length = first_step_of_turn(state[crank.speed]);
    while (angles_.size() < most_steps && step_.last()[crank.speed] > slowest) {
        const double speed = step_.last()[crank.speed];
        try {
            stepper_.advance(network, step_, length, std::numeric_limits<double>::infinity());
        } catch (const NumericsError&) {
            return false; // as a plain step will say in its turn
        }
        angles_.push_back((step_.end() - step_.start()) * speed);
        const auto top =
            angles_.size() > fewest_steps ? top_dead_centre(step_, crank) : std::nullopt;
        if (top) {
            step_.at(*top, state);
            time += *top;
            return true;
        }
    }
    return false;
}

std::optional<double> TurnMap::apply(Network& network, std::span<double> state, double slack)
{
    const Network::Crank& crank = *network.crank();
    Stepper::begin(step_, 0.0, state);
    for (std::size_t i = 0; i < angles_.size() + spare_steps; ++i) {
        const bool is_last = i + 1 >= angles_.size();
        const double angle = is_last ? overreach * angles_.back() : angles_[i];
        const double speed = step_.last()[crank.speed];
        if (!(speed > slowest)) {
            return {};
        }
        const auto roughness = stepper_.repeat(network, step_, angle / speed);
        if (!roughness || *roughness > slack * most_rough) {
            return {};
        }
        const auto top = i > fewest_steps ? top_dead_centre(step_, crank) : std::nullopt;
        if (top) {
            step_.at(*top, state);
            return top;
        }
    }
    return {};
}

bool TurnMap::change(Network& network, std::span<const double> from, std::span<double> change,
                     double slack)
{
    const std::span<double> states = change.first(network.state_count());
    std::ranges::copy(from.first(states.size()), states.begin());
    const auto period = apply(network, states, slack);
    for (std::size_t i = 0; i < states.size(); ++i) {
        states[i] -= from[i];
    }
    change.back() = period.value_or(0.0);
    return period.has_value();
}

} // namespace sim
