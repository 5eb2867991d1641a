#include "scenes/present/machine_view.hpp"

#include "sim/error.hpp"

#include <algorithm>

namespace scenes {

void MachineView::take(sim::Simulator& machine)
{
    readings_ = &machine.readings();
    values_.resize(readings_->size());
    machine.read(values_);
    seconds_ = machine.seconds();
    controls_.clear();
    for (const sim::Control& control : machine.rig().controls) {
        controls_.emplace_back(control.id, machine.control(control.id));
    }
}

double MachineView::reading(std::string_view name) const
{
    const auto found = std::ranges::find(*readings_, name, &sim::Network::Reading::name);
    const auto index = static_cast<std::size_t>(found - readings_->begin());
    if (index >= values_.size()) {
        throw sim::RequestError("the machine has no reading \"" + std::string(name) + "\"");
    }
    return values_[index];
}

double MachineView::control(std::string_view name) const
{
    const auto found = std::ranges::find(controls_, name, &std::pair<std::string, double>::first);
    if (found == controls_.end()) {
        throw sim::RequestError("the machine has no control \"" + std::string(name) + "\"");
    }
    return found->second;
}

} // namespace scenes
