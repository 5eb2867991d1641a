#pragma once

#include "fluid.hpp"
#include "geometry.hpp"

#include <concepts>
#include <functional>
#include <map>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <tuple>
#include <vector>

// How to write a part kind. One file in parts/, one struct:
//
//   - its parameters as typed members, listed once in a table with their ranges;
//   - `enum In` and `enum Out`, ending in `reads` and `writes`: the numbers it looks at and gives;
//   - `wire`: names its states, what it reads (in the order of In) and what it gives (in the order
//     of Out). A given number is a signal that others read, or a flow that is added, with its sign,
//     to the rates of states. One flow goes out of one state and into another, so nothing is lost;
//   - `prepare`: constants that follow from parameters and surroundings;
//   - `evaluate`: a template on the scalar. With Dual numbers the same lines give the Jacobian;
//   - if it can be as good as not there (a crack of no area), `is_shut`: it is then passed by;
//   - if it has states, `shelve`: what they are on the shelf;
//   - if people read something of it, `show`.
//
// What the author may rely on: signals are ready before they are read; parameters are in range.
// What the author owes: every law continuous, with a finite slope, and no flow out of what is
// empty.

namespace sim {

/// What surrounds the machine. `up` is the direction away from the earth in the machine's own axes
/// (x forward, y to the left, z up): tipping the machine turns it.
struct Surroundings {
    AbsolutePressure pressure{101325.0};
    Temperature temperature{293.15};
    Vector up{0.0, 0.0, 1.0};
    FuelBlend fuel;
};

/// One row of a kind's parameter table.
struct ParameterInfo {
    std::string_view id;
    std::string_view title;
    Dimension dimension = Dimension::ratio;
    double low = 0.0;
    double high = 0.0;
    std::function<double&(void* part)> member;
};

/// How a state is scaled, bounded and audited.
///
/// scale:   a small amount that matters; the stepper's error is measured against it
/// fuel:    kilograms of fuel that one unit of the state stands for; air, moles of air likewise
struct StateInfo {
    std::string name;
    double scale = 1.0;
    double low = -1e300;
    double high = 1e300;
    double fuel = 0.0;
    double air = 0.0;

    /// Whether a value keeps the bounds. A state may pass them by a trace of its scale: laws end at
    /// the bound.
    [[nodiscard]] bool allows(double value) const
    {
        const double slack = 1e-4 * scale;
        return value >= low - slack && value <= high + slack;
    }
};

/// Something people read: `name` with the unit it is shown in. `gauge` subtracts the surroundings.
struct ReadingInfo {
    std::string name;
    std::string unit;
};

/// A flow is added to the rate of `state`, times `sign`.
struct FlowTarget {
    std::string state;
    double sign = 1.0;
};

/// A part as the rig file states it.
struct PartSpec {
    std::string id;
    std::string kind;
    std::string title;
    std::map<std::string, std::string> links;
    std::map<std::string, double> parameters;
    std::map<std::string, Vector> points;
    Box box;
};

class Rig;

/// What a part says of itself when the network is put together.
class Wiring {
public:
    Wiring(const PartSpec& spec, const std::vector<PartSpec>& all);

    /// The id of the part linked under `role`; the rig reader has checked that it exists.
    [[nodiscard]] std::string link(std::string_view role) const;
    [[nodiscard]] bool has_link(std::string_view role) const;
    /// The name `signal` of the part linked under `role`.
    [[nodiscard]] std::string of(std::string_view role, std::string_view signal) const;
    [[nodiscard]] std::string own(std::string_view name) const;
    [[nodiscard]] const Box& own_box() const { return spec_->box; }
    /// The room inside the chamber linked under `role`.
    [[nodiscard]] Box chamber_box(std::string_view role) const;
    /// A port of this part at its point `point` on the chamber linked under `role`.
    [[nodiscard]] PortPlace port(std::string_view role, std::string_view point) const;
    [[nodiscard]] Vector point(std::string_view name) const;

    void state(StateInfo info);
    void read(std::string signal) { reads.push_back(std::move(signal)); }
    void publish(std::string_view name);
    void flow(std::string_view name, std::vector<FlowTarget> targets);
    /// A flow of `name` from the part under role `from` to the one under role `to`.
    void flow_between(std::string_view name, std::string_view from, std::string_view to);
    void reading(std::string_view name, std::string_view unit);
    /// Names the states of this part that follow a crank through its turn.
    void crank(std::string_view cosine, std::string_view sine, std::string_view speed);

    std::vector<StateInfo> states;
    std::vector<std::string> reads;
    struct Given {
        std::string name;
        std::vector<FlowTarget> targets;
    };
    std::vector<Given> gives;
    std::vector<ReadingInfo> readings;
    std::vector<std::string> crank_states; ///< cosine, sine, speed; or none

private:
    const PartSpec* spec_;
    const std::vector<PartSpec>* all_;
};

/// A part in the network, whatever its kind.
class Part {
public:
    Part() = default;
    Part(const Part&) = delete;
    Part& operator=(const Part&) = delete;
    Part(Part&&) = delete;
    Part& operator=(Part&&) = delete;
    virtual ~Part() = default;

