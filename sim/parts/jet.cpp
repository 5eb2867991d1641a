#include "../passage.hpp"

namespace sim {
namespace {

using namespace literals;

/// A metering jet at the foot of a fuel column.
///
/// The engine breathes in for a third of its cycle only, so the column's top sees two pressures.
/// The jet's flow is taken at each and weighed by its share of the cycle; between intake strokes
/// the column stands over the jet and runs back, but no more than it holds: emptying by q through
/// a stroke's pause t a store of V = A drop / (rho g), it gives back q / (1 + q t / V) on average.
/// source:  quasi-steady duty cycle; the pause's average from linear emptying
struct Jet {
    Length bore;
    Length length;
    Ratio discharge;
    Ratio open;
    Ratio duty;
    Length column_bore;

    enum In : std::size_t {
        a,
        height = a + contents_count,
        fuel_share,
        water_share,
        pressure_open,
        pressure_rest,
        speed,
        reads
    };
    enum Out : std::size_t { fuel, light, water, air, vapour, writes };

    void wire(Wiring& w)
    {
        place_ = w.port("a", "jet");
        read_contents(w, "a");
        for (const char* name :
             {"height", "fuel_share", "water_share", "pressure_open", "pressure_rest"}) {
            w.read(w.of("column", name));
        }
        w.read(w.of("engine", "speed"));
        w.flow("fuel_flow", {{w.of("a", "fuel"), -1.0}, {w.of("column", "fuel"), 1.0}});
        w.flow("light_flow", {{w.of("a", "light"), -1.0}});
        w.flow("water_flow", {{w.of("a", "water"), -1.0}, {w.of("column", "water"), 1.0}});
        w.flow_between("air", "a", "outside");
        w.flow_between("vapour", "a", "outside");
        w.reading("flow", "mL/min");
    }

    void prepare(const Surroundings& s)
    {
        port_ = find_port(place_, s.up);
        upright_ = s.up.z;
        const double clean = std::max(bore.si - 2.0 * s.fuel.gum.si, 1e-6);
        const double area = 0.7853981633974483 * clean * clean * open.si;
        shape_ = {.port_height = 2.0 * bore.si, .capillary_bore = clean, .fuel = s.fuel};
        resistance_ = hole_resistance(Restriction{length.si, discharge.si}, area);
    }

    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        const Contents<S> bowl = contents_at(in, a);
        const S rho = fuel_density(shape_.fuel.density, bowl.temperature);
        const PortView<S> foot = view_port(port_, shape_.port_height, bowl, rho);
        const PassageFlow<S> drawn = at_phase(in, bowl, foot, rho, in[pressure_open]);
        const PassageFlow<S> resting = at_phase(in, bowl, foot, rho, in[pressure_rest]);
        const double d = duty.si;
        const S r = (1.0 - d) * pause_share(in[speed], rho, resting);
        out[fuel] = d * drawn.fuel + r * resting.fuel;
        out[light] = d * drawn.light + r * resting.light;
        out[water] = d * drawn.water + r * resting.water;
        out[air] = d * drawn.air + r * resting.air;
        out[vapour] = d * drawn.vapour + r * resting.vapour;
    }

    void show(const double* in, const double* out, double* shown) const
    {
        shown[0] = out[fuel] / fuel_density(shape_.fuel.density, in[a + contents_temperature]) +
                   out[water] / water_density;
    }

private:
    /// Share of the flow at rest that the pause between strokes lets through.
    template <class S>
    [[nodiscard]] S pause_share(const S& turning, const S& rho, const PassageFlow<S>& rest) const
    {
        constexpr double four_pi = 12.566370614359172;
        const double area = 0.7853981633974483 * column_bore.si * column_bore.si;
        const S pause =
            smooth_step(turning, 5.0, 25.0) * (1.0 - duty.si) * four_pi / (turning + 5.0);
        const S store = (smooth_abs(rest.drop, 1.0)) * area / (rho * gravity);
        return 1.0 / (1.0 + smooth_abs(rest.volume, 1e-12) * pause / store);
    }

    template <class S>
    [[nodiscard]] PassageFlow<S> at_phase(const std::array<S, reads>& in, const Contents<S>& bowl,
                                          const PortView<S>& foot, const S& rho, const S& top) const
    {
        const S none = top * 0.0;
        const Contents<S> column{top, none, none, none + 1.0, none, bowl.light, bowl.temperature};
        const PortView<S> above{smooth_step(in[height], 0.0, shape_.port_height), in[water_share],
                                in[fuel_share], top + rho * in[height] * (gravity * upright_)};
        return passage_flow(shape_, resistance_, bowl, foot, column, above);
    }

    PortPlace place_;
    Port port_;
    PassageShape shape_;
    Resistance<double> resistance_;
    double upright_ = 1.0;
};

constexpr std::tuple parameters{
    parameter("bore", "bore", &Jet::bore, 0.1_mm, 3.0_mm),
    parameter("length", "length of the bore", &Jet::length, 0.2_mm, 20.0_mm),
    parameter("discharge", "discharge coefficient", &Jet::discharge, 0.3_ratio, 1.0_ratio),
    parameter("open", "share of its area that is open", &Jet::open, 0.0_ratio, 1.0_ratio),
    parameter("duty", "share of the cycle in which the engine draws", &Jet::duty, 0.1_ratio,
              1.0_ratio),
    parameter("column_bore", "bore of the column over it", &Jet::column_bore, 0.5_mm, 10.0_mm),
};

const RegisterPart<Jet> registered{"jet", "Jet", parameters};

} // namespace
} // namespace sim
