#include "../combustion.hpp"

namespace sim {
namespace {

using namespace literals;

/// The passage from throttle to valve: its air and vapour, and the fuel that wets its wall.
///
/// Carried fuel lands on the wall as a film. The moving air takes a share of it up as vapour and
/// sweeps the rest on as liquid, both in proportion to the air that passes. The share is that of
/// equilibrium air distillation,
///   e = 1 / (1 + exp((T50 - T) / w)),
/// which moves up as the light ends are lost, and stops where the air is saturated. Of the liquid
/// that reaches the cylinder a share evaporates on hot metal in time to burn; the rest wets.
/// Part of the heat of vaporisation comes out of the carburetor's body, which runs cold.
/// source:  D86 points of certification gasoline 53/100/156 degC (40 CFR 1065.710) less about 75 K
///          for distillation into air (from memory)
struct Runner {
    Volume volume;
    Volume displacement;
    Ratio volumetric_efficiency;
    Volume film_sweep;
    Volume puddle;
    Ratio tightness;
    Ratio chill_share;

    enum In : std::size_t {
        air,
        vapour,
        film_fuel,
        film_water,
        speed,
        head_temperature,
        charge,
        light,
        reads
    };
    enum Out : std::size_t {
        pressure,
        mixture_temperature,
        air_rate,
        vapour_rate,
        liquid_rate,
        water_rate,
        uptake,
        burnable_rate,
        wetting_rate,
        wash,
        drain_fuel,
        drain_water,
        overflow_fuel,
        overflow_water,
        chill,
        writes
    };

    void wire(Wiring& w)
    {
        w.state({"air", 1e-5, 0.0, 1.0, 0.0, 1.0});
        w.state({"vapour", 1e-7, 0.0, 1.0, 1.0, 0.0});
        w.state({"film_fuel", 2e-6, 0.0, 1.0, 1.0, 0.0});
        w.state({"film_water", 2e-6, 0.0, 1.0, 0.0, 0.0});
        for (const char* name : {"air", "vapour", "film_fuel", "film_water"}) {
            w.read(w.own(name));
        }
        w.read(w.of("engine", "speed"));
        w.read(w.of("head", "temperature"));
        w.read(w.of("engine", "charge"));
        w.read(w.of("bowl", "light_share"));
        w.publish("pressure");
        w.publish("temperature");
        w.flow("air_rate", {{w.own("air"), -1.0}, {w.of("exhaust", "air"), 1.0}});
        w.flow("vapour_rate", {{w.own("vapour"), -1.0}, {w.of("exhaust", "fuel"), 1.0}});
        w.flow("liquid_rate", {{w.own("film_fuel"), -1.0}, {w.of("exhaust", "fuel"), 1.0}});
        w.flow("water_rate", {{w.own("film_water"), -1.0}, {w.of("exhaust", "water"), 1.0}});
        w.flow("uptake", {{w.own("film_fuel"), -1.0}, {w.own("vapour"), 1.0}});
        w.publish("burnable_rate");
        w.publish("wetting_rate");
        w.flow("wash", {{w.of("exhaust", "fuel"), -1.0}, {w.of("crankcase", "fuel"), 1.0}});
        w.flow("drain_fuel", {{w.own("film_fuel"), -1.0}, {w.of("crankcase", "fuel"), 1.0}});
        w.flow("drain_water", {{w.own("film_water"), -1.0}, {w.of("crankcase", "water"), 1.0}});
        w.flow("overflow_fuel", {{w.own("film_fuel"), -1.0}, {w.of("floor", "fuel"), 1.0}});
        w.flow("overflow_water", {{w.own("film_water"), -1.0}, {w.of("floor", "water"), 1.0}});
        w.flow("chill", {{w.of("carburetor", "heat"), -1.0}, {w.of("exhaust", "heat"), 1.0}});
        w.reading("pressure", "kPa");
        w.reading("film", "mL");
    }

    void prepare(const Surroundings& s)
    {
        outside_ = s.pressure.si;
        temperature_ = s.temperature.si;
        fuel_ = s.fuel;
        // With the engine side down the puddle runs to the valve; with the horn down, out at it.
        puddle_mass_ = 745.0 * puddle.si * std::clamp(1.0 + 1.5 * s.up.y, 0.05, 1.0);
    }

