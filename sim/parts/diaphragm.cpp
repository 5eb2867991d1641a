#include "../part.hpp"
#include "../smooth.hpp"

namespace sim {
namespace {

using namespace literals;

/// A pump's diaphragm between the crankcase's pulse and the fuel.
///
/// Its travel runs from -1, laid against the pulse side, to 1, laid against the fuel side, and
/// follows the balance of the two pressures, its own stiffness and the castings it comes to lie on.
/// Its stroke, for people, is that of a swing with the same mean square over the last moments.
/// source:  first-order membrane, pressure in proportion to travel; a sine's swing is sqrt(8) times
///          its standard deviation
struct Diaphragm {
    Pressure stiffness;
    Pressure stop;
    Pressure drag;
    Duration drag_time;
    Length full_travel;
    Duration memory;

    enum In : std::size_t { travel, mean, square, behind, fuel, reads };
    enum Out : std::size_t { moved, mean_change, square_change, writes };

    void wire(Wiring& w)
    {
        w.state({"travel", 0.02, -3.0, 3.0, 0.0, 0.0});
        w.state({.name = "mean", .scale = 0.1});
        w.state({.name = "square", .scale = 0.1});
        for (const char* name : {"travel", "mean", "square"}) {
            w.read(w.own(name));
        }
        w.read(w.of("pulse", "pressure"));
        w.read(w.of("chamber", "pressure"));
        w.flow("moved", {{w.own("travel"), 1.0}});
        w.flow("mean_change", {{w.own("mean"), 1.0}});
        w.flow("square_change", {{w.own("square"), 1.0}});
        w.reading("travel", "mm");
        w.reading("stroke", "mm");
    }

    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        const S& t = in[travel];
        const S against = stop.si * (positive_part(t - 1.0, 0.3) - positive_part(-t - 1.0, 0.3));
        out[moved] =
            (in[behind] - in[fuel] - stiffness.si * t - against) * (1.0 / (drag.si * drag_time.si));
        out[mean_change] = (t - in[mean]) * (1.0 / memory.si);
        out[square_change] = (t * t - in[square]) * (1.0 / memory.si);
    }

    void show(const double* in, const double* /*out*/, double* shown) const
    {
        const double variance = std::max(in[square] - in[mean] * in[mean], 0.0);
        shown[0] = in[travel] * full_travel.si;
        shown[1] = std::sqrt(8.0 * variance) * full_travel.si;
    }
};

constexpr std::tuple parameters{
    parameter("stiffness", "pressure that moves it through its travel", &Diaphragm::stiffness,
              10.0_Pa, 10000.0_kPa),
    parameter("stop", "pressure that moves it as far again into the casting", &Diaphragm::stop,
              1.0_kPa, 10000.0_kPa),
    parameter("drag", "pressure that moves it through its travel in `drag_time`", &Diaphragm::drag,
              10.0_Pa, 100.0_kPa),
    parameter("drag_time", "the time `drag` takes", &Diaphragm::drag_time, 0.0001_s, 1.0_s),
    parameter("full_travel", "travel of its middle, to either side", &Diaphragm::full_travel,
              0.05_mm, 5.0_mm),
    parameter("memory", "time over which its stroke is taken", &Diaphragm::memory, 0.01_s, 1.0_s),
};

const RegisterPart<Diaphragm> registered{"diaphragm", "Pump diaphragm", parameters};

} // namespace
} // namespace sim
