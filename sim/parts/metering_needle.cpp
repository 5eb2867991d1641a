#include "../passage.hpp"

namespace sim {
namespace {

using namespace literals;

/// Metering diaphragm, lever, spring, needle and seat, with the inlet screen before them.
///
/// When the fuel behind it falls below the air in front, the diaphragm moves in, takes up the free
/// height of the lever and lifts the needle against its spring and with the fuel's push. The push
/// acts on the seat's bore while the needle is down and on its whole head once it is up: so it pops
/// off at spring / bore area and comes down again at spring / head area. Tip, lever and castings
/// give a little, so each contact is a stiff spring.
///   diaphragm: drag x' = p_dry - p_wet - stiffness x - N / A,  N = k_c (x - gap - ratio y)+
///   needle:    damping y' = p A(y) + ratio N - F - k y + k_s (-y)+
/// source:  statics of the lever; arm lengths and spring force seen in a worked force balance of a
///          hand-held carburetor (shared reference figures: arms 3.5 and 8 mm, spring 60 mN)
struct MeteringNeedle {
    Area diaphragm_area;
    Pressure stiffness;
    Length full_travel;
    Duration drag_time;
    Length lever_gap;
    Ratio lever_ratio;
    Force spring_force;
    Stiffness spring_rate;
    Length seat_bore;
    Length head_bore;
    Length most_lift;
    Area seat_leak;
    Length dirt;
    Force sticking;
    Area screen_area;
    Length screen_pore;

    enum In : std::size_t {
        a,
        b = a + contents_count,
        dry = b + contents_count,
        travel,
        lift,
        reads
    };
    enum Out : std::size_t { fuel, light, water, air, vapour, travelled, lifted, writes };

    void wire(Wiring& w)
    {
        w.state({"travel", 0.01, -3.0, 3.0, 0.0, 0.0});
        w.state({"lift", 2e-6, -1e-3, 5e-3, 0.0, 0.0});
        ports_.wire(w, "seat", "seat");
        w.read(w.of("dry", "pressure"));
        w.read(w.own("travel"));
        w.read(w.own("lift"));
        w.flow("travelled", {{w.own("travel"), 1.0}});
        w.flow("lifted", {{w.own("lift"), 1.0}});
        w.reading("lift", "mm");
        w.reading("flow", "mL/min");
        w.reading("diaphragm", "mm");
        w.reading("screen_drop", "kPa");
    }

    void prepare(const Surroundings& s)
    {
        ports_.find(s.up);
        shape_ = {.port_height = 2e-3, .capillary_bore = screen_pore.si, .fuel = s.fuel};
        screen_ = hole_resistance(Restriction{1e-3, 0.62}, screen_area.si);
    }

    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        const PassageEnds<S> ends = ports_.look(shape_, in);
        const Resistance<S> hole = hole_resistance(Restriction{1e-3, 0.62}, open_area(in[lift]));
        const Resistance<S> whole{hole.laminar + screen_.laminar, hole.inertial + screen_.inertial};
        const PassageFlow<S> f = passage_flow(shape_, whole, ends);
        put_flow(f, out);
        move(in, ends.at_a.push - ends.at_b.push, out);
    }

    void show(const double* in, const double* out, double* shown) const
    {
        const double rho = fuel_density(shape_.fuel.density, in[a + contents_temperature]);
        const double flow = out[fuel] / rho;
        shown[0] = std::max(in[lift], 0.0);
        shown[1] = flow;
        shown[2] = in[travel] * full_travel.si;
        shown[3] = screen_.laminar * 5e-4 * flow + screen_.inertial * rho * flow * std::abs(flow);
    }

private:
    [[nodiscard]] double seat_area() const
    {
        return 0.7853981633974483 * seat_bore.si * seat_bore.si;
    }

    template <class S>
    [[nodiscard]] S open_area(const S& y) const
    {
        // Dirt holds a gap of its own thickness open until the needle lifts past it.
        const S raised = positive_part(y, 1e-7);
        const S gap = dirt.si <= 0.0
                          ? raised
                          : raised + dirt.si * (1.0 - smooth_step(raised, 0.0, 2.0 * dirt.si));
        const S curtain = gap * (3.141592653589793 * seat_bore.si);
        return smooth_min(curtain, curtain * 0.0 + seat_area(), 0.02 * seat_area()) + seat_leak.si;
    }

