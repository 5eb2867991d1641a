#include "../fluid.hpp"
#include "../part.hpp"

namespace sim {
namespace {

/// The end of the world for fuel: the open air, the floor, the exhaust, the oil in the crankcase.
///
/// It is at the surroundings' pressure and temperature and takes or gives anything; its states are
/// the account of what went there.
struct Reservoir {
    enum In : std::size_t { fuel, reads };
    enum Out : std::size_t {
        pressure,
        fill,
        water_fill,
        air_share,
        vapour_share,
        light_share,
        warmth,
        writes
    };

    static void wire(Wiring& w)
    {
        w.state({.name = "fuel", .scale = 1e-2, .fuel = 1.0});
        w.state({.name = "light", .scale = 1e-2});
        w.state({.name = "water", .scale = 1e-2});
        w.state({.name = "air", .scale = 1e-2, .air = 1.0});
        w.state({.name = "vapour", .scale = 1e-2, .fuel = vapour_molar_mass});
        w.state({.name = "heat", .scale = 1e3});
        w.read(w.own("fuel"));
        for (const char* name : {"pressure", "fill", "water_fill", "air_share", "vapour_share",
                                 "light_share", "temperature"}) {
            w.publish(name);
        }
        w.reading("fuel", "mL");
    }

    void prepare(const Surroundings& s)
    {
        pressure_ = s.pressure.si;
        temperature_ = s.temperature.si;
        density_ = fuel_density(s.fuel.density, temperature_);
    }

    template <class S>
    void evaluate(const std::array<S, reads>& /*in*/, std::array<S, writes>& out) const
    {
        out[pressure] = pressure_;
        out[fill] = 0.0;
        out[water_fill] = 0.0;
        out[air_share] = 1.0;
        out[vapour_share] = 0.0;
        out[light_share] = 0.0;
        out[warmth] = temperature_;
    }

    void show(const double* in, const double* /*out*/, double* shown) const
    {
        shown[0] = in[fuel] / density_;
    }

private:
    double pressure_ = 101325.0;
    double temperature_ = 293.15;
    double density_ = 740.0;
};

const RegisterPart<Reservoir> registered{"reservoir", "Surroundings", std::tuple{}};

} // namespace
} // namespace sim
