#include "../passage.hpp"

namespace sim {
namespace {

using namespace literals;

/// A fuel circuit of a diaphragm carburetor: jet and adjusting needle in a row, a nozzle check
/// valve where there is one, and the holes it leaves by into the venturi or at the throttle's edge.
///
/// Holes on both sides of the plate share one pocket, whose pressure is that of two orifices in a
/// row between throat and runner; the plate passes the progression holes as it opens. What comes
/// back where no check valve seals is the runner's gas.
/// source:  orifices in series; two orifices in a row for the pocket; Young-Laplace for the ring
struct MeteredCircuit {
    Length jet_bore;
    Ratio open;
    Ratio turns;
    Area area_per_turn;
    Length needle_bore;
    Area check_area;
    Pressure check_cracking;
    Area check_leak;
    Area edge_area;
    Area progression_area;

    enum In : std::size_t {
        a,
        throat = a + contents_count,
        runner,
        runner_air,
        runner_vapour,
        opening,
        reads
    };
    enum Out : std::size_t { fuel, light, water, air, vapour, outlet, carried, writes };

    void wire(Wiring& w)
    {
        place_ = w.port("a", "a");
        read_contents(w, "a");
        w.read(w.of("intake", "throat_pressure"));
        for (const char* name : {"pressure", "air_share", "vapour_share"}) {
            w.read(w.of("runner", name));
        }
        w.read(w.of("throttle", "opening"));
        give_contents(w, "a", "runner");
        w.publish("outlet_pressure");
        w.publish("fuel_rate");
        w.reading("flow", "mL/min");
        w.reading("outlet_pressure", "kPa");
    }

    void prepare(const Surroundings& s)
    {
        port_ = find_port(place_, s.up);
        outside_ = s.pressure.si;
        const double clean = std::max(jet_bore.si - 2.0 * s.fuel.gum.si, 1e-6);
        const double jet = 0.7853981633974483 * clean * clean * open.si;
        const double needle = turns.si * area_per_turn.si * open.si;
        // A slot holds off as much gas as a bore twice as wide; a micron of it is roughness. Fuel
        // creeps back into it as long as there is some in the chamber.
        const double slot = needle / (3.141592653589793 * needle_bore.si) + 1e-6;
        shape_ = {.port_height = 2e-3,
                  .capillary_bore = std::min(clean, 2.0 * slot),
                  .wetting = 0.1,
                  .fuel = s.fuel};
        fixed_ = hole_resistance(Restriction{1e-3, 0.7}, jet) +
                 hole_resistance(Restriction{1e-3, 0.7}, needle);
    }

    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        const Contents<S> room = contents_at(in, a);
        const PortView<S> inside = look(shape_, port_, room);
        out[outlet] = in[throat] + (in[runner] - in[throat]) * behind_share(in[opening]);
        const S none = out[outlet] * 0.0;
        const Contents<S> horn{out[outlet],     none, none, in[runner_air], in[runner_vapour], none,
                               room.temperature};
        const PortView<S> outside{none, none, none + 1.0, out[outlet]};
        const S lifted =
            smooth_step(inside.push - out[outlet], check_cracking.si, 3.0 * check_cracking.si);
        const S check = lifted * check_area.si + check_leak.si;
        const Resistance<S> valve = hole_resistance(Restriction{1e-3, 0.62}, check);
        const Resistance<S> whole{valve.laminar + fixed_.laminar, valve.inertial + fixed_.inertial};
        const PassageFlow<S> f = passage_flow(shape_, whole, room, inside, horn, outside);
        put_flow(f, out);
        out[carried] = f.fuel;
    }

    void show(const double* in, const double* out, double* shown) const
    {
        shown[0] = out[fuel] / fuel_density(shape_.fuel.density, in[a + contents_temperature]);
        shown[1] = out[outlet] - outside_;
    }

private:
    /// How near the pocket's pressure is to the runner's: 0 throat, 1 runner.
    template <class S>
    [[nodiscard]] S behind_share(const S& plate) const
    {
        // The plate's edge passes the progression holes in the first third of its travel.
        const S passed = smooth_step(plate, 0.02, 0.35);
        const S behind = edge_area.si + progression_area.si * passed;
        const S before = progression_area.si * (1.0 - passed) + 1e-10;
        return behind * behind / (behind * behind + before * before);
    }

    PortPlace place_;
    Port port_;
    PassageShape shape_;
    Resistance<double> fixed_;
    double outside_ = 101325.0;
};

constexpr std::tuple parameters{
    parameter("jet_bore", "bore of the fixed jet", &MeteredCircuit::jet_bore, 0.05_mm, 3.0_mm),
    parameter("open", "share of jet and needle that is clear", &MeteredCircuit::open, 0.0_ratio,
              1.0_ratio),
    parameter("turns", "turns the needle is backed out", &MeteredCircuit::turns, 0.0_ratio,
              5.0_ratio),
    parameter("area_per_turn", "area that a turn opens", &MeteredCircuit::area_per_turn, 0.0_mm2,
              2.0_mm2),
    parameter("needle_bore", "bore in which the needle leaves a ring", &MeteredCircuit::needle_bore,
              0.2_mm, 5.0_mm),
    parameter("check_area", "area of the check valve when open", &MeteredCircuit::check_area,
              0.0_mm2, 20.0_mm2),
    parameter("check_cracking", "drop at which the check valve begins to lift",
              &MeteredCircuit::check_cracking, 1.0_Pa, 5.0_kPa),
    parameter("check_leak", "area that a shut check valve leaves", &MeteredCircuit::check_leak,
              0.0_mm2, 20.0_mm2),
    parameter("edge_area", "area of the hole behind the shut throttle", &MeteredCircuit::edge_area,
              0.0_mm2, 5.0_mm2),
    parameter("progression_area", "area of the holes that the throttle passes",
              &MeteredCircuit::progression_area, 0.0_mm2, 5.0_mm2),
};

const RegisterPart<MeteredCircuit> registered{"metered_circuit", "Fuel circuit with needle",
                                              parameters};

} // namespace
} // namespace sim