    template <class S>
    void move(const std::array<S, reads>& in, const S& feed, std::array<S, writes>& out) const
    {
        constexpr double contact = 2e4;  // N/m: 0.08 N gives 4 um
        constexpr double seating = 2e5;  // N/m: the tip gives 1 um under its spring
        constexpr double damping = 20.0; // N s/m: tens of microns take a millisecond or two
        const S& t = in[travel];
        const S& y = in[lift];
        const S inward = t * full_travel.si;
        const S press = contact * positive_part(inward - lever_gap.si - lever_ratio.si * y, 1e-6);
        const S against =
            30.0 * stiffness_of_stop * (positive_part(t - 1.0, 0.2) - positive_part(-t - 1.0, 0.2));
        const S balance =
            in[dry] - in[b] - stiffness.si * t - against - press * (1.0 / diaphragm_area.si);
        out[travelled] = balance * (1.0 / (stiffness_of_stop * drag_time.si));

        const double head = 0.7853981633974483 * head_bore.si * head_bore.si;
        const S pushed_area = seat_area() + (head - seat_area()) * smooth_step(y, 0.0, 1.5e-5);
        const S stop = seating * positive_part(y - most_lift.si, 2e-6);
        out[lifted] = (feed * pushed_area + lever_ratio.si * press - spring_force.si - sticking.si -
                       spring_rate.si * y + seating * positive_part(-y, 2e-7) - stop) *
                      (1.0 / damping);
    }

    static constexpr double stiffness_of_stop = 1e3; // Pa

    PortPair ports_;
    PassageShape shape_;
    Resistance<double> screen_;
};

constexpr std::tuple parameters{
    parameter("diaphragm_area", "effective area of the diaphragm", &MeteringNeedle::diaphragm_area,
              20.0_mm2, 2000.0_mm2),
    parameter("stiffness", "pressure that moves the diaphragm through its travel",
              &MeteringNeedle::stiffness, 10.0_Pa, 100.0_kPa),
    parameter("full_travel", "travel of the diaphragm's middle, to either side",
              &MeteringNeedle::full_travel, 0.1_mm, 5.0_mm),
    parameter("drag_time", "time the travel takes under 1 kPa", &MeteringNeedle::drag_time,
              0.0001_s, 0.1_s),
    parameter("lever_gap", "free height between diaphragm and lever", &MeteringNeedle::lever_gap,
              Length{-1e-3}, 2.0_mm),
    parameter("lever_ratio", "diaphragm travel over needle travel", &MeteringNeedle::lever_ratio,
              1.0_ratio, 6.0_ratio),
    parameter("spring_force", "push of the spring at the needle", &MeteringNeedle::spring_force,
              Force{0.0}, Force{2.0}),
    parameter("spring_rate", "stiffness of the spring at the needle", &MeteringNeedle::spring_rate,
              Stiffness{0.0}, Stiffness{1e4}),
    parameter("seat_bore", "bore of the inlet seat", &MeteringNeedle::seat_bore, 0.3_mm, 3.0_mm),
    parameter("head_bore", "bore the fuel pushes on once the needle is up",
              &MeteringNeedle::head_bore, 0.3_mm, 4.0_mm),
    parameter("most_lift", "needle travel", &MeteringNeedle::most_lift, 0.02_mm, 2.0_mm),
    parameter("seat_leak", "leak of the closed seat", &MeteringNeedle::seat_leak, 0.0_mm2, 1.0_mm2),
    parameter("dirt", "thickness of dirt between needle and seat", &MeteringNeedle::dirt, 0.0_mm,
              1.0_mm),
    parameter("sticking", "force with which varnish holds the needle in its seat",
              &MeteringNeedle::sticking, Force{0.0}, Force{10.0}),
    parameter("screen_area", "open area of the inlet screen", &MeteringNeedle::screen_area, 0.0_mm2,
              50.0_mm2),
    parameter("screen_pore", "pore of the inlet screen", &MeteringNeedle::screen_pore, 0.01_mm,
              1.0_mm),
};

const RegisterPart<MeteringNeedle> registered{"metering_needle",
                                              "Metering diaphragm, lever and needle", parameters};

} // namespace
} // namespace sim
