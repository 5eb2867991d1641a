#pragma once

#include "part.hpp"
#include "sparse_lu.hpp"

#include <optional>

namespace sim {

/// Chambers and passages as one system dx/dt = f(x), with the exact Jacobian of f.
///
/// Parts are evaluated in an order in which every signal is ready before it is read. The network
/// owns the layout of the state vector (parts in rig order, each part's states in the order it
/// declares them) and all scratch memory: nothing is allocated once it is built.
class Network {
public:
    /// Builds from the parts of a rig.
    ///
    /// throws:  RequestError when a signal is missing or signals depend on each other in a circle
    explicit Network(const std::vector<PartSpec>& specs);
    Network(const Network& other);
    Network& operator=(const Network& other) = delete;
    Network(Network&&) = default;
    Network& operator=(Network&&) = default;
    ~Network() = default;

    [[nodiscard]] std::size_t state_count() const { return states_.size(); }
    [[nodiscard]] std::span<const StateInfo> states() const { return states_; }
    [[nodiscard]] std::size_t part_count() const { return parts_.size(); }

    /// Index of the state "part.name".
    ///
    /// throws:  RequestError when there is none
    [[nodiscard]] std::size_t state_index(std::string_view name) const;

    /// Indices of the states that follow a crank through its turn: cosine and sine of its angle
    /// from top dead centre, and its speed.
    struct Crank {
        std::size_t cosine = 0;
        std::size_t sine = 0;
        std::size_t speed = 0;
    };
    /// The crank of an engine that is resolved through its turn; none in a mean-value one.
    [[nodiscard]] const std::optional<Crank>& crank() const { return crank_; }

    /// A reading: where it comes from and the unit it is shown in.
    struct Reading {
        std::string name;
        std::string unit;
        std::size_t part = 0;
        std::size_t slot = 0;
    };
    [[nodiscard]] std::span<const Reading> readings() const { return readings_; }

    /// The value of a parameter, to be read or changed; `prepare` makes changes count.
    ///
    /// throws:  RequestError when there is none
    [[nodiscard]] double& parameter(std::string_view part, std::string_view name);
    /// The same part's table row.
    [[nodiscard]] const ParameterInfo& parameter_info(std::string_view part,
                                                      std::string_view name) const;

    void prepare(const Surroundings& surroundings);
    /// The state of a machine that comes from the shelf.
    [[nodiscard]] std::vector<double> shelved(const Surroundings& surroundings) const;
    /// Fills a chamber to a share of its volume by setting its states; false if it is no chamber.
    [[nodiscard]] bool fill(std::string_view part, double share, std::span<double> state) const;

    /// rates = f(state).
    ///
    /// shape:   both have one entry per state, in layout order
    void evaluate(std::span<const double> state, std::span<double> rates);
    /// f and its Jacobian, the Jacobian into the slots of `pattern()` (other slots zero).
    void differentiate(std::span<const double> state, std::span<double> rates,
                       std::span<double> slots);
    [[nodiscard]] const SparseLu& pattern() const { return *lu_; }

    /// Every reading at a state, in SI, in the order of `readings()`.
    void read(std::span<const double> state, std::span<double> shown);

private:
    struct Bound {
        std::size_t first_state = 0;
        std::size_t state_count = 0;
        std::vector<std::uint32_t> in; ///< signals read
        std::size_t first_out = 0;     ///< first of its signals
        std::vector<std::vector<std::pair<std::uint32_t, double>>>
            targets;                                   ///< per out: rows, signs
        std::vector<std::uint32_t> support;            ///< states its outs depend on
        std::vector<std::vector<std::uint32_t>> place; ///< per in: where its support lies in ours
        std::vector<std::uint32_t> slots; ///< per out, target, support: slot of the matrix
        std::vector<double> x;
        std::vector<double> y;
        std::vector<double> slopes;
        std::size_t first_shown = 0;
        std::size_t shown_count = 0;
        bool is_shut = false;
    };

    std::map<std::string, std::uint32_t, std::less<>> wire(const std::vector<PartSpec>& specs,
                                                           std::vector<Wiring>& wirings);
    void order(const std::vector<Wiring>& wirings);
    void plan_jacobian();
    /// The states each signal depends on, in ascending order.
    using Supports = std::vector<std::vector<std::uint32_t>>;
    static void plan_support(Bound& bound, const Supports& supports);
    /// Visits (row, column) of every matrix entry a part adds to, in the order of its slots.
    template <class Visit>
    static void for_each_entry(const Bound& bound, Visit visit);
    /// The gradient of a part's out over its support, chained through what it reads.
    const double* chain_gradient(const Bound& bound, std::size_t out);
    void gather(Bound& bound) const;

    std::vector<std::string> ids_;
    std::vector<const PartKind*> kinds_;
    std::vector<std::unique_ptr<Part>> parts_;
    std::vector<Bound> bound_;
    std::vector<std::size_t> order_;
    std::vector<StateInfo> states_;
    std::vector<Reading> readings_;
    std::optional<Crank> crank_;
    std::vector<double> values_;
    std::vector<double> gradients_;        ///< of every given number, over its part's support
    std::vector<std::size_t> gradient_at_; ///< per signal: where its gradient begins
    std::vector<double> read_rates_;
    std::shared_ptr<const SparseLu> lu_;
};

} // namespace sim