    void shelve(const Surroundings& s, std::span<double> states) const
    {
        states[air] = s.pressure.si * volume.si / (gas_constant * s.temperature.si);
    }

    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        constexpr double four_pi = 12.566370614359172;
        constexpr double whole_molar_mass = 0.100;
        const S warm = temperature_ + 0.3 * (in[head_temperature] - temperature_);
        const S moles = in[air] + in[vapour] * (1.0 / whole_molar_mass);
        out[pressure] = moles * warm * (gas_constant / volume.si);
        out[mixture_temperature] = warm;
        const S drawn = positive_part(in[speed], 0.1) *
                        (displacement.si * volumetric_efficiency.si * tightness.si / four_pi);
        const S changes = drawn * (1.0 / volume.si);
        out[air_rate] = in[air] * changes;
        out[vapour_rate] = in[vapour] * changes;

        const S reid = reid_left(fuel_, in[light]);
        const S half = 299.0 - 25.0 * log(reid * (1.0 / 62.1e3));
        const S share = 1.0 / (1.0 + exp((half - warm) * (1.0 / 23.0)));
        const S saturated = gasoline_vapour_pressure(warm, reid);
        const S partial = in[vapour] * warm * (gas_constant / (whole_molar_mass * volume.si));
        const S room = positive_part(1.0 - partial / saturated, 0.02);
        const S sweep = (drawn + 2e-6) * (1.0 / film_sweep.si);
        // A trace of film below nothing, which a step may leave, must not draw vapour below
        // nothing.
        out[uptake] = amount_there(in[film_fuel], 2e-10) * sweep * share * room;
        const S moving = drawn * (1.0 / film_sweep.si);
        out[chill] = out[uptake] * (chill_share.si * heat_of_vaporisation);
        out[liquid_rate] = in[film_fuel] * moving * (1.0 - share * room);
        out[water_rate] = in[film_water] * moving;
        const S fired = smooth_step(in[charge], 0.0, 60.0);
        const S hot = evaporated_share(in[head_temperature], fired, reid);
        out[burnable_rate] = out[vapour_rate] + out[liquid_rate] * hot;
        const S unburnt = out[liquid_rate] * (1.0 - hot);
        out[wetting_rate] = unburnt + out[water_rate];
        out[wash] = 0.3 * unburnt;

        // At rest the puddle seeps past valve and rings, minutes to a millilitre; what stands over
        // its brim runs back out of the air horn.
        const S still = 1.0 - smooth_step(in[speed], 2.0, 15.0);
        const S puddle_now = in[film_fuel] + in[film_water];
        const S water_share = in[film_water] / (puddle_now + 1e-9);
        const S seep = still * positive_part(puddle_now - 1e-4, 5e-5) * (1.0 / 90.0);
        const S brim = positive_part(puddle_now - puddle_mass_, 1e-4) * (1.0 / 2.0);
        out[drain_fuel] = seep * (1.0 - water_share);
        out[drain_water] = seep * water_share;
        out[overflow_fuel] = brim * (1.0 - water_share);
        out[overflow_water] = brim * water_share;
    }

    void show(const double* in, const double* out, double* shown) const
    {
        shown[0] = out[pressure] - outside_;
        shown[1] = in[film_fuel] / fuel_density(fuel_.density, out[mixture_temperature]);
    }

private:
    double outside_ = 101325.0;
    double temperature_ = 293.15;
    double puddle_mass_ = 3e-3;
    FuelBlend fuel_;
};

constexpr std::tuple parameters{
    parameter("volume", "volume from throttle to valve", &Runner::volume, 5.0_mL, 500.0_mL),
    parameter("displacement", "swept volume", &Runner::displacement, 10.0_mL, 1000.0_mL),
    parameter("volumetric_efficiency", "filling of the cylinder", &Runner::volumetric_efficiency,
              0.3_ratio, 1.1_ratio),
    parameter("film_sweep", "air that renews the wall film", &Runner::film_sweep, 50.0_mL,
              5000.0_mL),
    parameter("puddle", "fuel the runner holds before it overflows", &Runner::puddle, 0.1_mL,
              50.0_mL),
    parameter("tightness", "share of the charge that rings and valves hold", &Runner::tightness,
              0.1_ratio, 1.0_ratio),
    parameter("chill_share", "share of the heat of vaporisation taken from the carburetor",
              &Runner::chill_share, 0.0_ratio, 1.0_ratio),
};

const RegisterPart<Runner> registered{"runner", "Intake runner", parameters};

} // namespace
} // namespace sim
