#include "../flow_law.hpp"
#include "../part.hpp"

namespace sim {
namespace {

using namespace literals;

/// The air behind a diaphragm, and the passage it breathes through: the pulse side of a pump, the
/// dry side of a metering diaphragm.
///
/// The passage leads to `source`, a room's pressure or the open air. A leak to the open air stands
/// beside it. A passage shut for good leaves the pocket an air spring that warms with its casting.
/// source:  ideal gas; isentropic flow, discharge 0.62
struct Pocket {
    Volume volume;
    Volume reach;
    Area passage;
    Area leak;

    enum In : std::size_t { air, travel, temperature, source, source_air, reads };
    enum Out : std::size_t { pressure, breath, leaked, writes };

    void wire(Wiring& w)
    {
        const double moles = 101325.0 * volume.si / (gas_constant * 293.15);
        w.state({"air", 0.01 * moles, 0.0, 1e3 * moles, 0.0, 1.0});
        w.read(w.own("air"));
        w.read(w.link("wall"));
        w.read(w.of("warmth", "temperature"));
        w.read(w.of("source", "pressure"));
        w.read(w.of("source", "air"));
        w.publish("pressure");
        w.flow("breath", {{w.own("air"), 1.0}, {w.of("source", "air"), -1.0}});
        w.flow("leaked", {{w.own("air"), 1.0}, {w.of("outside", "air"), -1.0}});
        w.reading("pressure", "kPa");
    }

    void prepare(const Surroundings& s)
    {
        outside_ = s.pressure.si;
        temperature_ = s.temperature.si;
    }

    void shelve(const Surroundings& s, std::span<double> states) const
    {
        states[air] = s.pressure.si * volume.si / (gas_constant * s.temperature.si);
    }

    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        const S room = volume.si + in[travel] * reach.si;
        out[pressure] = in[air] * in[temperature] * gas_constant / room;
        const S outside = in[air] * 0.0 + outside_;
        out[breath] = breathed(in[source], out[pressure], passage.si);
        out[leaked] = breathed(outside, out[pressure], leak.si);
    }

    void show(const double* /*in*/, const double* out, double* shown) const
    {
        shown[0] = out[pressure] - outside_;
    }

private:
    /// Moles a second into the pocket through a hole.
    template <class S>
    [[nodiscard]] S breathed(const S& from, const S& to, double area) const
    {
        const S open = to * 0.0 + 0.62 * area;
        return isentropic_flow(open, from, to, temperature_, 2e-3) * (1.0 / air_molar_mass);
    }

    double outside_ = 101325.0;
    double temperature_ = 293.15;
};

constexpr std::tuple parameters{
    parameter("volume", "volume with the diaphragm in the middle", &Pocket::volume, 0.05_mL,
              50.0_mL),
    parameter("reach", "volume that the diaphragm's travel adds", &Pocket::reach, Volume{-1e-6},
              1.0_mL),
    parameter("passage", "area of the hole it breathes through", &Pocket::passage, 0.0_mm2,
              50.0_mm2),
    parameter("leak", "area of a leak to the open air", &Pocket::leak, 0.0_mm2, 50.0_mm2),
};

const RegisterPart<Pocket> registered{"pocket", "Air behind a diaphragm", parameters};

} // namespace
} // namespace sim