    [[nodiscard]] virtual std::unique_ptr<Part> clone() const = 0;
    [[nodiscard]] virtual void* address() = 0;
    virtual void wire(Wiring& wiring) = 0;
    virtual void prepare(const Surroundings& surroundings) = 0;
    /// Whether, as its parameters stand, it gives nothing at all whatever it reads: a crack of no
    /// area. Asked after `prepare`; the network then passes it by.
    [[nodiscard]] virtual bool is_shut() const = 0;
    virtual void shelve(const Surroundings& surroundings, std::span<double> states) const = 0;
    /// in -> out, both in the order of the kind's enums, in SI.
    virtual void evaluate(const double* in, double* out) const = 0;
    /// The same with slopes[out * reads + in] = d out / d in.
    virtual void differentiate(const double* in, double* out, double* slopes) const = 0;
    /// Numbers for people, in SI, in the order of `Wiring::reading`.
    virtual void show(const double* in, const double* out, double* shown) const = 0;
    /// Sets the states so that the part is filled to a share of its volume; false if it cannot be.
    [[nodiscard]] virtual bool fill(double share, std::span<double> states) const = 0;
};

/// One entry of the catalogue.
struct PartKind {
    std::string_view id;
    std::string_view title;
    std::vector<ParameterInfo> parameters;
    std::function<std::unique_ptr<Part>()> make;
};

/// All kinds, sorted by id.
std::span<const PartKind> part_kinds();
/// The kind with this id; null when there is none.
const PartKind* find_part_kind(std::string_view id);
void add_part_kind(PartKind kind);

template <class Kind, class Value>
struct Parameter {
    std::string_view id;
    std::string_view title;
    Value Kind::*member;
    Value low;
    Value high;
};
template <class Kind, class Value>
constexpr Parameter<Kind, Value> parameter(std::string_view id, std::string_view title,
                                           Value Kind::*member, Value low, Value high)
{
    return {id, title, member, low, high};
}

template <class Kind>
class PartOf final : public Part {
public:
    PartOf() = default;
    explicit PartOf(const Kind& kind) : kind_(kind) {}
    [[nodiscard]] std::unique_ptr<Part> clone() const override
    {
        return std::make_unique<PartOf>(kind_);
    }
    [[nodiscard]] void* address() override { return &kind_; }
    void wire(Wiring& wiring) override { kind_.wire(wiring); }
    void prepare(const Surroundings& surroundings) override
    {
        if constexpr (requires(Kind & k) { k.prepare(surroundings); }) {
            kind_.prepare(surroundings);
        }
    }
    [[nodiscard]] bool is_shut() const override
    {
        if constexpr (requires(const Kind& k) { k.is_shut(); }) {
            return kind_.is_shut();
        }
        return false;
    }
    void shelve(const Surroundings& surroundings, std::span<double> states) const override
    {
        if constexpr (requires(const Kind& k) { k.shelve(surroundings, states); }) {
            kind_.shelve(surroundings, states);
        }
    }
    void evaluate(const double* in, double* out) const override
    {
        std::array<double, Kind::reads> x{};
        std::array<double, Kind::writes> y{};
        std::copy_n(in, x.size(), x.begin());
        kind_.evaluate(x, y);
        std::copy_n(y.begin(), y.size(), out);
    }
    void differentiate(const double* in, double* out, double* slopes) const override
    {
        using S = Dual<Kind::reads>;
        std::array<S, Kind::reads> x{};
        std::array<S, Kind::writes> y{};
        for (std::size_t i = 0; i < x.size(); ++i) {
            x[i].value = in[i];
            x[i].slope[i] = 1.0;
        }
        kind_.evaluate(x, y);
        for (std::size_t k = 0; k < y.size(); ++k) {
            out[k] = y[k].value;
            std::copy_n(y[k].slope.begin(), x.size(), slopes + k * x.size());
        }
    }
    void show(const double* in, const double* out, double* shown) const override
    {
        if constexpr (requires(const Kind& k) { k.show(in, out, shown); }) {
            kind_.show(in, out, shown);
        }
    }
    [[nodiscard]] bool fill(double share, std::span<double> states) const override
    {
        if constexpr (requires(const Kind& k) { k.fill_by_hand(share, states); }) {
            kind_.fill_by_hand(share, states);
            return true;
        }
        return false;
    }

private:
    Kind kind_;
};

/// Adds a kind to the catalogue when its file is linked in.
template <class Kind>
struct RegisterPart {
    template <class Parameters>
    RegisterPart(std::string_view id, std::string_view title, const Parameters& parameters)
    {
        PartKind kind{id, title, {}, [] { return std::make_unique<PartOf<Kind>>(); }};
        std::apply([&](const auto&... p) { (kind.parameters.push_back(row(p)), ...); }, parameters);
        add_part_kind(std::move(kind));
    }

private:
    template <class Value>
    static ParameterInfo row(const Parameter<Kind, Value>& p)
    {
        return {p.id,
                p.title,
                dimension_of<Value>,
                p.low.si,
                p.high.si,
                [member = p.member](void* part) -> double& {
                    return (static_cast<Kind*>(part)->*member).si;
                }};
    }
};

} // namespace sim
