#include "../part.hpp"
#include "../smooth.hpp"

namespace sim {
namespace {

using namespace literals;

/// A spark plug that liquid wets and rich running blackens.
///
/// Wetness 1 is a plug that will not fire. It dries in a quarter of an hour at rest, faster with
/// heat and with air through the cylinder. Soot grows over minutes of rich fire, and slowly burns
/// off a hot plug in a lean one.
/// source:  drying about 15 min (home-repair page), the rest common practice, no source
struct SparkPlug {
    Mass wetting_mass;
    Duration drying_time;
    Duration sooting_time;

    enum In : std::size_t {
        wetness,
        soot,
        wetting_rate,
        speed,
        head_temperature,
        richness,
        burning,
        reads
    };
    enum Out : std::size_t { wetting, sooting, writes };

    static void wire(Wiring& w)
    {
        w.state({"wetness", 0.02, 0.0, 1e3, 0.0, 0.0});
        w.state({"soot", 0.02, 0.0, 1e3, 0.0, 0.0});
        w.read(w.own("wetness"));
        w.read(w.own("soot"));
        w.read(w.of("runner", "wetting_rate"));
        w.read(w.of("engine", "speed"));
        w.read(w.of("head", "temperature"));
        w.read(w.of("engine", "richness"));
        w.read(w.of("engine", "burning"));
        w.flow("wetting", {{w.own("wetness"), 1.0}});
        w.flow("sooting", {{w.own("soot"), 1.0}});
        w.reading("wetness", "");
        w.reading("soot", "");
    }

    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        const S hot = 1.0 + 20.0 * smooth_step(in[head_temperature], 320.0, 420.0);
        const S blown = 1.0 + 0.6 * in[speed];
        const S fired = 600.0 * in[burning] * smooth_step(in[speed], 80.0, 150.0);
        const S full = positive_part(1.0 - in[wetness] * (1.0 / 3.0), 0.1);
        out[wetting] = in[wetting_rate] * full * (1.0 / wetting_mass.si) -
                       settling(in[wetness], 1e-9) * hot * (blown + fired) * (1.0 / drying_time.si);
        const S firing = smooth_step(in[speed], 80.0, 150.0);
        const S rich = smooth_step(in[richness], 1.35, 1.8);
        out[sooting] = firing * (rich * (2.0 - in[soot]) - 0.3 * (1.0 - rich) * in[soot]) *
                       (1.0 / sooting_time.si);
    }

    static void show(const double* in, const double* /*out*/, double* shown)
    {
        shown[0] = in[wetness];
        shown[1] = in[soot];
    }
};

constexpr std::tuple parameters{
    parameter("wetting_mass", "liquid that wets it through", &SparkPlug::wetting_mass, Mass{1e-6},
              Mass{1e-3}),
    parameter("drying_time", "time to dry at rest", &SparkPlug::drying_time, 10.0_s, 10000.0_s),
    parameter("sooting_time", "time of rich running that blackens it", &SparkPlug::sooting_time,
              1.0_s, 10000.0_s),
};

const RegisterPart<SparkPlug> registered{"spark_plug", "Spark plug", parameters};

} // namespace
} // namespace sim
