#include "scenes/present/fuel_path.hpp"
#include "scenes/present/part_finder.hpp"
#include "scenes/present/words.hpp"
#include "sim/fluid.hpp"

namespace scenes {
namespace {

/// Chambers without a level have one pressure throughout; their heads count at their own place.
class DiaphragmPath final : public FuelPath {
public:
    explicit DiaphragmPath(const sim::Simulator& machine);
    [[nodiscard]] FuelHeads heads(std::span<const double> values, sim::Vector up) const override;
    [[nodiscard]] bool is_pulsing() const override { return true; }

private:
    struct Indices {
        std::size_t tank_pressure;
        std::size_t tank_level;
        std::size_t tank_temperature;
        std::size_t hose;
        std::size_t hose_liquid;
        std::size_t gallery;
        std::size_t screen;
        std::size_t metering;
        std::size_t throat;
    };

    Indices at_;
    sim::Density density_;
    sim::Box tank_;
    double zero_level_ = 0.0;
    sim::Vector datum_; ///< the inlet's seat
    sim::Vector hose_begin_;
    sim::Vector hose_end_;
    sim::Vector gallery_;
    sim::Vector metering_;
};

DiaphragmPath::DiaphragmPath(const sim::Simulator& machine)
    : at_{machine.reading_index("tank.pressure"),
          machine.reading_index("tank.level"),
          machine.reading_index("tank.temperature"),
          machine.reading_index("suction_hose.pressure"),
          machine.reading_index("suction_hose.liquid"),
          machine.reading_index("gallery.pressure"),
          machine.reading_index("needle.screen_drop"),
          machine.reading_index("metering.pressure"),
          machine.reading_index("intake.throat_pressure")},
      density_(machine.rig().fuel.density)
{
    const PartFinder find(machine.rig(), "the grade line");
    tank_ = find.box("tank");
    zero_level_ = find.value("tank", "zero_level");
    datum_ = find.point("needle", "seat");
    hose_begin_ = find.box("suction_hose").end_a;
    hose_end_ = find.box("suction_hose").end_b;
    gallery_ = find.box("gallery").end_a;
    metering_ = find.box("metering").end_a;
}

FuelHeads DiaphragmPath::heads(std::span<const double> values, sim::Vector up) const
{
    const double weight = fuel_density(density_, values[at_.tank_temperature]) * sim::gravity;
    const auto head = [&](double pressure, sim::Vector place) {
        return (pressure / weight + dot(place - datum_, up)) * 1e3;
    };
    const sim::Port middle = sim::find_port({tank_, tank_.centre}, up);
    const double fill = (values[at_.tank_level] + zero_level_) / tank_.size.z;
    const double surface = middle.rise * fill + middle.offset;
    const double tank = head(values[at_.tank_pressure] + weight * surface, tank_.centre);
    // What gas is in the hose weighs nothing: its column stands in for less.
    const double hose_weight = weight * values[at_.hose_liquid];
    const double pump_inlet =
        head(values[at_.hose] - hose_weight * dot(hose_end_ - hose_begin_, up), hose_end_);
    const double gallery = head(values[at_.gallery], gallery_);
    const double behind_screen = gallery - values[at_.screen] / weight * 1e3;
    const double metering = head(values[at_.metering], metering_);
    const double nozzle = head(values[at_.throat], metering_);
    return {.gauges = {{words::tank, tank, -300.0, 700.0},
                       {words::pump_inlet, pump_inlet, -300.0, 700.0},
                       {words::gallery, gallery, -500.0, 4000.0},
                       {words::metering, metering, -300.0, 100.0},
                       {words::nozzle, nozzle, -500.0, 100.0}},
            .stations = {{words::tank, tank, tank},
                         {words::suction, tank, pump_inlet},
                         {words::pump, pump_inlet, gallery},
                         {words::inlet_screen, gallery, behind_screen},
                         {words::needle, behind_screen, metering},
                         {words::metering, metering, metering},
                         {words::circuits, metering, nozzle},
                         {words::nozzle, nozzle, nozzle}},
            .lip = head(0.0, metering_),
            .lip_name = words::open_air,
            .low = -500.0,
            .high = 3500.0};
}

} // namespace

std::unique_ptr<const FuelPath> diaphragm_path(const sim::Simulator& machine)
{
    return std::make_unique<DiaphragmPath>(machine);
}

} // namespace scenes
