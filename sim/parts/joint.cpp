#include "../flow_law.hpp"
#include "../part.hpp"

namespace sim {
namespace {

using namespace literals;

/// A joint behind the carburetor: when loose, air gets in past it while the engine draws. Water
/// misted on it fills the gap for as long as it is kept wet.
/// source:  isentropic flow through a thin gap, discharge 0.62
struct Joint {
    Area gap;
    Ratio misted;
    Ratio duty;

    enum In : std::size_t { runner_pressure, runner_air, reads };
    enum Out : std::size_t { air, writes };

    static void wire(Wiring& w)
    {
        w.read(w.of("runner", "pressure"));
        w.read(w.of("runner", "air"));
        w.flow("air_flow", {{w.of("runner", "air"), 1.0}, {w.of("outside", "air"), -1.0}});
        w.reading("air_flow", "g/s");
    }

    void prepare(const Surroundings& s)
    {
        outside_ = s.pressure.si;
        temperature_ = s.temperature.si;
    }

    [[nodiscard]] bool is_shut() const { return open_gap() <= 0.0; }

    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        const S outside = in[runner_pressure] * 0.0 + outside_;
        const S area = in[runner_pressure] * 0.0 + 0.62 * open_gap();
        const S leaked = isentropic_flow(area, outside, in[runner_pressure], temperature_, 2e-5);
        const S given =
            value_of(leaked) < 0.0 ? leaked * smooth_step(in[runner_air], 0.0, 1e-4) : leaked;
        out[air] = given * (duty.si / air_molar_mass);
    }

    static void show(const double* /*in*/, const double* out, double* shown)
    {
        shown[0] = out[air] * air_molar_mass;
    }

private:
    [[nodiscard]] double open_gap() const { return gap.si * (1.0 - misted.si); }

    double outside_ = 101325.0;
    double temperature_ = 293.15;
};

constexpr std::tuple parameters{
    parameter("gap", "area of the gap", &Joint::gap, 0.0_mm2, 100.0_mm2),
    parameter("misted", "share of the gap that water fills", &Joint::misted, 0.0_ratio, 1.0_ratio),
    parameter("duty", "share of the cycle in which the engine draws", &Joint::duty, 0.1_ratio,
              1.0_ratio),
};

const RegisterPart<Joint> registered{"joint", "Joint and gasket", parameters};

} // namespace
} // namespace sim
