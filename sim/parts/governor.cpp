#include "../part.hpp"
#include "../smooth.hpp"

namespace sim {
namespace {

using namespace literals;

/// A flyweight governor: a spring, set by the lever, opens the throttle against the weights.
///
/// The balance of spring and weights wants an opening that falls over a band of speed; the linkage
/// follows with a lag, and not at all while friction holds it.
/// source:  proportional governor with lag and dead band, textbook
struct Governor {
    AngularSpeed idle_speed;
    AngularSpeed full_speed;
    Ratio lever;
    AngularSpeed band;
    Duration lag;
    Ratio friction;

    enum In : std::size_t { opening, speed, reads };
    enum Out : std::size_t { rate, writes };

    static void wire(Wiring& w)
    {
        w.state({"opening", 0.01, 0.0, 1.0, 0.0, 0.0});
        w.read(w.own("opening"));
        w.read(w.of("engine", "speed"));
        w.flow("rate", {{w.own("opening"), 1.0}});
        w.reading("opening", "%");
    }

    void shelve(const Surroundings& /*s*/, std::span<double> states) const { states[0] = 1.0; }

    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        const double set = idle_speed.si + (full_speed.si - idle_speed.si) * lever.si;
        const S wanted = smooth_clamp(0.5 + (set - in[speed]) * (1.0 / band.si), 0.0, 1.0, 0.02);
        const S away = wanted - in[opening];
        const S hold = away * 0.0 + friction.si;
        out[rate] = dead_band(away, hold, 0.01) * (1.0 / lag.si);
    }

    static void show(const double* in, const double* /*out*/, double* shown)
    {
        shown[0] = in[opening];
    }
};

constexpr std::tuple parameters{
    parameter("idle_speed", "speed held at the slow end of the lever", &Governor::idle_speed,
              AngularSpeed{50.0}, AngularSpeed{1200.0}),
    parameter("full_speed", "speed held at the fast end of the lever", &Governor::full_speed,
              AngularSpeed{50.0}, AngularSpeed{1200.0}),
    parameter("lever", "speed lever, 0 slow to 1 fast", &Governor::lever, 0.0_ratio, 1.0_ratio),
    parameter("band", "fall of speed from shut to open", &Governor::band, AngularSpeed{1.0},
              AngularSpeed{200.0}),
    parameter("lag", "time the linkage takes", &Governor::lag, 0.005_s, 5.0_s),
    parameter("friction", "opening that friction holds", &Governor::friction, 0.0_ratio, 0.6_ratio),
};

const RegisterPart<Governor> registered{"governor", "Governor and throttle", parameters};

} // namespace
} // namespace sim
