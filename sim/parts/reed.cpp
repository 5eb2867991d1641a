#include "../breath.hpp"

namespace sim {
namespace {

using namespace literals;

/// The reed valve between carburetor and crankcase: it bends open to what goes in, and lies shut.
/// source:  opening in proportion to the drop over its stiffness; isentropic flow, discharge 0.7
struct Reed {
    Area area;
    Pressure opening;
    Volume sweep;

    enum In : std::size_t { from, to = from + mixture_count, reads };
    enum Out : std::size_t { fuel, light, water, air, vapour, writes };

    static void wire(Wiring& w)
    {
        read_mixture(w, "a");
        w.read(w.of("b", "pressure"));
        give_contents(w, "a", "b");
        w.reading("air_flow", "g/s");
    }

    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        const Mixture<S> mixture = mixture_at(in, from);
        const S bent = smooth_step(mixture.pressure - in[to], 0.0, opening.si);
        const Breath<S> b = breathe(mixture, in[to], bent * (0.7 * area.si), sweep.si);
        put_flow(b, out);
    }

    static void show(const double* /*in*/, const double* out, double* shown)
    {
        shown[0] = out[air] * air_molar_mass;
    }
};

constexpr std::tuple parameters{
    parameter("area", "area when bent open", &Reed::area, 1.0_mm2, 1000.0_mm2),
    parameter("opening", "drop that opens it fully", &Reed::opening, 50.0_Pa, 50.0_kPa),
    parameter("sweep", "air that renews the fuel on the walls", &Reed::sweep, 5.0_mL, 5000.0_mL),
};

const RegisterPart<Reed> registered{"reed", "Reed valve", parameters};

} // namespace
} // namespace sim
