#include "../room.hpp"

namespace sim {
namespace {

using namespace literals;

/// A hose: a long narrow chamber in which liquid and bubbles travel together.
struct Hose {
    Length bore;
    Length length;
    Compliance compliance;

    enum In : std::size_t { fuel, light, water, air, vapour, temperature, reads };
    enum Out : std::size_t {
        pressure,
        fill,
        water_fill,
        air_share,
        vapour_share,
        light_share,
        warmth,
        evaporation,
        writes
    };

    [[nodiscard]] Volume volume() const { return 0.7853981633974483 * (bore * bore * length); }

    void wire(Wiring& w)
    {
        wire_room(w, volume());
        read_room(w);
        w.read(w.of("warmth", "temperature"));
        give_room(w);
        w.reading("pressure", "kPa");
        w.reading("liquid", "%");
    }

    void prepare(const Surroundings& s)
    {
        room_ = {volume().si, compliance.si, 0.25 * bore.si * length.si, 2.5e-6, s.fuel};
        outside_ = s.pressure.si;
    }

    void shelve(const Surroundings& s, std::span<double> states) const
    {
        shelve_room(room_, s, 0.0, states);
    }

    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        const S outside = in[fuel] * 0.0 + outside_;
        const RoomView<S> view = view_room(room_, in[fuel], in[light], in[water], in[air],
                                           in[vapour], in[temperature], outside);
        put_room(view, in[temperature], out);
    }

    void show(const double* /*in*/, const double* out, double* shown) const
    {
        shown[0] = out[pressure] - outside_;
        shown[1] = out[fill];
    }

private:
    Room room_;
    double outside_ = 101325.0;
};

constexpr std::tuple parameters{
    parameter("bore", "bore", &Hose::bore, 1.0_mm, 15.0_mm),
    parameter("length", "length", &Hose::length, 10.0_mm, 2000.0_mm),
    parameter("compliance", "give of the walls", &Hose::compliance, Compliance{1e-14},
              Compliance{1e-9}),
};

const RegisterPart<Hose> registered{"hose", "Hose", parameters};

} // namespace
} // namespace sim
