#include "../flow_law.hpp"
#include "../part.hpp"

namespace sim {
namespace {

using namespace literals;

/// The air's way in: filter, choke plate, venturi, throttle plate.
///
/// While the intake valve is open (`duty` of the cycle) air flows steadily through the four in
/// series; their effective areas add as 1/A^2 and the whole is one isentropic hole. The pressures
/// between follow from the flow: horn = before the choke, throat = at the nozzle's lip, edge = at
/// the idle port, which the throttle plate's edge passes as it opens.
/// source:  isentropic flow in series orifices; textbook carburettor, Heywood ch. 7 (from memory)
struct Intake {
    Area filter_area;
    Ratio filter_open;
    Length bore;
    Ratio choke;
    Ratio choke_least;
    Ratio choke_most;
    Ratio choke_relief;
    Length venturi;
    Ratio venturi_discharge;
    Ratio recovery;
    Ratio plate_leak;
    Ratio idle_stop;
    Ratio duty;

    enum In : std::size_t { runner_pressure, opening, runner_air, reads };
    enum Out : std::size_t { air, horn, throat, edge, speed, writes };

    void wire(Wiring& w)
    {
        w.read(w.of("runner", "pressure"));
        w.read(w.of("throttle", "opening"));
        w.read(w.of("runner", "air"));
        w.flow("air_flow", {{w.of("runner", "air"), 1.0}, {w.of("outside", "air"), -1.0}});
        w.publish("horn_pressure");
        w.publish("throat_pressure");
        w.publish("edge_pressure");
        w.publish("air_speed");
        w.reading("air_flow", "g/s");
        w.reading("horn_pressure", "kPa");
        w.reading("throat_pressure", "kPa");
        w.reading("edge_pressure", "kPa");
    }

    void prepare(const Surroundings& s)
    {
        outside_ = s.pressure.si;
        temperature_ = s.temperature.si;
        density_ = air_density(outside_, temperature_);
        const double plate = 0.7853981633974483 * bore.si * bore.si;
        const double shut = std::clamp(choke.si, std::min(choke_least.si, choke_most.si),
                                       std::max(choke_least.si, choke_most.si));
        // The plate turns a right angle; its shadow on the bore grows as the sine.
        const double shadow = std::sin(shut * 1.5707963267948966);
        const double gap = 0.8 * plate * (1.0 - shadow * (1.0 - choke_relief.si));
        const double throat_hole =
            venturi_discharge.si * 0.7853981633974483 * venturi.si * venturi.si;
        bore_area_ = plate;
        throat_area_ = throat_hole;
        const double filter = 0.62 * filter_area.si * filter_open.si;
        filter_loss_ = 1.0 / (filter * filter + 1e-20);
        choke_loss_ = 1.0 / (gap * gap);
        venturi_loss_ = (1.0 - recovery.si) / (throat_hole * throat_hole);
    }

    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        const S t = in[opening] * (1.0 - idle_stop.si) + idle_stop.si;
        // The linkage turns the plate slowly at first, as t^2 of a right angle; it uncovers
        // 1 - cos of that angle, here to its sixth power in the angle.
        const S x = t * t;
        const S x2 = x * x;
        const S uncovered = x2 * (1.2337 - x2 * (0.2537 - 0.02 * x2));
        const S plate = 0.85 * bore_area_ * (plate_leak.si + (1.0 - plate_leak.si) * uncovered);
        const S area =
            1.0 / sqrt(1.0 / (plate * plate) + (filter_loss_ + choke_loss_ + venturi_loss_));
        const S outside = in[runner_pressure] * 0.0 + outside_;
        const S drawn = isentropic_flow(area, outside, in[runner_pressure], temperature_, 2e-5);
        const S head = drawn * drawn * (0.5 / density_);
        // Vapour may fill a runner at rest; what then comes back out is air only while there is
        // some.
        const S given =
            value_of(drawn) < 0.0 ? drawn * smooth_step(in[runner_air], 0.0, 1e-4) : drawn;
        out[air] = given * (duty.si / air_molar_mass);
        out[horn] = outside_ - head * filter_loss_;
        const S behind_choke = out[horn] - head * choke_loss_;
        out[throat] = behind_choke - head * (1.0 / (throat_area_ * throat_area_));
        const S before_plate = behind_choke - head * venturi_loss_;
        const S passed = smooth_step(t, 0.35, 0.85);
        out[edge] = in[runner_pressure] + (before_plate - in[runner_pressure]) * passed;
        out[speed] = drawn * (1.0 / (density_ * throat_area_));
    }

    void show(const double* /*in*/, const double* out, double* shown) const
    {
        shown[0] = out[air] * air_molar_mass;
        shown[1] = out[horn] - outside_;
        shown[2] = out[throat] - outside_;
        shown[3] = out[edge] - outside_;
    }

private:
    double outside_ = 101325.0;
    double temperature_ = 293.15;
    double density_ = 1.2;
    double bore_area_ = 3e-4;
    double throat_area_ = 2e-4;
    double filter_loss_ = 0.0;
    double choke_loss_ = 0.0;
    double venturi_loss_ = 0.0;
};

constexpr std::tuple parameters{
    parameter("filter_area", "open area of the air filter", &Intake::filter_area, 1.0_mm2,
              20000.0_mm2),
    parameter("filter_open", "share of the air filter that is clear", &Intake::filter_open,
              0.0_ratio, 1.0_ratio),
    parameter("bore", "bore at choke and throttle", &Intake::bore, 5.0_mm, 50.0_mm),
    parameter("choke", "choke, 0 open to 1 shut", &Intake::choke, 0.0_ratio, 1.0_ratio),
    parameter("choke_least", "least the choke can be shut", &Intake::choke_least, 0.0_ratio,
              1.0_ratio),
    parameter("choke_most", "most the choke can be shut", &Intake::choke_most, 0.0_ratio,
              1.0_ratio),
    parameter("choke_relief", "share of the bore a shut choke leaves", &Intake::choke_relief,
              0.01_ratio, 0.5_ratio),
    parameter("venturi", "venturi bore", &Intake::venturi, 5.0_mm, 40.0_mm),
    parameter("venturi_discharge", "discharge coefficient of the venturi",
              &Intake::venturi_discharge, 0.5_ratio, 1.0_ratio),
    parameter("recovery", "share of the throat's suction the diffuser gives back",
              &Intake::recovery, 0.0_ratio, 0.95_ratio),
    parameter("plate_leak", "share of the bore a shut throttle leaves", &Intake::plate_leak,
              0.0005_ratio, 0.2_ratio),
    parameter("idle_stop", "throttle opening at the stop", &Intake::idle_stop, 0.0_ratio,
              0.5_ratio),
    parameter("duty", "share of the cycle in which the engine draws", &Intake::duty, 0.1_ratio,
              1.0_ratio),
};

const RegisterPart<Intake> registered{"intake", "Air filter, choke, venturi, throttle", parameters};

} // namespace
} // namespace sim
