#include "../room.hpp"

namespace sim {
namespace {

using namespace literals;

/// A vessel with a level: a tank, a float bowl.
///
/// Water is poured in with the cap off: in a vessel with an `outside` link, the gas it takes the
/// place of goes there.
struct Chamber {
    Compliance compliance;
    Ratio start_fill;
    Length zero_level;
    Volume poured_water;

    enum In : std::size_t { fuel, light, water, air, vapour, temperature, poured, reads };
    enum Out : std::size_t {
        pressure,
        fill,
        water_fill,
        air_share,
        vapour_share,
        light_share,
        warmth,
        evaporation,
        pour,
        displaced_air,
        displaced_vapour,
        writes
    };

    void wire(Wiring& w)
    {
        box_ = w.own_box();
        wire_room(w, box_.volume());
        w.state({.name = "poured", .scale = 1e-4});
        read_room(w);
        w.read(w.of("warmth", "temperature"));
        w.read(w.own("poured"));
        give_room(w);
        w.flow("pour", {{w.own("water"), 1.0}, {w.own("poured"), 1.0}});
        std::vector<FlowTarget> air_out;
        std::vector<FlowTarget> vapour_out;
        if (w.has_link("outside")) {
            air_out = {{w.own("air"), -1.0}, {w.of("outside", "air"), 1.0}};
            vapour_out = {{w.own("vapour"), -1.0}, {w.of("outside", "vapour"), 1.0}};
        }
        w.flow("displaced_air", air_out);
        w.flow("displaced_vapour", vapour_out);
        w.reading("fuel", "mL");
        w.reading("water", "mL");
        w.reading("pressure", "kPa");
        w.reading("level", "mm");
        w.reading("temperature", "degC");
    }

    void prepare(const Surroundings& s)
    {
        room_ = {box_.volume().si, compliance.si, box_.size.x * box_.size.y, 2.5e-6, s.fuel};
        outside_ = s.pressure.si;
        surroundings_ = s;
    }

    void shelve(const Surroundings& s, std::span<double> states) const
    {
        shelve_room(room_, s, start_fill.si, states);
        states[room_states] = 0.0;
    }

    void fill_by_hand(double share, std::span<double> states) const
    {
        const double water_volume = states[room_water] / water_density;
        const double kept = states[room_water];
        shelve_room(room_, surroundings_, std::max(share - water_volume / room_.volume, 0.0),
                    states);
        states[room_water] = kept;
    }

    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        const S outside = in[fuel] * 0.0 + outside_;
        const RoomView<S> view = view_room(room_, in[fuel], in[light], in[water], in[air],
                                           in[vapour], in[temperature], outside);
        put_room(view, in[temperature], out);
        // Water somebody tipped in runs to the bottom within seconds, and is drained as fast, as
        // far as it is still there.
        const S missing = poured_water.si * water_density - in[poured];
        const S there = smooth_step(in[water], 0.0, 1e-4);
        out[pour] = 0.5 * (positive_part(missing - 1e-6, 1e-6) -
                           there * positive_part(-missing - 1e-6, 1e-6));
        const S displaced = positive_part(out[pour], 1e-6) * (1.0 / water_density) * view.pressure /
                            (in[temperature] * gas_constant);
        out[displaced_air] = displaced * view.air;
        out[displaced_vapour] = displaced * view.vapour;
    }

    void show(const double* in, const double* out, double* shown) const
    {
        shown[0] = in[fuel] / fuel_density(room_.fuel.density, in[temperature]);
        shown[1] = in[water] / water_density;
        shown[2] = out[pressure] - outside_;
        shown[3] = out[fill] * box_.size.z - zero_level.si;
        shown[4] = in[temperature];
    }

private:
    Box box_;
    Room room_;
    Surroundings surroundings_;
    double outside_ = 101325.0;
};

constexpr std::tuple parameters{
    parameter("compliance", "give of the walls", &Chamber::compliance, Compliance{1e-14},
              Compliance{1e-7}),
    parameter("start_fill", "share filled on the shelf", &Chamber::start_fill, 0.0_ratio,
              0.97_ratio),
    parameter("zero_level", "height of the level mark over the floor", &Chamber::zero_level, 0.0_mm,
              200.0_mm),
    parameter("poured_water", "water that got in", &Chamber::poured_water, 0.0_mL, 500.0_mL),
};

const RegisterPart<Chamber> registered{"chamber", "Tank or bowl", parameters};

} // namespace
} // namespace sim
