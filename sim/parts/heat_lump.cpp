#include "../part.hpp"

namespace sim {
namespace {

/// A body of one temperature: a cylinder head, a carburetor body, a tank.
///
/// Its state is the heat it holds above 0 degC, so that heat flows add up exactly.
struct HeatLump {
    HeatCapacity capacity;

    enum In : std::size_t { heat, reads };
    enum Out : std::size_t { temperature, writes };

    void wire(Wiring& w)
    {
        w.state({"heat", 0.5 * capacity.si, -1e300, 1e300, 0.0, 0.0});
        w.read(w.own("heat"));
        w.publish("temperature");
        w.reading("temperature", "degC");
    }

    void shelve(const Surroundings& s, std::span<double> states) const
    {
        states[0] = capacity.si * (s.temperature.si - 273.15);
    }

    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        out[temperature] = 273.15 + in[heat] * (1.0 / capacity.si);
    }

    static void show(const double* /*in*/, const double* out, double* shown)
    {
        shown[0] = out[temperature];
    }
};

constexpr std::tuple parameters{
    parameter("capacity", "heat capacity", &HeatLump::capacity, HeatCapacity{1.0},
              HeatCapacity{1e6}),
};

const RegisterPart<HeatLump> registered{"heat_lump", "Body that warms", parameters};

} // namespace
} // namespace sim
