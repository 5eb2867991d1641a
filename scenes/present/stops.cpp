#include "scenes/present/stops.hpp"

#include <algorithm>
#include <vector>

namespace scenes {
namespace {

/// The moments of the branch that is shown, in order.
std::vector<sim::Tick> stops_of(const BenchModel& model)
{
    std::vector<sim::Tick> stops{0, model.run().end()};
    for (const OwnCommand& own : model.branches()[model.active_branch()].plan.own) {
        if (own.gesture == Gesture::begins && own.timed.at <= model.run().end()) {
            stops.push_back(own.timed.at);
        }
    }
    std::ranges::sort(stops);
    return stops;
}

void show(BenchModel& model, sim::Tick at)
{
    model.go_to(static_cast<double>(at) * sim::tick_length);
}

} // namespace

void show_next_stop(BenchModel& model)
{
    if (model.is_busy()) {
        return;
    }
    const std::vector<sim::Tick> stops = stops_of(model);
    const auto next = std::ranges::upper_bound(stops, model.run().machine().now());
    if (next != stops.end()) {
        show(model, *next);
        return;
    }
    const std::size_t branch = model.active_branch() + 1;
    if (branch == model.branches().size()) {
        model.pace.is_paused = false;
        return;
    }
    model.switch_to(branch);
    show(model, model.branches()[branch].left_at); // nothing while it is replayed
}

void show_stop_before(BenchModel& model)
{
    if (model.is_busy()) {
        return;
    }
    const std::vector<sim::Tick> stops = stops_of(model);
    const auto here = std::ranges::lower_bound(stops, model.run().machine().now());
    if (here != stops.begin()) {
        show(model, *(here - 1));
    } else if (model.active_branch() > 0) {
        model.switch_to(model.active_branch() - 1);
        show(model, model.run().end());
    }
}

} // namespace scenes
