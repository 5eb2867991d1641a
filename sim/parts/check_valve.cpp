#include "../passage.hpp"

namespace sim {
namespace {

using namespace literals;

/// A flap that lets fuel or air pass from a to b only.
///
/// It begins to lift at the cracking drop and stands fully open at three times that; shut, it
/// passes what its leak lets through, either way.
/// source:  opening in proportion to the drop over its spring, as a reed under uniform load
struct CheckValve {
    Area area;
    Length length;
    Pressure cracking;
    Area leak;

    enum In : std::size_t { a, b = a + contents_count, reads = b + contents_count };
    enum Out : std::size_t { fuel, light, water, air, vapour, writes };

    void wire(Wiring& w)
    {
        ports_.wire(w, "a", "a");
        w.reading("flow", "mL/min");
    }

    void prepare(const Surroundings& s)
    {
        ports_.find(s.up);
        const double bore = std::sqrt(area.si / 0.7853981633974483) + 1e-5;
        shape_ = {.port_height = 2e-3, .capillary_bore = bore, .fuel = s.fuel};
    }

    [[nodiscard]] bool is_shut() const { return area.si <= 0.0 && leak.si <= 0.0; }

    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        const PassageEnds<S> ends = ports_.look(shape_, in);
        const S lifted =
            smooth_step(ends.at_a.push - ends.at_b.push, cracking.si, 3.0 * cracking.si);
        const S open = lifted * area.si + leak.si;
        const Resistance<S> resistance = hole_resistance(Restriction{length.si, 0.62}, open);
        const PassageFlow<S> f = passage_flow(shape_, resistance, ends);
        put_flow(f, out);
    }

    void show(const double* in, const double* out, double* shown) const
    {
        shown[0] = out[fuel] / fuel_density(shape_.fuel.density, in[a + contents_temperature]);
    }

private:
    PortPair ports_;
    PassageShape shape_;
};

constexpr std::tuple parameters{
    parameter("area", "area when open", &CheckValve::area, 0.0_mm2, 50.0_mm2),
    parameter("length", "length of its hole", &CheckValve::length, 0.1_mm, 500.0_mm),
    parameter("cracking", "drop at which it begins to lift", &CheckValve::cracking, 10.0_Pa,
              50.0_kPa),
    parameter("leak", "leak when shut", &CheckValve::leak, 0.0_mm2, 10.0_mm2),
};

const RegisterPart<CheckValve> registered{"check_valve", "Check valve", parameters};

} // namespace
} // namespace sim
