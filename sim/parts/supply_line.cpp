#include "../passage.hpp"

namespace sim {
namespace {

using namespace literals;

/// What stands between the tank and the hose: outlet screen, tap, filter, one after the other.
///
/// The three share one flow; each one's own drop is what it takes of the whole. The wet screen
/// holds bubbles off as fine mesh does, by 4 sigma over its pore.
struct SupplyLine {
    Area screen_area;
    Length screen_pore;
    Length tap_bore;
    Ratio tap;
    Ratio tap_travel;
    Area filter_area;
    Length filter_depth;
    Ratio kink;

    enum In : std::size_t { a, b = a + contents_count, reads = b + contents_count };
    enum Out : std::size_t { fuel, light, water, air, vapour, drop, volume, writes };

    void wire(Wiring& w)
    {
        ports_.wire(w, "a", "b");
        w.publish("drop");
        w.publish("volume");
        w.reading("flow", "mL/min");
        w.reading("screen_drop", "kPa");
        w.reading("tap_drop", "kPa");
        w.reading("filter_drop", "kPa");
        w.reading("outlet_pressure", "kPa");
    }

    void prepare(const Surroundings& s)
    {
        ports_.find(s.up);
        shape_ = {.port_height = 4e-3, .capillary_bore = screen_pore.si, .fuel = s.fuel};
        const double bore = tap_bore.si;
        const double open = 0.7853981633974483 * bore * bore * tap.si * tap_travel.si;
        screen_ = hole_resistance(Restriction{0.2e-3, 0.62}, screen_area.si);
        tap_resistance_ = hole_resistance(Restriction{8e-3, 0.62}, open);
        filter_ = hole_resistance(Restriction{filter_depth.si, 0.62}, filter_area.si);
        if (kink.si > 0.0) { // right at the filter's end: what is read across it takes both in
            const double slit = 0.7853981633974483 * bore * bore * (1.0 - kink.si);
            filter_ = filter_ + hole_resistance(Restriction{8e-3, 0.62}, slit);
        }
        outside_ = s.pressure.si;
    }

    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        const PassageEnds<S> ends = ports_.look(shape_, in);
        const PassageFlow<S> f = passage_flow(shape_, screen_ + tap_resistance_ + filter_, ends);
        put_flow(f, out);
        out[drop] = f.drop;
        out[volume] = f.volume;
    }

    void show(const double* in, const double* out, double* shown) const
    {
        const double q = out[volume];
        const double temperature = in[a + contents_temperature];
        const double rho = fuel_density(shape_.fuel.density, temperature);
        const double mu = fuel_viscosity(shape_.fuel.viscosity, temperature);
        const auto taken = [&](const Resistance<double>& r) {
            return r.laminar * mu * q + r.inertial * rho * q * std::abs(q);
        };
        const double whole = taken(screen_ + tap_resistance_ + filter_);
        const double scale = std::abs(whole) > 1e-9 ? out[drop] / whole : 0.0;
        shown[0] = q;
        shown[1] = scale * taken(screen_);
        shown[2] = scale * taken(tap_resistance_);
        shown[3] = scale * taken(filter_);
        shown[4] = ports_.push_at_a(shape_, in) - shown[1] - outside_;
    }

private:
    PortPair ports_;
    PassageShape shape_;
    Resistance<double> screen_;
    Resistance<double> tap_resistance_;
    Resistance<double> filter_;
    double outside_ = 101325.0;
};

constexpr std::tuple parameters{
    parameter("screen_area", "open area of the outlet screen", &SupplyLine::screen_area, 0.0_mm2,
              200.0_mm2),
    parameter("screen_pore", "mesh of the outlet screen", &SupplyLine::screen_pore, 0.01_mm,
              5.0_mm),
    parameter("tap_bore", "bore of the tap", &SupplyLine::tap_bore, 0.5_mm, 10.0_mm),
    parameter("tap", "tap, 0 shut to 1 open", &SupplyLine::tap, 0.0_ratio, 1.0_ratio),
    parameter("tap_travel", "share the tap can open", &SupplyLine::tap_travel, 0.0_ratio,
              1.0_ratio),
    parameter("filter_area", "open area of the filter", &SupplyLine::filter_area, 0.0_mm2,
              200.0_mm2),
    parameter("filter_depth", "depth of the filter's pores", &SupplyLine::filter_depth, 0.1_mm,
              2000.0_mm),
    parameter("kink", "share of the bore that a fold in the hose closes", &SupplyLine::kink,
              0.0_ratio, 1.0_ratio),
};

const RegisterPart<SupplyLine> registered{"supply_line", "Screen, tap and filter", parameters};

} // namespace
} // namespace sim
