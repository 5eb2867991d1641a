#include "../passage.hpp"

namespace sim {
namespace {

using namespace literals;

/// A hole of a bulb that the thumb covers when it presses.
struct Breather {
    Area area;
    Length length;

    enum In : std::size_t { a, b = a + contents_count, cover = b + contents_count, reads };
    enum Out : std::size_t { fuel, light, water, air, vapour, writes };

    void wire(Wiring& w)
    {
        ports_.wire(w, "a", "a");
        w.read(w.of("a", "covered"));
        w.reading("flow", "mL/min");
        w.reading("air", "mL/min");
    }

    void prepare(const Surroundings& s)
    {
        ports_.find(s.up);
        const double open = area.si;
        const double bore = std::sqrt(open / 0.7853981633974483) + 1e-5;
        shape_ = {.port_height = 2e-3, .capillary_bore = bore, .fuel = s.fuel};
        molar_volume_ = gas_constant * s.temperature.si / s.pressure.si;
    }

    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        const PassageEnds<S> ends = ports_.look(shape_, in);
        const S open = (1.0 - in[cover]) * area.si;
        const Resistance<S> resistance = hole_resistance(Restriction{length.si, 0.62}, open);
        const PassageFlow<S> f = passage_flow(shape_, resistance, ends);
        put_flow(f, out);
    }

    void show(const double* in, const double* out, double* shown) const
    {
        shown[0] = out[fuel] / fuel_density(shape_.fuel.density, in[a + contents_temperature]);
        shown[1] = (out[air] + out[vapour]) * molar_volume_;
    }

private:
    PortPair ports_;
    PassageShape shape_;
    double molar_volume_ = 0.024;
};

constexpr std::tuple parameters{
    parameter("area", "area", &Breather::area, 0.0_mm2, 100.0_mm2),
    parameter("length", "length", &Breather::length, 0.05_mm, 500.0_mm),
};

const RegisterPart<Breather> registered{"breather", "Breather hole", parameters};

} // namespace
} // namespace sim
