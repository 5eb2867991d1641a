#include "room.hpp"

namespace sim {

void wire_room(Wiring& wiring, Volume volume)
{
    const double mass = 745.0 * volume.si;
    const double moles = 101325.0 * volume.si / (gas_constant * 293.15);
    wiring.state({"fuel", 0.01 * mass, 0.0, 1.5 * mass, 1.0, 0.0});
    wiring.state({"light", 0.01 * mass, 0.0, 1.5 * mass, 0.0, 0.0});
    wiring.state({"water", 0.01 * mass, 0.0, 2.0 * mass, 0.0, 0.0});
    wiring.state({"air", 0.01 * moles, 0.0, 1e3 * moles, 0.0, 1.0});
    wiring.state({"vapour", 0.01 * moles, 0.0, 1e3 * moles, vapour_molar_mass, 0.0});
}

void read_room(Wiring& wiring)
{
    for (const char* name : {"fuel", "light", "water", "air", "vapour"}) {
        wiring.read(wiring.own(name));
    }
}

void give_room(Wiring& wiring)
{
    for (const char* name : {"pressure", "fill", "water_fill", "air_share", "vapour_share",
                             "light_share", "temperature"}) {
        wiring.publish(name);
    }
    wiring.flow("evaporation", {{wiring.own("vapour"), 1.0},
                                {wiring.own("fuel"), -vapour_molar_mass},
                                {wiring.own("light"), -vapour_molar_mass}});
}

void shelve_room(const Room& room, const Surroundings& surroundings, double share,
                 std::span<double> states)
{
    const double temperature = surroundings.temperature.si;
    const double liquid = share * room.volume;
    const double fuel = liquid * fuel_density(room.fuel.density, temperature);
    const double light = fuel * room.fuel.light_share.si;
    const double moles =
        surroundings.pressure.si * (room.volume - liquid) / (gas_constant * temperature);
    const double saturated = gasoline_vapour_pressure(temperature, room.fuel.reid_pressure.si);
    const double vapour = liquid > 0.0 ? std::min(saturated / surroundings.pressure.si, 0.9) : 0.0;
    states[room_fuel] = fuel;
    states[room_light] = light;
    states[room_water] = 0.0;
    states[room_air] = moles * (1.0 - vapour);
    states[room_vapour] = moles * vapour;
}

} // namespace sim
