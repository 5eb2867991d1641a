#include "../room.hpp"

namespace sim {
namespace {

using namespace literals;

/// A rubber bulb and the thumb on it.
///
/// The thumb presses on the outside of the wall; what that does to the inside follows from the
/// chamber's own law. The bulb springs back by its compliance; a stopwatch takes the time from the
/// thumb's going to 93 % of the volume at rest.
struct Bulb {
    Volume volume;
    Compliance compliance;
    Pressure thumb_pressure;
    Duration thumb_time;
    Ratio pressed;

    enum In : std::size_t { fuel, light, water, air, vapour, thumb, since, temperature, reads };
    enum Out : std::size_t {
        pressure,
        fill,
        water_fill,
        air_share,
        vapour_share,
        light_share,
        warmth,
        evaporation,
        covered,
        thumb_rate,
        clock,
        writes
    };

    void wire(Wiring& w)
    {
        wire_room(w, volume);
        w.state({.name = "thumb", .scale = 0.01, .low = 0.0, .high = 1.0});
        w.state({.name = "since", .scale = 0.1});
        read_room(w);
        w.read(w.own("thumb"));
        w.read(w.own("since"));
        w.read(w.of("warmth", "temperature"));
        give_room(w);
        w.publish("covered");
        w.flow("thumb_rate", {{w.own("thumb"), 1.0}});
        w.flow("clock", {{w.own("since"), 1.0}});
        w.reading("volume", "mL");
        w.reading("pressure", "kPa");
        w.reading("return_time", "s");
        w.reading("liquid", "%");
    }

    void prepare(const Surroundings& s)
    {
        room_ = {volume.si, compliance.si, 2e-4, 2.5e-6, s.fuel};
        outside_ = s.pressure.si;
    }

    void shelve(const Surroundings& s, std::span<double> states) const
    {
        shelve_room(room_, s, 0.0, states);
        states[room_states] = 0.0;
        states[room_states + 1] = 0.0;
    }

    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        const S outside = in[thumb] * thumb_pressure.si + outside_;
        const RoomView<S> view = view_room(room_, in[fuel], in[light], in[water], in[air],
                                           in[vapour], in[temperature], outside);
        put_room(view, in[temperature], out);
        out[covered] = smooth_step(in[thumb], 0.02, 0.2);
        out[thumb_rate] = settling(pressed.si - in[thumb], 1e-9) * (1.0 / thumb_time.si);
        // A stopwatch: set back under the thumb, it runs until the bulb is nearly round again.
        const S round = 1.0 + (view.pressure - outside) * (compliance.si / volume.si);
        const S down = smooth_step(in[thumb], 0.1, 0.5);
        out[clock] =
            (1.0 - down) * (1.0 - smooth_step(round, 0.92, 0.94)) - down * in[since] * 50.0;
    }

    void show(const double* in, const double* out, double* shown) const
    {
        const double outside = in[thumb] * thumb_pressure.si + outside_;
        shown[0] = room_.volume + room_.compliance * (out[pressure] - outside);
        shown[1] = out[pressure] - outside_;
        shown[2] = in[since];
        shown[3] = out[fill];
    }

private:
    Room room_;
    double outside_ = 101325.0;
};

constexpr std::tuple parameters{
    parameter("volume", "volume at rest", &Bulb::volume, 0.5_mL, 20.0_mL),
    parameter("compliance", "give of the rubber", &Bulb::compliance, Compliance{1e-12},
              Compliance{1e-7}),
    parameter("thumb_pressure", "pressure of the thumb", &Bulb::thumb_pressure, 0.0_kPa, 100.0_kPa),
    parameter("thumb_time", "time the thumb takes", &Bulb::thumb_time, 0.005_s, 1.0_s),
    parameter("pressed", "0 free to 1 pressed", &Bulb::pressed, 0.0_ratio, 1.0_ratio),
};

const RegisterPart<Bulb> registered{"bulb", "Primer bulb", parameters};

} // namespace
} // namespace sim
