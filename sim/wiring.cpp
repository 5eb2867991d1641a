#include "error.hpp"
#include "part.hpp"

#include <algorithm>

namespace sim {

Wiring::Wiring(const PartSpec& spec, const std::vector<PartSpec>& all) : spec_(&spec), all_(&all) {}

std::string Wiring::link(std::string_view role) const
{
    const auto found = spec_->links.find(std::string(role));
    if (found == spec_->links.end()) {
        throw RequestError("part " + spec_->id + " of kind " + spec_->kind + " needs a link \"" +
                           std::string(role) + "\"");
    }
    return found->second;
}

bool Wiring::has_link(std::string_view role) const
{
    return spec_->links.contains(std::string(role));
}

std::string Wiring::of(std::string_view role, std::string_view signal) const
{
    return link(role) + "." + std::string(signal);
}

std::string Wiring::own(std::string_view name) const
{
    return spec_->id + "." + std::string(name);
}

Box Wiring::chamber_box(std::string_view role) const
{
    const std::string id = link(role);
    const auto found = std::ranges::find(*all_, id, &PartSpec::id);
    return found == all_->end() ? Box{} : found->box;
}

PortPlace Wiring::port(std::string_view role, std::string_view point_name) const
{
    return {chamber_box(role), point(point_name)};
}

Vector Wiring::point(std::string_view name) const
{
    const auto found = spec_->points.find(std::string(name));
    if (found == spec_->points.end()) {
        throw RequestError("part " + spec_->id + " of kind " + spec_->kind + " needs a point \"" +
                           std::string(name) + "\"");
    }
    return found->second;
}

void Wiring::state(StateInfo info)
{
    info.name = own(info.name);
    states.push_back(std::move(info));
}

void Wiring::publish(std::string_view name)
{
    gives.push_back({own(name), {}});
}

void Wiring::flow(std::string_view name, std::vector<FlowTarget> targets)
{
    gives.push_back({own(name), std::move(targets)});
}

void Wiring::flow_between(std::string_view name, std::string_view from, std::string_view to)
{
    gives.push_back({own(name) + "_flow", {{of(from, name), -1.0}, {of(to, name), 1.0}}});
}

void Wiring::reading(std::string_view name, std::string_view unit)
{
    readings.push_back({own(name), std::string(unit)});
}

void Wiring::crank(std::string_view cosine, std::string_view sine, std::string_view speed)
{
    crank_states = {own(cosine), own(sine), own(speed)};
}

} // namespace sim
