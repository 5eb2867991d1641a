#include "../passage.hpp"

namespace sim {
namespace {

using namespace literals;

/// The weighted end of a suction hose, in a tank that may lie any way up, and the felt over it.
///
/// The weight swings towards the lowest corner with a lag of its own; its states are the direction
/// it hangs in, as shares of the tank's half width, depth and height. Wet felt lets no air through
/// until the suction breaks the menisci in its pores.
/// source:  first-order lag; Young-Laplace
struct Pickup {
    Duration swing_time;
    Area felt_area;
    Length pore;
    Length hose_length;
    Length hose_bore;
    Ratio free;
    Ratio capped;

    enum In : std::size_t {
        a,
        b = a + contents_count,
        along = b + contents_count,
        across,
        upward,
        reads
    };
    enum Out : std::size_t {
        fuel,
        light,
        water,
        air,
        vapour,
        along_rate,
        across_rate,
        upward_rate,
        writes
    };

    void wire(Wiring& w)
    {
        tank_ = w.chamber_box("a");
        hose_ = w.chamber_box("b");
        for (const char* name : {"along", "across", "upward"}) {
            w.state({name, 0.02, -2.0, 2.0, 0.0, 0.0});
        }
        read_contents(w, "a");
        read_contents(w, "b");
        for (const char* name : {"along", "across", "upward"}) {
            w.read(w.own(name));
        }
        give_contents(w, "a", "b");
        for (const char* name : {"along", "across", "upward"}) {
            w.flow(std::string(name) + "_rate", {{w.own(name), 1.0}});
        }
        w.reading("flow", "mL/min");
        w.reading("air", "mL/min");
        w.reading("cover", "%");
        w.reading("forward", "mm");
        w.reading("left", "mm");
        w.reading("height", "mm");
    }

    void prepare(const Surroundings& s)
    {
        up_ = s.up;
        hose_rise_ = dot(hose_.end_a - tank_.centre, s.up);
        middle_ = find_port({tank_, tank_.centre}, s.up);
        wanted_ = {lowest(-s.up.x), lowest(-s.up.y), lowest(-s.up.z)};
        shape_ = {.port_height = 6e-3, .capillary_bore = pore.si, .fuel = s.fuel};
        const double bore = 0.7853981633974483 * hose_bore.si * hose_bore.si;
        const double open = felt_area.si * (1.0 - capped.si);
        resistance_ = hole_resistance(Restriction{1e-3, 0.62}, open) +
                      hole_resistance(Restriction{hose_length.si, 0.62}, bore);
        molar_volume_ = gas_constant * s.temperature.si / s.pressure.si;
    }

    void shelve(const Surroundings& s, std::span<double> states) const
    {
        states[0] = lowest(-s.up.x);
        states[1] = lowest(-s.up.y);
        states[2] = lowest(-s.up.z);
    }

    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        const Contents<S> ca = contents_at(in, a);
        const Contents<S> cb = contents_at(in, b);
        const PortView<S> pa = look(in, ca);
        const S wet_share = cb.water / (cb.fill + 1e-6);
        const PortView<S> pb{cb.fill, wet_share, 1.0 - wet_share,
                             cb.pressure + fuel_density(shape_.fuel.density, cb.temperature) *
                                               cb.fill * gravity * (hose_rise_ - raised(in))};
        const PassageFlow<S> f = passage_flow(shape_, resistance_, ca, pa, cb, pb);
        put_flow(f, out);
        const double pace = free.si / swing_time.si;
        out[along_rate] = (wanted_.x - in[along]) * pace;
        out[across_rate] = (wanted_.y - in[across]) * pace;
        out[upward_rate] = (wanted_.z - in[upward]) * pace;
    }

    void show(const double* in, const double* out, double* shown) const
    {
        std::array<double, reads> all{};
        std::copy_n(in, reads, all.begin());
        shown[0] = out[fuel] / fuel_density(shape_.fuel.density, in[a + contents_temperature]);
        shown[1] = (out[air] + out[vapour]) * molar_volume_;
        shown[2] = look(all, contents_at(all, a)).cover;
        shown[3] = tank_.centre.x + reach() * tank_.size.x * in[along];
        shown[4] = tank_.centre.y + reach() * tank_.size.y * in[across];
        shown[5] = tank_.centre.z + reach() * tank_.size.z * in[upward];
    }

private:
    /// Share of the half size that the weight, not a point, comes to.
    static constexpr double reach() { return 0.45; }

    /// Where along one axis a weight comes to lie when `down` is that axis' share of gravity: at
    /// the wall as soon as the floor slopes noticeably.
    static double lowest(double down) { return down / std::sqrt(down * down + 0.01); }

    /// Height of the weight over the tank's middle.
    template <class S>
    [[nodiscard]] S raised(const std::array<S, reads>& in) const
    {
        return in[along] * (reach() * tank_.size.x * up_.x) +
               in[across] * (reach() * tank_.size.y * up_.y) +
               in[upward] * (reach() * tank_.size.z * up_.z);
    }

    template <class S>
    [[nodiscard]] PortView<S> look(const std::array<S, reads>& in, const Contents<S>& tank) const
    {
        const S rho = fuel_density(shape_.fuel.density, tank.temperature);
        return view_moving_port(middle_, raised(in), shape_.port_height, tank, rho);
    }

    Box tank_;
    Box hose_;
    Port middle_;
    double hose_rise_ = 0.0;
    Vector up_{0.0, 0.0, 1.0};
    Vector wanted_{0.0, 0.0, -1.0};
    PassageShape shape_;
    Resistance<double> resistance_;
    double molar_volume_ = 0.024;
};

constexpr std::tuple parameters{
    parameter("swing_time", "time the weight takes to swing over", &Pickup::swing_time, 0.02_s,
              10.0_s),
    parameter("felt_area", "open area of the felt", &Pickup::felt_area, 0.0_mm2, 100.0_mm2),
    parameter("pore", "pore of the felt", &Pickup::pore, 0.002_mm, 5.0_mm),
    parameter("hose_length", "length of the hose in the tank", &Pickup::hose_length, 5.0_mm,
              500.0_mm),
    parameter("hose_bore", "its bore", &Pickup::hose_bore, 0.5_mm, 10.0_mm),
    parameter("free", "1 where the hose lets the weight swing, 0 where it is too hard",
              &Pickup::free, 0.0_ratio, 1.0_ratio),
    parameter("capped", "share of it that a cap closes for a test", &Pickup::capped, 0.0_ratio,
              1.0_ratio),
};

const RegisterPart<Pickup> registered{"pickup", "Weighted pick-up", parameters};

} // namespace
} // namespace sim
