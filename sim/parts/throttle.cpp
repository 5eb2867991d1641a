#include "../part.hpp"
#include "../smooth.hpp"

namespace sim {
namespace {

using namespace literals;

/// A throttle on a trigger: the plate follows the finger.
struct Throttle {
    Ratio lever;
    Duration lag;

    enum In : std::size_t { opening, reads };
    enum Out : std::size_t { rate, writes };

    static void wire(Wiring& w)
    {
        w.state({"opening", 0.01, 0.0, 1.0, 0.0, 0.0});
        w.read(w.own("opening"));
        w.flow("rate", {{w.own("opening"), 1.0}});
        w.reading("opening", "%");
    }

    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        out[rate] = settling(lever.si - in[opening], 1e-9) * (1.0 / lag.si);
    }

    static void show(const double* in, const double* /*out*/, double* shown)
    {
        shown[0] = in[opening];
    }
};

constexpr std::tuple parameters{
    parameter("lever", "trigger, 0 let go to 1 pulled", &Throttle::lever, 0.0_ratio, 1.0_ratio),
    parameter("lag", "time the linkage takes", &Throttle::lag, 0.005_s, 5.0_s),
};

const RegisterPart<Throttle> registered{"throttle", "Throttle", parameters};

} // namespace
} // namespace sim
