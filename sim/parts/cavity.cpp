#include "../room.hpp"

namespace sim {
namespace {

using namespace literals;

/// A small room without a level, in any attitude: liquid and bubbles are spread through it.
///
/// One wall may move: a diaphragm, or the piston over a crankcase. The `wall` link names the
/// travel, about -1 to 1, of which one unit adds `reach` to the volume; a wall between two rooms
/// reaches into one what it leaves in the other.
struct Cavity {
    Volume volume;
    Volume reach;
    Compliance compliance;
    Area wetted_area;

    enum In : std::size_t { fuel, light, water, air, vapour, temperature, travel, reads };
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

    void wire(Wiring& w)
    {
        wire_room(w, volume);
        read_room(w);
        w.read(w.of("warmth", "temperature"));
        has_wall_ = w.has_link("wall");
        w.read(has_wall_ ? w.link("wall") : w.own("air"));
        give_room(w);
        w.reading("pressure", "kPa");
        w.reading("liquid", "%");
        w.reading("fuel", "mL");
    }

    void prepare(const Surroundings& s)
    {
        room_ = {volume.si, compliance.si, wetted_area.si, 2.5e-6, s.fuel};
        reach_ = has_wall_ ? reach.si : 0.0;
        outside_ = s.pressure.si;
    }

    void shelve(const Surroundings& s, std::span<double> states) const
    {
        shelve_room(room_, s, 0.0, states);
    }

    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        // A wall that moves out makes room as a drop of the pressure outside would.
        const S outside = outside_ - in[travel] * (reach_ / room_.compliance);
        const RoomView<S> view = view_room(room_, in[fuel], in[light], in[water], in[air],
                                           in[vapour], in[temperature], outside);
        put_room(view, in[temperature], out);
    }

    void show(const double* in, const double* out, double* shown) const
    {
        shown[0] = out[pressure] - outside_;
        shown[1] = out[fill];
        shown[2] = in[fuel] / fuel_density(room_.fuel.density, in[temperature]);
    }

    void fill_by_hand(double share, std::span<double> states) const
    {
        shelve_room(room_, {.pressure = {outside_}, .temperature = {293.15}, .fuel = room_.fuel},
                    share, states);
    }

private:
    Room room_;
    double reach_ = 0.0;
    double outside_ = 101325.0;
    bool has_wall_ = false;
};

constexpr std::tuple parameters{
    parameter("volume", "volume with its wall in the middle", &Cavity::volume, 0.05_mL, 500.0_mL),
    parameter("reach", "volume that its moving wall adds", &Cavity::reach, Volume{-1e-4}, 100.0_mL),
    parameter("compliance", "give of the other walls", &Cavity::compliance, Compliance{1e-14},
              Compliance{1e-8}),
    parameter("wetted_area", "surface that evaporates", &Cavity::wetted_area, 0.0_mm2, Area{0.1}),
};

const RegisterPart<Cavity> registered{"cavity", "Small chamber", parameters};

} // namespace
} // namespace sim
