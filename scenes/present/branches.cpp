#include "scenes/present/branches.hpp"

#include <algorithm>

namespace scenes {

std::vector<sim::TimedCommand> Plan::commands() const
{
    std::vector<sim::TimedCommand> all = sheet;
    std::ranges::transform(own, std::back_inserter(all), &OwnCommand::timed);
    std::ranges::stable_sort(all, {}, &sim::TimedCommand::at);
    return all;
}

void Plan::truncate(sim::Tick at)
{
    std::erase_if(sheet, [at](const sim::TimedCommand& timed) { return timed.at > at; });
    std::erase_if(own, [at](const OwnCommand& command) { return command.timed.at > at; });
}

const OwnCommand* Plan::last_of_person() const
{
    const auto last = std::find_if(own.rbegin(), own.rend(), [](const OwnCommand& command) {
        return command.gesture != Gesture::aside;
    });
    return last == own.rend() ? nullptr : &*last;
}

std::vector<OwnCommand> Plan::take_last_gesture()
{
    auto first = own.end() - 1;
    while (first != own.begin() && first->gesture != Gesture::begins) {
        --first;
    }
    const auto asides = std::stable_partition(first, own.end(), [](const OwnCommand& command) {
        return command.gesture == Gesture::aside;
    });
    std::vector<OwnCommand> gesture(asides, own.end());
    own.erase(asides, own.end());
    return gesture;
}

void Session::keep_runs(std::size_t most)
{
    std::vector<Branch*> parked;
    for (Branch& branch : branches) {
        if (branch.run && &branch != &now()) {
            parked.push_back(&branch);
        }
    }
    std::ranges::sort(parked, std::greater{}, &Branch::used);
    for (std::size_t i = most; i < parked.size(); ++i) {
        parked[i]->plan.to = parked[i]->run->end();
        parked[i]->run.reset();
    }
}

} // namespace scenes
