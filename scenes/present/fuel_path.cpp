#include "scenes/present/fuel_path.hpp"

#include "scenes/present/words.hpp"
#include "sim/error.hpp"
#include "sim/fluid.hpp"

#include <algorithm>
#include <string>

namespace scenes {
namespace {

const sim::PartSpec& part_of(const sim::Rig& rig, std::string_view id)
{
    const auto found = std::ranges::find(rig.parts, id, &sim::PartSpec::id);
    if (found == rig.parts.end()) {
        throw sim::RequestError("the rig " + rig.id + " has no part \"" + std::string(id) +
                                "\", which the bench's grade line needs");
    }
    return *found;
}

template <class Map>
auto value_in(const Map& map, const char* key, const sim::PartSpec& part)
{
    const auto found = map.find(key);
    if (found == map.end()) {
        throw sim::RequestError("the part " + part.id + " has no \"" + key +
                                "\", which the bench's grade line needs");
    }
    return found->second;
}

} // namespace

FuelPath::FuelPath(const sim::Simulator& machine)
    : at_{machine.reading_index("supply.screen_drop"),
          machine.reading_index("supply.tap_drop"),
          machine.reading_index("supply.filter_drop"),
          machine.reading_index("supply.outlet_pressure"),
          machine.reading_index("needle.inlet_pressure"),
          machine.reading_index("bowl.pressure"),
          machine.reading_index("bowl.level"),
          machine.reading_index("bowl.temperature"),
          machine.reading_index("nozzle.height"),
          machine.reading_index("nozzle.pressure")},
      density_(machine.rig().fuel.density)
{
    const sim::Rig& rig = machine.rig();
    const sim::PartSpec& bowl = part_of(rig, "bowl");
    const sim::PartSpec& supply = part_of(rig, "supply");
    const sim::PartSpec& needle = part_of(rig, "needle");
    const sim::PartSpec& jet = part_of(rig, "main_jet");
    const sim::PartSpec& nozzle = part_of(rig, "nozzle");
    bowl_ = bowl.box;
    zero_level_ = value_in(bowl.parameters, "zero_level", bowl);
    datum_ = bowl_.centre;
    datum_.z += zero_level_ - 0.5 * bowl_.size.z;
    outlet_ = value_in(supply.points, "a", supply);
    seat_ = value_in(needle.points, "seat", needle);
    jet_ = value_in(jet.points, "jet", jet);
    duty_ = value_in(jet.parameters, "duty", jet);
    lip_ = value_in(nozzle.parameters, "lip", nozzle);
}

double FuelPath::bowl_surface(double level, sim::Vector up) const
{
    const sim::Port port = sim::find_port({bowl_, jet_}, up);
    const double fill = (level + zero_level_) / bowl_.size.z;
    return port.rise * fill + port.offset + dot(jet_ - datum_, up);
}

FuelHeads FuelPath::heads(std::span<const double> values, sim::Vector up) const
{
    const double weight =
        fuel_density(density_, values[at_.bowl_temperature]) * sim::gravity; // Pa per metre
    const auto head = [&](double pressure, double height) {
        return (pressure / weight + height) * 1e3;
    };
    const auto drop = [&](std::size_t index) { return head(values[index], 0.0); };
    FuelHeads heads;
    heads.tank_outlet = head(values[at_.outlet], dot(outlet_ - datum_, up));
    heads.hose_end = head(values[at_.inlet], dot(seat_ - datum_, up));
    heads.bowl = head(values[at_.bowl_pressure], bowl_surface(values[at_.bowl_level], up));
    const double foot = dot(jet_ - datum_, up);
    heads.nozzle = head(duty_ * values[at_.nozzle_pressure], foot + values[at_.column] * up.z);
    heads.lip = head(0.0, foot + lip_ * up.z);
    const double tank = heads.tank_outlet + drop(at_.screen);
    const double behind_tap = heads.tank_outlet - drop(at_.tap);
    const double behind_filter = behind_tap - drop(at_.filter);
    heads.stations = {{{words::tank, tank, tank},
                       {words::screen, tank, heads.tank_outlet},
                       {words::tap, heads.tank_outlet, behind_tap},
                       {words::filter, behind_tap, behind_filter},
                       {words::hose, behind_filter, heads.hose_end},
                       {words::needle, heads.hose_end, heads.bowl},
                       {words::main_jet, heads.bowl, heads.nozzle},
                       {words::lip, heads.nozzle, heads.nozzle}}};
    return heads;
}

} // namespace scenes
