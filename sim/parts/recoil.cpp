#include "../part.hpp"
#include "../smooth.hpp"

namespace sim {
namespace {

using namespace literals;

/// The pull cord and the arm that pulls it.
///
/// `cord` is how far the hand is ahead of what has come off the drum: for a whole pull all of it at
/// once, for a hand that draws it bit by bit a little all the time. While the hand is ahead it
/// pulls with its force, less over the last 20 mm and as the cord runs as fast as the hand can; the
/// cord comes off as fast as the drum turns. When the hand stops, the drum runs away from it.
/// source:  arm of constant strength and limited speed, from memory (150 N, 2.5 m/s)
struct Recoil {
    Force force;
    Speed hand_speed;
    Length drum_radius;
    Length cord_length;

    enum In : std::size_t { cord, speed, reads };
    enum Out : std::size_t { torque, unwind, writes };

    static void wire(Wiring& w)
    {
        w.state({"cord", 1e-3, 0.0, 10.0, 0.0, 0.0});
        w.read(w.own("cord"));
        w.read(w.of("engine", "speed"));
        w.publish("torque");
        w.flow("unwind", {{w.own("cord"), -1.0}});
        w.reading("cord", "m");
    }

    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        const S pulling = smooth_step(in[cord], 0.0, 0.02);
        const S taut = smooth_step(in[cord], 0.0, 0.004);
        const double fastest = hand_speed.si / drum_radius.si;
        const S strength = positive_part(1.0 - in[speed] * (1.0 / fastest), 0.05);
        out[torque] = pulling * strength * (force.si * drum_radius.si);
        // The hand takes up slack even when the engine has run away from it.
        out[unwind] =
            taut * (smooth_min(in[speed], in[speed] * 0.0 + fastest, 2.0) * drum_radius.si + 0.05);
    }

    static void show(const double* in, const double* /*out*/, double* shown)
    {
        shown[0] = in[cord];
    }
};

constexpr std::tuple parameters{
    parameter("force", "pull of the arm", &Recoil::force, Force{0.0}, Force{500.0}),
    parameter("hand_speed", "fastest the hand moves", &Recoil::hand_speed, Speed{0.1}, Speed{10.0}),
    parameter("drum_radius", "radius of the drum", &Recoil::drum_radius, 5.0_mm, 100.0_mm),
    parameter("cord_length", "length of one pull", &Recoil::cord_length, 50.0_mm, 2000.0_mm),
};

const RegisterPart<Recoil> registered{"recoil", "Recoil starter", parameters};

} // namespace
} // namespace sim
