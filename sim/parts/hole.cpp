#include "../passage.hpp"

namespace sim {
namespace {

using namespace literals;

/// A hole between two places: a vent, a drain, a crack, a cap that can be loosened.
struct Hole {
    Area area;
    Length length;
    Area loose_area;
    Ratio loose;

    enum In : std::size_t { a, b = a + contents_count, reads = b + contents_count };
    enum Out : std::size_t { fuel, light, water, air, vapour, writes };

    void wire(Wiring& w)
    {
        ports_.wire(w, "a", "a");
        w.reading("flow", "mL/min");
        w.reading("air", "mL/min");
    }

    void prepare(const Surroundings& s)
    {
        ports_.find(s.up);
        const double open = area.si + loose.si * loose_area.si;
        const double bore = std::sqrt(open / 0.7853981633974483) + 1e-5;
        shape_ = {.port_height = 2e-3, .capillary_bore = bore, .fuel = s.fuel};
        resistance_ = hole_resistance(Restriction{length.si, 0.62}, open);
        molar_volume_ = gas_constant * s.temperature.si / s.pressure.si;
    }

    [[nodiscard]] bool is_shut() const { return area.si + loose.si * loose_area.si <= 0.0; }

    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        const PassageEnds<S> ends = ports_.look(shape_, in);
        const PassageFlow<S> f = passage_flow(shape_, resistance_, ends);
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
    Resistance<double> resistance_;
    double molar_volume_ = 0.024;
};

constexpr std::tuple parameters{
    parameter("area", "area", &Hole::area, 0.0_mm2, 100.0_mm2),
    parameter("length", "length", &Hole::length, 0.05_mm, 500.0_mm),
    parameter("loose_area", "area added when loosened", &Hole::loose_area, 0.0_mm2, 100.0_mm2),
    parameter("loose", "0 tight to 1 loose", &Hole::loose, 0.0_ratio, 1.0_ratio),
};

const RegisterPart<Hole> registered{"hole", "Hole or vent", parameters};

} // namespace
} // namespace sim
