#include "scenes/present/fuel_path.hpp"

#include "scenes/present/part_finder.hpp"
#include "scenes/present/readout.hpp"

#include <array>

namespace scenes {
namespace {

struct Family {
    std::string_view kind; ///< the part that tells it
    std::unique_ptr<const FuelPath> (*make)(const sim::Simulator&);
};
constexpr std::array families{Family{"float_needle", float_path},
                              Family{"metering_needle", diaphragm_path}};

} // namespace

double FuelHeads::at(std::string_view gauge) const
{
    const auto found = std::ranges::find(gauges, gauge, &HeadGauge::name);
    if (found == gauges.end()) {
        throw sim::RequestError("the fuel's path has no tap point \"" + std::string(gauge) + "\"");
    }
    return found->head;
}

FuelHeads in_shown_units(FuelHeads heads)
{
    constexpr double millimetre = 1e-3;
    const Readout readout = readout_of("mm");
    const auto turn = [&](double& head) { head = readout.shown(head * millimetre); };
    for (HeadGauge& gauge : heads.gauges) {
        turn(gauge.head);
        turn(gauge.low);
        turn(gauge.high);
    }
    for (HeadStation& station : heads.stations) {
        turn(station.before);
        turn(station.after);
    }
    turn(heads.lip);
    turn(heads.low);
    turn(heads.high);
    return heads;
}

std::unique_ptr<const FuelPath> find_fuel_path(const sim::Simulator& machine)
{
    for (const Family& family : families) {
        if (has_kind(machine.rig(), family.kind)) {
            return family.make(machine);
        }
    }
    throw sim::RequestError("the rig " + machine.rig().id +
                            " has no carburetor whose grade line the bench knows");
}

} // namespace scenes
