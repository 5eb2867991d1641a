#include "../part.hpp"

namespace sim {
namespace {

/// Heat from one body to another, or to the air; the engine's fan adds to it as it turns.
/// source:  Newton's law of cooling; conductances fitted to a head about 150 K over the air at full
///          load and a carburetor of 45..60 degC after a hot soak (common practice, no source)
struct HeatPath {
    HeatConductance conductance;
    HeatConductance fan;
    AngularSpeed rated_speed;

    enum In : std::size_t { a, b, speed, reads };
    enum Out : std::size_t { flow, writes };

    static void wire(Wiring& w)
    {
        w.read(w.of("a", "temperature"));
        w.read(w.of("b", "temperature"));
        w.read(w.of("engine", "speed"));
        w.flow_between("heat", "a", "b");
    }

    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        const S total = conductance.si + in[speed] * (fan.si / rated_speed.si);
        out[flow] = (in[a] - in[b]) * total;
    }
};

constexpr std::tuple parameters{
    parameter("conductance", "conductance at rest", &HeatPath::conductance, HeatConductance{0.0},
              HeatConductance{1000.0}),
    parameter("fan", "conductance the fan adds at rated speed", &HeatPath::fan,
              HeatConductance{0.0}, HeatConductance{1000.0}),
    parameter("rated_speed", "rated speed", &HeatPath::rated_speed, AngularSpeed{50.0},
              AngularSpeed{1200.0}),
};

const RegisterPart<HeatPath> registered{"heat_path", "Heat path", parameters};

} // namespace
} // namespace sim
