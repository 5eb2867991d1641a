#include "../combustion.hpp"

namespace sim {
namespace {

using namespace literals;

/// A two-stroke's crank, and what it drives through its clutch.
///
/// The crank is followed through its turn, as cosine and sine of its angle from top dead centre:
/// that moves the crankcase's volume and the ports. A kept charge gives its heat over the half turn
/// or so that follows. The clutch takes hold over a band of speed. source:  torque = efficiency x
/// heat rate / speed, after L. Guzzella, C. Onder, Introduction to
///          Modeling and Control of IC Engine Systems, ch. 2; clutch and head: common practice
struct TwoStroke {
    Volume displacement;
    Ratio indicated_efficiency;
    Pressure friction_pressure;
    Pressure friction_slope;
    Inertia inertia;
    AngularSpeed rated_speed;
    AngularSpeed clutch_speed;
    Torque head_torque;
    Torque line_torque;
    Ratio load;
    Ratio spark;
    Ratio timing;
    Ratio stopped;
    Ratio tightness;

    enum In : std::size_t {
        cosine,
        sine,
        speed,
        charge,
        mean_air,
        mean_fuel,
        trapped_air,
        intake_air,
        mixture,
        wetness,
        soot,
        head_temperature,
        cord_torque,
        high_fuel,
        low_fuel,
        reads
    };
    enum Out : std::size_t {
        cosine_rate,
        sine_rate,
        acceleration,
        charge_change,
        air_change,
        fuel_change,
        heat,
        richness,
        burning,
        work,
        writes
    };

    static void wire(Wiring& w)
    {
        w.state({"cosine", 0.02, -1.5, 1.5, 0.0, 0.0});
        w.state({"sine", 0.02, -1.5, 1.5, 0.0, 0.0});
        w.state({"speed", 1.0, 0.0, 2000.0, 0.0, 0.0});
        w.state({"charge", 10.0, -10.0, 1e4, 0.0, 0.0});
        w.state({.name = "mean_air", .scale = 1e-3});
        w.state({.name = "mean_fuel", .scale = 1e-4});
        for (const char* name : {"cosine", "sine", "speed", "charge", "mean_air", "mean_fuel"}) {
            w.read(w.own(name));
        }
        w.read(w.of("transfer", "trapped_air"));
        w.read(w.of("intake", "air_flow"));
        w.read(w.of("transfer", "richness"));
        w.read(w.of("plug", "wetness"));
        w.read(w.of("plug", "soot"));
        w.read(w.of("head", "temperature"));
        w.read(w.of("recoil", "torque"));
        w.read(w.of("high", "fuel_rate"));
        w.read(w.of("low", "fuel_rate"));
        w.flow("cosine_rate", {{w.own("cosine"), 1.0}});
        w.flow("sine_rate", {{w.own("sine"), 1.0}});
        w.flow("acceleration", {{w.own("speed"), 1.0}});
        w.flow("charge_change", {{w.own("charge"), 1.0}});
        w.flow("air_change", {{w.own("mean_air"), 1.0}});
        w.flow("fuel_change", {{w.own("mean_fuel"), 1.0}});
        w.flow("heat_flow", {{w.of("head", "heat"), 1.0}});
        w.publish("richness");
        w.publish("burning");
        w.publish("load_torque");
        w.crank("cosine", "sine", "speed");
        give_engine_readings(w);
        w.reading("crank_angle", "deg");
        w.reading("burning", "%");
    }

    void prepare(const Surroundings& s)
    {
        heat_per_air_ = lower_heating_value(s.fuel) * air_molar_mass / stoichiometric_ratio(s.fuel);
        firing_ = spark.si * timing.si * (1.0 - stopped.si);
    }

    void shelve(const Surroundings& /*s*/, std::span<double> states) const { states[sine] = 1.0; }

    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        constexpr double pi = 3.141592653589793;
        // The pair stays on its circle; what rounding takes off is given back.
        const S off = 20.0 * (1.0 - in[cosine] * in[cosine] - in[sine] * in[sine]);
        out[cosine_rate] = off * in[cosine] - in[speed] * in[sine];
        out[sine_rate] = off * in[sine] + in[speed] * in[cosine];

