#include "../passage.hpp"

namespace sim {
namespace {

using namespace literals;

/// The float, and the needle it presses into the inlet seat.
///
/// Force balance without inertia: the float sinks until its buoyancy carries its weight and, over
/// the lever, the fuel's push on the needle:
///   rho g A_f (level - level_shut + drop) = extra weight + dp A_seat / ratio,  lift = drop /
///   ratio.
/// A lift below nothing presses needle on seat; what then passes is the seat's leak.
/// source:  statics; effect of feed pressure on level as in the trade, about 0.24 mm per kPa
struct FloatNeedle {
    Length seat_bore;
    Length shut_level;
    Area float_area;
    Mass extra_mass;
    Ratio lever_ratio;
    Length most_lift;
    Length dirt;
    Area seat_leak;
    Ratio free_travel;

    enum In : std::size_t { a, b = a + contents_count, reads = b + contents_count };
    enum Out : std::size_t { fuel, light, water, air, vapour, lift, writes };

    void wire(Wiring& w)
    {
        place_float_ = w.port("b", "float");
        ports_.wire(w, "seat", "seat");
        w.publish("lift");
        w.reading("lift", "mm");
        w.reading("flow", "mL/min");
        w.reading("inlet_pressure", "kPa");
    }

    void prepare(const Surroundings& s)
    {
        ports_.find(s.up);
        port_float_ = find_port(place_float_, s.up);
        shape_ = {.port_height = 2e-3, .capillary_bore = seat_bore.si, .fuel = s.fuel};
        upright_ = std::max(s.up.z, 0.05);
        outside_ = s.pressure.si;
    }

    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        const PassageEnds<S> ends = ports_.look(shape_, in);
        const S rho = fuel_density(shape_.fuel.density, ends.b.temperature);
        out[lift] = needle_lift(ends.at_a.push - ends.at_b.push, ends.b, rho);
        const double seat = 0.7853981633974483 * seat_bore.si * seat_bore.si;
        const S curtain = out[lift] * (3.141592653589793 * seat_bore.si);
        const S open = smooth_min(curtain, curtain * 0.0 + seat, 0.02 * seat) + seat_leak.si;
        const Resistance<S> resistance = hole_resistance(Restriction{1e-3, 0.62}, open);
        const PassageFlow<S> f = passage_flow(shape_, resistance, ends);
        put_flow(f, out);
    }

    void show(const double* in, const double* out, double* shown) const
    {
        const double rho = fuel_density(shape_.fuel.density, in[a + contents_temperature]);
        shown[0] = out[lift];
        shown[1] = out[fuel] / rho;
        shown[2] = ports_.push_at_a(shape_, in) - outside_;
    }

private:
    template <class S>
    [[nodiscard]] S needle_lift(const S& feed, const Contents<S>& bowl, const S& rho) const
    {
        const double seat = 0.7853981633974483 * seat_bore.si * seat_bore.si;
        const S level = port_float_.rise * bowl.fill + port_float_.offset;
        const S spring = rho * (gravity * upright_ * float_area.si);
        const S weight = extra_mass.si * gravity * upright_ + feed * (seat / lever_ratio.si);
        const S drop = weight / spring + shut_level.si - level;
        const S free =
            smooth_clamp(drop * (1.0 / lever_ratio.si), 0.0, most_lift.si * free_travel.si, 4e-6);
        if (dirt.si <= 0.0) {
            return free;
        }
        return free + dirt.si * (1.0 - smooth_step(free, 0.0, 2.0 * dirt.si));
    }

    PortPair ports_;
    PortPlace place_float_;
    Port port_float_;
    PassageShape shape_;
    double upright_ = 1.0;
    double outside_ = 101325.0;
};

constexpr std::tuple parameters{
    parameter("seat_bore", "bore of the inlet seat", &FloatNeedle::seat_bore, 0.5_mm, 5.0_mm),
    parameter("shut_level", "change of the level at which the float shuts",
              &FloatNeedle::shut_level, Length{-0.02}, 20.0_mm),
    parameter("float_area", "area of the float at the waterline", &FloatNeedle::float_area,
              50.0_mm2, 5000.0_mm2),
    parameter("extra_mass", "weight the float has taken on", &FloatNeedle::extra_mass, Mass{0.0},
              Mass{0.05}),
    parameter("lever_ratio", "float travel over needle travel", &FloatNeedle::lever_ratio,
              1.0_ratio, 6.0_ratio),
    parameter("most_lift", "needle travel", &FloatNeedle::most_lift, 0.1_mm, 5.0_mm),
    parameter("dirt", "thickness of dirt between needle and seat", &FloatNeedle::dirt, 0.0_mm,
              2.0_mm),
    parameter("seat_leak", "leak of the closed seat", &FloatNeedle::seat_leak, 0.0_mm2, 1.0_mm2),
    parameter("free_travel", "share of its travel the needle is free to make",
              &FloatNeedle::free_travel, 0.0_ratio, 1.0_ratio),
};

const RegisterPart<FloatNeedle> registered{"float_needle", "Float and needle", parameters};

} // namespace
} // namespace sim
