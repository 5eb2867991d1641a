#include "../fluid.hpp"
#include "../part.hpp"

namespace sim {
namespace {

using namespace literals;

/// The fuel standing in a well and its nozzle, up to the lip it leaves by.
///
/// Its gas is the air of the throat, drawn up a little by the air bleed: with bleed and nozzle as
/// two holes in a row the pressure over the column is
///   p_out + (p_horn - p_out) A_bleed^2 / (A_bleed^2 + A_nozzle^2).
/// Fuel over the lip is carried off by fast air, or runs down the throat when there is none.
/// source:  two orifices in series; entrainment speeds chosen: drops leave a lip in a few m/s of
/// air
struct FuelColumn {
    Length bore;
    Length lip;
    Length bleed_bore;
    Ratio bleed_open;
    Length nozzle_bore;
    Duration lip_time;

    enum In : std::size_t { fuel, water, temperature, horn, outlet, air_speed, spilled, reads };
    enum Out : std::size_t {
        height,
        fuel_share,
        water_share,
        pressure_open,
        pressure_rest,
        carried_fuel,
        carried_water,
        spilled_fuel,
        spilled_water,
        writes
    };

    void wire(Wiring& w)
    {
        const double mass = 745.0 * 0.7853981633974483 * (bore * bore * lip).si;
        w.state({"fuel", 0.02 * mass, 0.0, 1.0, 1.0, 0.0});
        w.state({"water", 0.02 * mass, 0.0, 1.0, 0.0, 0.0});
        w.state({.name = "spilled", .scale = 1e-4});
        w.read(w.own("fuel"));
        w.read(w.own("water"));
        w.read(w.of("warmth", "temperature"));
        w.read(w.of("horn", "horn_pressure"));
        w.read(w.link("outlet"));
        w.read(w.of("horn", "air_speed"));
        w.read(w.own("spilled"));
        w.publish("height");
        w.publish("fuel_share");
        w.publish("water_share");
        w.publish("pressure_open");
        w.publish("pressure_rest");
        w.flow("carried_fuel", {{w.own("fuel"), -1.0}, {w.of("runner", "film_fuel"), 1.0}});
        w.flow("carried_water", {{w.own("water"), -1.0}, {w.of("runner", "film_water"), 1.0}});
        w.flow(
            "spilled_fuel",
            {{w.own("fuel"), -1.0}, {w.of("runner", "film_fuel"), 1.0}, {w.own("spilled"), 1.0}});
        w.flow("spilled_water", {{w.own("water"), -1.0}, {w.of("runner", "film_water"), 1.0}});
        w.reading("spill", "mL");
        w.reading("height", "mm");
        w.reading("pressure", "kPa");
    }

    void prepare(const Surroundings& s)
    {
        area_ = 0.7853981633974483 * bore.si * bore.si;
        const double bleed = bleed_bore.si * bleed_bore.si * bleed_open.si;
        const double nozzle = nozzle_bore.si * nozzle_bore.si;
        bleed_share_ = bleed * bleed / (bleed * bleed + nozzle * nozzle);
        outside_ = s.pressure.si;
        fuel_ = s.fuel;
    }

    template <class S>
    void evaluate(const std::array<S, reads>& in, std::array<S, writes>& out) const
    {
        // Shares in proportion to what there is, so that each ends with it; a cubic tenth of a
        // millimetre or so keeps them defined in an empty column.
        const S fuel_volume = in[fuel] / fuel_density(fuel_.density, in[temperature]);
        const S water_volume = in[water] * (1.0 / water_density);
        const S volume = fuel_volume + water_volume;
        out[height] = volume * (1.0 / area_);
        out[fuel_share] = fuel_volume / (volume + 1e-12);
        out[water_share] = water_volume / (volume + 1e-12);
        out[pressure_open] = in[outlet] + (in[horn] - in[outlet]) * bleed_share_;
        out[pressure_rest] = outside_;
        // The lip is a millimetre or so of rounded edge: fuel begins to leave just under it.
        const S over = positive_part(out[height] - lip.si, 3e-4);
        const S share = over / (out[height] + 1e-4) * (1.0 / lip_time.si);
        const S carried = smooth_step(in[air_speed], 1.5, 4.0);
        out[carried_fuel] = in[fuel] * share * carried;
        out[carried_water] = in[water] * share * carried;
        out[spilled_fuel] = in[fuel] * share * (1.0 - carried);
        out[spilled_water] = in[water] * share * (1.0 - carried);
    }

    void show(const double* in, const double* out, double* shown) const
    {
        shown[0] = in[spilled] / fuel_density(fuel_.density, in[temperature]);
        shown[1] = out[height];
        shown[2] = out[pressure_open] - outside_;
    }

private:
    double area_ = 1e-5;
    double bleed_share_ = 0.0;
    double outside_ = 101325.0;
    FuelBlend fuel_;
};

constexpr std::tuple parameters{
    parameter("bore", "bore of the well", &FuelColumn::bore, 0.5_mm, 10.0_mm),
    parameter("lip", "height of the lip over the jet", &FuelColumn::lip, 1.0_mm, 80.0_mm),
    parameter("bleed_bore", "bore of the air bleed", &FuelColumn::bleed_bore, 0.0_mm, 3.0_mm),
    parameter("bleed_open", "share of the air bleed that is open", &FuelColumn::bleed_open,
              0.0_ratio, 1.0_ratio),
    parameter("nozzle_bore", "bore of the nozzle", &FuelColumn::nozzle_bore, 0.3_mm, 6.0_mm),
    parameter("lip_time", "time a film takes to leave the lip", &FuelColumn::lip_time, 0.0005_s,
              0.05_s),
};

const RegisterPart<FuelColumn> registered{"fuel_column", "Well and nozzle", parameters};

} // namespace
} // namespace sim
