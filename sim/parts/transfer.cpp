#include "../breath.hpp"
#include "../combustion.hpp"

namespace sim {
namespace {

using namespace literals;

/// Transfer ports, exhaust port and exhaust screen of a two-stroke, in a row.
///
/// Near the bottom of the stroke the piston bares the ports and what the crankcase has compressed
/// goes over; a share of it is kept, the rest goes straight out. Nothing comes back: at part
/// throttle the crankcase stays filled to the outside's pressure. It also says what the charge is
/// worth: how rich, how much of its liquid wets the plug. source:  isentropic flow, discharge 0.7;
/// port timing and trapping efficiency from memory
struct Transfer {
    Area area;
    Ratio opens;
    Area exhaust_area;
    Ratio trapping;
    Volume sweep;
    Ratio tightness;

    enum In : std::size_t { from, cosine = from + mixture_count, head_temperature, fired, reads };
    enum Out : std::size_t {
        fuel,
        light,
        water,
        air,
        vapour,
        trapped_air,
        richness,
        wetting,
        writes
    };

    static void wire(Wiring& w)
    {
        read_mixture(w, "a");
        w.read(w.of("engine", "cosine"));
        w.read(w.of("head", "temperature"));
        w.read(w.of("engine", "charge"));
        give_contents(w, "a", "exhaust");
        w.publish("trapped_air");
        w.publish("richness");
        w.publish("wetting_rate");
        w.reading("air_flow", "g/s");
    }

    void prepare(const Surroundings& s)
    {
        outside_ = s.pressure.si;
        fuel_ = s.fuel;
        stoichiometric_ = stoichiometric_ratio(s.fuel);
        exhaust_loss_ = 1.0 / (0.49 * exhaust_area.si * exhaust_area.si + 1e-20);
    }

    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        const Mixture<S> mixture = mixture_at(in, from);
        const S outside = in[cosine] * 0.0 + outside_;
        const S bared = smooth_step(-in[cosine], opens.si, 1.0);
        const S port =
            bared * (0.7 * area.si) * smooth_step(mixture.pressure - outside, 0.0, 4000.0);
        const S through = port / sqrt(1.0 + port * port * exhaust_loss_);
        const Breath<S> b = breathe(mixture, outside, through, sweep.si);
        put_flow(b, out);
        out[trapped_air] = b.air * (trapping.si * tightness.si);

        // What a litre of mixture holds: moles of gas, and the liquid that goes along with it.
        const S moles = mixture.pressure / (mixture.temperature * gas_constant);
        const S liquid = mixture.fuel * (1.0 / sweep.si);
        const S light_share = mixture.light / (mixture.fuel + 1e-9);
        const S hot = evaporated_share(in[head_temperature], smooth_step(in[fired], 0.0, 1.0),
                                       reid_left(fuel_, light_share));
        const S vapour_mass = moles * mixture.vapour * vapour_molar_mass;
        const S air_mass = moles * mixture.air * air_molar_mass;
        out[richness] = (vapour_mass + liquid * hot) * stoichiometric_ / (air_mass + 1e-4);
        out[wetting] = b.fuel * (1.0 - hot) + b.water;
    }

    static void show(const double* /*in*/, const double* out, double* shown)
    {
        shown[0] = out[air] * air_molar_mass;
    }

private:
    double outside_ = 101325.0;
    double stoichiometric_ = 14.6;
    double exhaust_loss_ = 0.0;
    FuelBlend fuel_;
};

constexpr std::tuple parameters{
    parameter("area", "area of the ports at bottom dead centre", &Transfer::area, 1.0_mm2,
              2000.0_mm2),
    parameter("opens", "minus the cosine of the crank angle at which they open", &Transfer::opens,
              0.0_ratio, 0.95_ratio),
    parameter("exhaust_area", "open area of exhaust and screen", &Transfer::exhaust_area, 0.0_mm2,
              2000.0_mm2),
    parameter("trapping", "share of the fresh charge that is kept", &Transfer::trapping, 0.1_ratio,
              1.0_ratio),
    parameter("sweep", "air that renews the fuel on the walls", &Transfer::sweep, 5.0_mL,
              5000.0_mL),
    parameter("tightness", "compression that is left", &Transfer::tightness, 0.0_ratio, 1.0_ratio),
};

const RegisterPart<Transfer> registered{"transfer", "Transfer and exhaust ports", parameters};

} // namespace
} // namespace sim
