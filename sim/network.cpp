#include "network.hpp"

#include "error.hpp"

#include <algorithm>

namespace sim {

namespace {
constexpr std::size_t unknown = static_cast<std::size_t>(-1);

std::uint32_t small(std::size_t value)
{
    return static_cast<std::uint32_t>(value);
}

using Names = std::map<std::string, std::uint32_t, std::less<>>;

void add_name(Names& names, const std::string& name, std::size_t signal)
{
    if (!names.emplace(name, small(signal)).second) {
        throw RequestError("two signals are called " + name);
    }
}
} // namespace

Network::Network(const std::vector<PartSpec>& specs)
{
    std::vector<Wiring> wirings;
    const auto names = wire(specs, wirings);
    for (std::size_t p = 0; p < parts_.size(); ++p) {
        Bound& bound = bound_[p];
        for (const std::string& name : wirings[p].reads) {
            const auto found = names.find(name);
            if (found == names.end()) {
                throw RequestError("part " + ids_[p] + " reads " + name + ", which no part gives");
            }
            bound.in.push_back(found->second);
        }
        for (const auto& given : wirings[p].gives) {
            auto& targets = bound.targets.emplace_back();
            for (const FlowTarget& target : given.targets) {
                targets.emplace_back(small(state_index(target.state)), target.sign);
            }
        }
    }
    for (const Wiring& wiring : wirings) {
        if (const auto& names_of = wiring.crank_states; !names_of.empty()) {
            crank_ = {state_index(names_of[0]), state_index(names_of[1]), state_index(names_of[2])};
        }
    }
    order(wirings);
    plan_jacobian();
}

Network::Network(const Network& other)
    : ids_(other.ids_),
      kinds_(other.kinds_),
      bound_(other.bound_),
      order_(other.order_),
      states_(other.states_),
      readings_(other.readings_),
      crank_(other.crank_),
      values_(other.values_),
      gradients_(other.gradients_),
      gradient_at_(other.gradient_at_),
      read_rates_(other.read_rates_),
      lu_(other.lu_)
{
    for (const auto& part : other.parts_) {
        parts_.push_back(part->clone());
    }
}

std::map<std::string, std::uint32_t, std::less<>> Network::wire(const std::vector<PartSpec>& specs,
                                                                std::vector<Wiring>& wirings)
{
    for (const PartSpec& spec : specs) {
        const PartKind* kind = find_part_kind(spec.kind);
        if (kind == nullptr) {
            throw RequestError("part " + spec.id + " is of kind " + spec.kind +
                               ", which does not exist");
        }
        ids_.push_back(spec.id);
        kinds_.push_back(kind);
        parts_.push_back(kind->make());
        for (const ParameterInfo& info : kind->parameters) {
            info.member(parts_.back()->address()) = spec.parameters.at(std::string(info.id));
        }
        wirings.emplace_back(spec, specs);
        parts_.back()->wire(wirings.back());
    }
    std::map<std::string, std::uint32_t, std::less<>> names;
    bound_.resize(parts_.size());
    for (std::size_t p = 0; p < parts_.size(); ++p) {
        bound_[p].first_state = states_.size();
        bound_[p].state_count = wirings[p].states.size();
        for (const StateInfo& info : wirings[p].states) {
            add_name(names, info.name, states_.size());
            states_.push_back(info);
        }
        bound_[p].first_shown = readings_.size();
        bound_[p].shown_count = wirings[p].readings.size();
        for (const ReadingInfo& info : wirings[p].readings) {
            readings_.push_back({info.name, info.unit, p, readings_.size()});
        }
    }
    std::size_t next = states_.size();
    for (std::size_t p = 0; p < parts_.size(); ++p) {
        bound_[p].first_out = next;
        for (const auto& given : wirings[p].gives) {
            add_name(names, given.name, next++);
        }
        bound_[p].x.resize(wirings[p].reads.size());
        bound_[p].y.resize(wirings[p].gives.size());
        bound_[p].slopes.resize(wirings[p].reads.size() * wirings[p].gives.size());
    }
    values_.resize(next);
    read_rates_.resize(states_.size());
    return names;
}

void Network::order(const std::vector<Wiring>& wirings)
{
    std::vector<std::size_t> owner(values_.size(), unknown);
    for (std::size_t p = 0; p < parts_.size(); ++p) {
        std::fill_n(owner.begin() + static_cast<std::ptrdiff_t>(bound_[p].first_out),
                    wirings[p].gives.size(), p);
    }
    std::vector<char> placed(parts_.size(), 0);
    const auto ready = [&](std::size_t p) {
        return std::ranges::all_of(bound_[p].in, [&](std::uint32_t signal) {
            return owner[signal] == unknown || placed[owner[signal]] != 0;
        });
    };
    while (order_.size() < parts_.size()) {
        std::size_t next = unknown;
        for (std::size_t p = 0; p < parts_.size() && next == unknown; ++p) {
            next = placed[p] == 0 && ready(p) ? p : unknown;
        }
        if (next == unknown) {
            throw RequestError("the signals of the parts depend on each other in a circle");
        }
        placed[next] = 1;
        order_.push_back(next);
    }
}

void Network::plan_jacobian()
{
    // A state's gradient is the single number 1; all states share it at the very start.
    gradient_at_.assign(values_.size(), 0);
    Supports supports(values_.size());
    for (std::size_t i = 0; i < states_.size(); ++i) {
        supports[i] = {small(i)};
    }
    std::size_t gradient_count = 1;
    std::vector<std::pair<std::size_t, std::size_t>> entries;
    for (const std::size_t p : order_) {
        Bound& bound = bound_[p];
        plan_support(bound, supports);
        for (std::size_t k = 0; k < bound.targets.size(); ++k) {
            supports[bound.first_out + k] = bound.support;
            gradient_at_[bound.first_out + k] = gradient_count;
            gradient_count += bound.support.size();
        }
        for_each_entry(bound, [&](std::uint32_t row, std::uint32_t column) {
            entries.emplace_back(row, column);
        });
    }
    lu_ = std::make_shared<const SparseLu>(states_.size(), entries);
    gradients_.resize(gradient_count);
    for (Bound& bound : bound_) {
        for_each_entry(bound, [&](std::uint32_t row, std::uint32_t column) {
            bound.slots.push_back(small(lu_->slot(row, column)));
        });
    }
}

void Network::plan_support(Bound& bound, const Supports& supports)
{
    for (const std::uint32_t signal : bound.in) {
        const auto& more = supports[signal];
        bound.support.insert(bound.support.end(), more.begin(), more.end());
    }
    std::sort(bound.support.begin(), bound.support.end());
    bound.support.erase(std::unique(bound.support.begin(), bound.support.end()),
                        bound.support.end());
    for (const std::uint32_t signal : bound.in) {
        auto& place = bound.place.emplace_back();
        for (const std::uint32_t state : supports[signal]) {
            const auto found = std::lower_bound(bound.support.begin(), bound.support.end(), state);
            place.push_back(small(static_cast<std::size_t>(found - bound.support.begin())));
        }
    }
}

template <class Visit>
void Network::for_each_entry(const Bound& bound, Visit visit)
{
    for (const auto& targets : bound.targets) {
        for (const auto& [row, sign] : targets) {
            for (const std::uint32_t column : bound.support) {
                visit(row, column);
            }
        }
    }
}

std::size_t Network::state_index(std::string_view name) const
{
    const auto found = std::ranges::find(states_, name, &StateInfo::name);
    if (found == states_.end()) {
        throw RequestError("there is no state " + std::string(name));
    }
    return static_cast<std::size_t>(found - states_.begin());
}

const ParameterInfo& Network::parameter_info(std::string_view part, std::string_view name) const
{
    const auto id = std::ranges::find(ids_, part);
    if (id == ids_.end()) {
        throw RequestError("there is no part " + std::string(part));
    }
    const PartKind& kind = *kinds_[static_cast<std::size_t>(id - ids_.begin())];
    const auto found = std::ranges::find(kind.parameters, name, &ParameterInfo::id);
    if (found == kind.parameters.end()) {
        throw RequestError("part " + std::string(part) + " of kind " + std::string(kind.id) +
                           " has no parameter " + std::string(name));
    }
    return *found;
}

double& Network::parameter(std::string_view part, std::string_view name)
{
    const ParameterInfo& info = parameter_info(part, name);
    const auto id = std::ranges::find(ids_, part);
    return info.member(parts_[static_cast<std::size_t>(id - ids_.begin())]->address());
}

void Network::prepare(const Surroundings& surroundings)
{
    for (std::size_t p = 0; p < parts_.size(); ++p) {
        parts_[p]->prepare(surroundings);
        Bound& bound = bound_[p];
        bound.is_shut = parts_[p]->is_shut();
        if (bound.is_shut) {
            std::fill_n(values_.begin() + static_cast<std::ptrdiff_t>(bound.first_out),
                        bound.targets.size(), 0.0);
        }
    }
}

std::vector<double> Network::shelved(const Surroundings& surroundings) const
{
    std::vector<double> state(states_.size(), 0.0);
    for (std::size_t p = 0; p < parts_.size(); ++p) {
        parts_[p]->shelve(surroundings,
                          std::span(state).subspan(bound_[p].first_state, bound_[p].state_count));
    }
    return state;
}

bool Network::fill(std::string_view part, double share, std::span<double> state) const
{
    const auto id = std::ranges::find(ids_, part);
    if (id == ids_.end()) {
        return false;
    }
    const auto p = static_cast<std::size_t>(id - ids_.begin());
    return parts_[p]->fill(share, state.subspan(bound_[p].first_state, bound_[p].state_count));
}

void Network::gather(Bound& bound) const
{
    for (std::size_t i = 0; i < bound.in.size(); ++i) {
        bound.x[i] = values_[bound.in[i]];
    }
}

void Network::evaluate(std::span<const double> state, std::span<double> rates)
{
    std::ranges::copy(state, values_.begin());
    std::ranges::fill(rates, 0.0);
    for (const std::size_t p : order_) {
        Bound& bound = bound_[p];
        if (bound.is_shut) {
            continue;
        }
        gather(bound);
        parts_[p]->evaluate(bound.x.data(), values_.data() + bound.first_out);
        for (std::size_t k = 0; k < bound.targets.size(); ++k) {
            for (const auto& [row, sign] : bound.targets[k]) {
                rates[row] += sign * values_[bound.first_out + k];
            }
        }
    }
}

void Network::differentiate(std::span<const double> state, std::span<double> rates,
                            std::span<double> slots)
{
    std::ranges::copy(state, values_.begin());
    std::ranges::fill(rates, 0.0);
    std::ranges::fill(slots, 0.0);
    std::ranges::fill(gradients_, 0.0);
    gradients_[0] = 1.0;
    for (const std::size_t p : order_) {
        Bound& bound = bound_[p];
        if (bound.is_shut) {
            continue;
        }
        gather(bound);
        parts_[p]->differentiate(bound.x.data(), values_.data() + bound.first_out,
                                 bound.slopes.data());
        const std::uint32_t* slot = bound.slots.data();
        for (std::size_t k = 0; k < bound.targets.size(); ++k) {
            const double* gradient = chain_gradient(bound, k);
            for (const auto& [row, sign] : bound.targets[k]) {
                rates[row] += sign * values_[bound.first_out + k];
                for (std::size_t j = 0; j < bound.support.size(); ++j) {
                    slots[slot[j]] += sign * gradient[j];
                }
                slot += bound.support.size();
            }
        }
    }
}

const double* Network::chain_gradient(const Bound& bound, std::size_t out)
{
    const std::size_t reads = bound.in.size();
    double* gradient = gradients_.data() + gradient_at_[bound.first_out + out];
    for (std::size_t i = 0; i < reads; ++i) {
        const double slope = bound.slopes[out * reads + i];
        if (slope == 0.0) {
            continue;
        }
        const auto& place = bound.place[i];
        const double* inner = gradients_.data() + gradient_at_[bound.in[i]];
        for (std::size_t j = 0; j < place.size(); ++j) {
            gradient[place[j]] += slope * inner[j];
        }
    }
    return gradient;
}

void Network::read(std::span<const double> state, std::span<double> shown)
{
    evaluate(state, read_rates_);
    for (std::size_t p = 0; p < parts_.size(); ++p) {
        Bound& bound = bound_[p];
        if (bound.shown_count == 0) {
            continue;
        }
        gather(bound);
        parts_[p]->show(bound.x.data(), values_.data() + bound.first_out,
                        shown.data() + bound.first_shown);
    }
}

} // namespace sim