        out[richness] = in[mixture];
        const S lit = flammable_share(out[richness]) * plug_share(in[wetness], in[soot]) * firing_;
        const S power = in[trapped_air] * heat_per_air_ * out[richness] *
                        burnt_share(out[richness]) * lean_slowness(out[richness]) * lit;
        const S pace = (in[speed] + 5.0) * (1.0 / pi);
        out[charge_change] = power - settling(in[charge], 1e-6) * pace;
        out[burning] = lit;
        out[air_change] = (in[intake_air] * air_molar_mass - in[mean_air]) * (1.0 / mean_time);
        out[fuel_change] = (in[high_fuel] + in[low_fuel] - in[mean_fuel]) * (1.0 / mean_time);

        const S turning = in[speed] / sqrt(in[speed] * in[speed] + 9.0);
        const S relative = in[speed] * (1.0 / rated_speed.si);
        const S friction = turning * (displacement.si / (2.0 * pi)) *
                           (friction_pressure.si * cold_friction(in[head_temperature]) +
                            friction_slope.si * relative * relative);
        const S held = smooth_step(in[speed], clutch_speed.si, 1.3 * clutch_speed.si);
        out[work] = held * (head_torque.si * relative * relative + line_torque.si * load.si);
        const S indicated = turning * in[charge] * (indicated_efficiency.si * tightness.si / pi);
        out[acceleration] =
            (indicated + in[cord_torque] - friction - out[work]) * (1.0 / inertia.si);
        out[heat] = 0.25 * in[charge] * pace + 0.5 * friction * in[speed];
    }

    static void show(const double* in, const double* out, double* shown)
    {
        show_engine({.speed = in[speed],
                     .least_speed = 20.0,
                     .air = std::max(in[mean_air], 0.0),
                     .fuel = std::max(in[mean_fuel], 0.0),
                     .load_torque = out[work],
                     .head_temperature = in[head_temperature],
                     .richness = out[richness]},
                    shown);
        shown[engine_readings] = std::atan2(in[sine], in[cosine]);
        shown[engine_readings + 1] = in[speed] > 20.0 ? out[burning] : 0.0;
    }

private:
    /// Time over which air and fuel are averaged for people, s: some ten turns.
    static constexpr double mean_time = 0.1;

    double heat_per_air_ = 8e4;
    double firing_ = 1.0;
};

constexpr std::tuple parameters{
    parameter("displacement", "swept volume", &TwoStroke::displacement, 10.0_mL, 200.0_mL),
    parameter("indicated_efficiency", "share of the heat that becomes work",
              &TwoStroke::indicated_efficiency, 0.05_ratio, 0.45_ratio),
    parameter("friction_pressure", "friction mean pressure, warm", &TwoStroke::friction_pressure,
              5.0_kPa, 300.0_kPa),
    parameter("friction_slope", "friction added at rated speed", &TwoStroke::friction_slope,
              0.0_kPa, 300.0_kPa),
    parameter("inertia", "moment of inertia of crank and flywheel", &TwoStroke::inertia,
              Inertia{1e-5}, Inertia{0.1}),
    parameter("rated_speed", "rated speed", &TwoStroke::rated_speed, AngularSpeed{100.0},
              AngularSpeed{1500.0}),
    parameter("clutch_speed", "speed at which the clutch begins to take hold",
              &TwoStroke::clutch_speed, AngularSpeed{50.0}, AngularSpeed{1000.0}),
    parameter("head_torque", "torque of the cutting head's own air at rated speed",
              &TwoStroke::head_torque, Torque{0.0}, Torque{10.0}),
    parameter("line_torque", "torque of the work at full load", &TwoStroke::line_torque,
              Torque{0.0}, Torque{10.0}),
    parameter("load", "load, 0 to 1", &TwoStroke::load, 0.0_ratio, 1.0_ratio),
    parameter("spark", "share of sparks that come", &TwoStroke::spark, 0.0_ratio, 1.0_ratio),
    parameter("timing", "share of its work that a charge gives for its timing", &TwoStroke::timing,
              0.0_ratio, 1.0_ratio),
    parameter("stopped", "1 with the stop switch on", &TwoStroke::stopped, 0.0_ratio, 1.0_ratio),
    parameter("tightness", "compression that is left", &TwoStroke::tightness, 0.0_ratio, 1.0_ratio),
};

const RegisterPart<TwoStroke> registered{"two_stroke", "Two-stroke engine", parameters};

} // namespace
} // namespace sim
