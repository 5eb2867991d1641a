#include "tests/reference/cvode_machine.hpp"

#include "sim/error.hpp"

#include <algorithm>

using namespace sim;

namespace tests {

namespace {
double time_of(Tick tick)
{
    return static_cast<double>(tick) * tick_length;
}
/// Long after the end of any run, s.
constexpr double never = 1e9;
} // namespace

CvodeMachine::CvodeMachine(std::shared_ptr<const Rig> rig, std::vector<TimedCommand> commands,
                           CvodeOptions options, Weather weather)
    : rig_(std::move(rig)),
      parameters_(rig_, weather),
      solver_(parameters_.network(), options),
      commands_(std::move(commands))
{
    std::ranges::stable_sort(commands_, {}, &TimedCommand::at);
    solver_.restart(0.0, parameters_.state());
    stop_at_next_command();
}

void CvodeMachine::stop_at_next_command()
{
    solver_.stop_at(
        next_ < commands_.size() && commands_[next_].at > 0 ? time_of(commands_[next_].at) : never);
}

void CvodeMachine::advance(Tick to)
{
    while (next_ < commands_.size() && commands_[next_].at <= to) {
        const Tick at = commands_[next_].at;
        solver_.advance(time_of(at));
        std::vector<double> state(solver_.state().begin(), solver_.state().end());
        for (; next_ < commands_.size() && commands_[next_].at == at; ++next_) {
            apply(commands_[next_].command, state);
        }
        solver_.restart(time_of(at), state);
        stop_at_next_command();
    }
    solver_.advance(time_of(to));
}

void CvodeMachine::apply(const Command& command, std::span<double> state)
{
    parameters_.post(command);
    parameters_.advance(parameters_.now());
    const auto* deed = std::get_if<Do>(&command);
    if (deed == nullptr) {
        return;
    }
    // What a doing does to the state: the keeper of the parameters did it to its own.
    const Doing& doing = *rig_->find_doing(deed->doing);
    for (const Doing::Jump& jump : doing.jumps) {
        state[parameters_.network().state_index(jump.state)] = jump.to;
    }
    if (!doing.fills.empty()) {
        if (!parameters_.network().fill(doing.fills, deed->to, state)) {
            throw RequestError("no chamber to fill");
        }
    }
    if (!doing.adds_to.empty()) {
        double& sum = state[parameters_.network().state_index(doing.adds_to)];
        sum = std::min(sum + deed->to, std::max(sum, doing.most));
    }
}

void CvodeMachine::read(std::span<double> values)
{
    std::ranges::fill(values, 0.0);
    parameters_.network().read(solver_.state(), values);
}

} // namespace tests
