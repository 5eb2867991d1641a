#include "scenes/present/machine_view.hpp"

#include "sim/error.hpp"

#include <algorithm>

namespace scenes {

void MachineView::take(sim::Simulator& machine)
{
    machine_ = &machine;
    readings_ = &machine.readings();
    values_.resize(readings_->size());
    machine.read(values_);
    seconds_ = machine.seconds();
    controls_.clear();
    for (const sim::Control& control : machine.rig().controls) {
        controls_.emplace_back(control.id, machine.control(control.id));
    }
}

const sim::Network::Reading* MachineView::find(std::string_view name) const
{
    const auto found = std::ranges::find(*readings_, name, &sim::Network::Reading::name);
    return found == readings_->end() ? nullptr : &*found;
}

double MachineView::cord_out(double length) const
{
    if (cord_in_hand_) {
        return *cord_in_hand_;
    }
    const double left = reading("recoil.cord");
    // The last few centimetres let the handle home again instead of leaving it out there.
    const double kept = std::clamp(left / 0.06, 0.0, 1.0);
    return std::max(0.0, length - left) * kept;
}

const double* MachineView::healthy_parameter(std::string_view part, std::string_view name) const
{
    if (machine_ == nullptr) {
        return nullptr;
    }
    const auto& parts = machine_->rig().parts;
    const auto spec = std::ranges::find(parts, part, &sim::PartSpec::id);
    if (spec == parts.end()) {
        return nullptr;
    }
    const auto found = std::ranges::find_if(
        spec->parameters, [name](const auto& parameter) { return parameter.first == name; });
    return found == spec->parameters.end() ? nullptr : &found->second;
}

bool MachineView::has_parameter(std::string_view part, std::string_view name) const
{
    return healthy_parameter(part, name) != nullptr;
}

double MachineView::parameter(std::string_view part, std::string_view name) const
{
    return machine_->parameter(part, name);
}

double MachineView::healthy(std::string_view part, std::string_view name) const
{
    const double* value = healthy_parameter(part, name);
    return value == nullptr ? 0.0 : *value;
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
