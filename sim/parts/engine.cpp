#include "../combustion.hpp"

namespace sim {
namespace {

using namespace literals;

/// A mean-value single-cylinder four-stroke with what it drives.
///
/// A charge drawn in now gives its work most of a cycle later. The heat of a charge is that of its
/// fuel, or of its air when rich; outside the limits of flammability it misfires. Torque is heat
/// times indicated efficiency, less friction and load.
/// source:  mean-value engine after L. Guzzella, C. Onder, Introduction to Modeling and Control of
///          IC Engine Systems, ch. 2; misfire at excess-air 0.55..0.6 and 1.25..1.4 (from memory)
struct Engine {
    Volume displacement;
    Ratio indicated_efficiency;
    Pressure friction_pressure;
    Pressure friction_slope;
    Inertia inertia;
    Torque blade_torque;
    Torque grass_torque;
    Ratio load;
    AngularSpeed rated_speed;
    Ratio spark;
    Angle timing_error;
    Ratio tightness;
    Ratio held;
    Torque brake_torque;

    enum In : std::size_t {
        speed,
        charge,
        air_rate,
        burnable_rate,
        wetness,
        soot,
        head_temperature,
        cord_torque,
        main_fuel,
        idle_fuel,
        reads
    };
    enum Out : std::size_t { acceleration, charge_change, heat, richness, burning, work, writes };

    void wire(Wiring& w)
    {
        w.state({"speed", 1.0, 0.0, 1000.0, 0.0, 0.0});
        w.state({"charge", 2.0, -10.0, 1e5, 0.0, 0.0});
        w.read(w.own("speed"));
        w.read(w.own("charge"));
        w.read(w.of("runner", "air_rate"));
        w.read(w.of("runner", "burnable_rate"));
        w.read(w.of("plug", "wetness"));
        w.read(w.of("plug", "soot"));
        w.read(w.of("head", "temperature"));
        w.read(w.of("recoil", "torque"));
        w.read(w.of("main", "carried_fuel"));
        w.read(w.of("idle", "carried_fuel"));
        w.flow("acceleration", {{w.own("speed"), 1.0}});
        w.flow("charge_change", {{w.own("charge"), 1.0}});
        w.flow("heat_flow", {{w.of("head", "heat"), 1.0}});
        w.publish("richness");
        w.publish("burning");
        w.publish("load_torque");
        give_engine_readings(w);
        w.reading("burning", "%");
    }

    void prepare(const Surroundings& s)
    {
        stoichiometric_ = stoichiometric_ratio(s.fuel);
        heating_value_ = lower_heating_value(s.fuel);
        const double off = timing_error.si / 0.7;
        firing_ = spark.si * held.si * std::max(1.0 - off * off, 0.0);
    }

    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        constexpr double four_pi = 12.566370614359172;
        const S turns = in[speed] + 0.5;
        const S air = in[air_rate] * air_molar_mass;
        // Equivalence ratio of what can burn: fuel over the fuel that the air could burn.
        out[richness] = in[burnable_rate] * stoichiometric_ / (air + 1e-7);
        const S limits = flammable_share(out[richness]);
        const S plug = plug_share(in[wetness], in[soot]);
        const S burnt = in[burnable_rate] * burnt_share(out[richness]);
        const S slow = lean_slowness(out[richness]);
        const S given = burnt * limits * plug * slow * (firing_ * heating_value_ * four_pi) / turns;
        const S pace = in[speed] * (1.3 / four_pi);
        out[charge_change] = (given - in[charge]) * pace;
        out[burning] = limits * plug * firing_;

        const S cold = cold_friction(in[head_temperature]);
        const S turning = in[speed] / sqrt(in[speed] * in[speed] + 4.0);
        const S friction =
            turning * (displacement.si / four_pi) *
            (friction_pressure.si * cold + friction_slope.si * in[speed] * (1.0 / rated_speed.si));
        const S relative = in[speed] * (1.0 / rated_speed.si);
        out[work] = blade_torque.si * relative * relative +
                    grass_torque.si * load.si * smooth_step(relative, 0.15, 0.5);
        const S indicated = in[charge] * (indicated_efficiency.si * tightness.si / four_pi);
        const S brake = turning * (brake_torque.si * (1.0 - held.si));
        out[acceleration] =
            (indicated + in[cord_torque] - friction - out[work] - brake) * (1.0 / inertia.si);
        const S heat_rate = in[charge] * in[speed] * (1.0 / four_pi);
        out[heat] = 0.28 * heat_rate + 0.5 * friction * in[speed];
    }

    static void show(const double* in, const double* out, double* shown)
    {
        show_engine({.speed = in[speed],
                     .least_speed = 10.0,
                     .air = in[air_rate] * air_molar_mass,
                     .fuel = in[main_fuel] + in[idle_fuel],
                     .load_torque = out[work],
                     .head_temperature = in[head_temperature],
                     .richness = out[richness]},
                    shown);
        shown[engine_readings] = in[speed] > 10.0 ? out[burning] : 0.0;
    }

private:
    double stoichiometric_ = 14.6;
    double heating_value_ = 43.4e6;
    double firing_ = 1.0;
};

constexpr std::tuple parameters{
    parameter("displacement", "swept volume", &Engine::displacement, 10.0_mL, 1000.0_mL),
    parameter("indicated_efficiency", "share of the heat that becomes work",
              &Engine::indicated_efficiency, 0.05_ratio, 0.45_ratio),
    parameter("friction_pressure", "friction mean pressure, warm", &Engine::friction_pressure,
              10.0_kPa, 400.0_kPa),
    parameter("friction_slope", "friction added at rated speed", &Engine::friction_slope, 0.0_kPa,
              400.0_kPa),
    parameter("inertia", "moment of inertia of crank, flywheel and blade", &Engine::inertia,
              Inertia{1e-4}, Inertia{1.0}),
    parameter("blade_torque", "torque of the blade's own air at rated speed", &Engine::blade_torque,
              Torque{0.0}, Torque{50.0}),
    parameter("grass_torque", "torque of the work at full load", &Engine::grass_torque, Torque{0.0},
              Torque{50.0}),
    parameter("load", "load, 0 to 1", &Engine::load, 0.0_ratio, 1.0_ratio),
    parameter("rated_speed", "rated speed", &Engine::rated_speed, AngularSpeed{50.0},
              AngularSpeed{1200.0}),
    parameter("spark", "share of sparks that come", &Engine::spark, 0.0_ratio, 1.0_ratio),
    parameter("timing_error", "spark away from its time", &Engine::timing_error, Angle{0.0},
              Angle{0.7}),
    parameter("tightness", "compression that is left", &Engine::tightness, 0.0_ratio, 1.0_ratio),
    parameter("held", "1 while the operator holds the handle bar", &Engine::held, 0.0_ratio,
              1.0_ratio),
    parameter("brake_torque", "brake when the bar is let go", &Engine::brake_torque, Torque{0.0},
              Torque{100.0}),
};

const RegisterPart<Engine> registered{"engine", "Four-stroke engine", parameters};

} // namespace
} // namespace sim
