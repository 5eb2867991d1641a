#include "scenes/present/fuel_path.hpp"
#include "scenes/present/part_finder.hpp"
#include "scenes/present/words.hpp"
#include "sim/fluid.hpp"

namespace scenes {
namespace {

class FloatPath final : public FuelPath {
public:
    explicit FloatPath(const sim::Simulator& machine);
    [[nodiscard]] FuelHeads heads(std::span<const double> values, sim::Vector up) const override;
    [[nodiscard]] bool is_pulsing() const override { return false; }

private:
    struct Indices {
        std::size_t screen;
        std::size_t tap;
        std::size_t filter;
        std::size_t outlet;
        std::size_t inlet;
        std::size_t bowl_pressure;
        std::size_t bowl_level;
        std::size_t bowl_temperature;
        std::size_t column;
        std::size_t nozzle_pressure;
    };

    [[nodiscard]] double bowl_surface(double level, sim::Vector up) const;

    Indices at_;
    sim::Density density_;
    sim::Box bowl_;
    double zero_level_ = 0.0;
    sim::Vector datum_; ///< middle of the healthy shut-off level
    sim::Vector outlet_;
    sim::Vector seat_;
    sim::Vector jet_;
    double lip_ = 0.0;
    double duty_ = 1.0;
};

FloatPath::FloatPath(const sim::Simulator& machine)
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
    const PartFinder find(machine.rig(), "the grade line");
    bowl_ = find.box("bowl");
    zero_level_ = find.value("bowl", "zero_level");
    datum_ = bowl_.centre;
    datum_.z += zero_level_ - 0.5 * bowl_.size.z;
    outlet_ = find.point("supply", "a");
    seat_ = find.point("needle", "seat");
    jet_ = find.point("main_jet", "jet");
    duty_ = find.value("main_jet", "duty");
    lip_ = find.value("nozzle", "lip");
}

double FloatPath::bowl_surface(double level, sim::Vector up) const
{
    const sim::Port port = sim::find_port({bowl_, jet_}, up);
    const double fill = (level + zero_level_) / bowl_.size.z;
    return port.rise * fill + port.offset + dot(jet_ - datum_, up);
}

FuelHeads FloatPath::heads(std::span<const double> values, sim::Vector up) const
{
    const double weight =
        fuel_density(density_, values[at_.bowl_temperature]) * sim::gravity; // Pa per metre
    const auto head = [&](double pressure, double height) {
        return (pressure / weight + height) * 1e3;
    };
    const auto drop = [&](std::size_t index) { return head(values[index], 0.0); };
    const double outlet = head(values[at_.outlet], dot(outlet_ - datum_, up));
    const double hose_end = head(values[at_.inlet], dot(seat_ - datum_, up));
    const double bowl = head(values[at_.bowl_pressure], bowl_surface(values[at_.bowl_level], up));
    const double foot = dot(jet_ - datum_, up);
    // At the foot of the well, as a slow gauge reads it.
    const double nozzle =
        head(duty_ * values[at_.nozzle_pressure], foot + values[at_.column] * up.z);
    const double tank = outlet + drop(at_.screen);
    const double behind_tap = outlet - drop(at_.tap);
    const double behind_filter = behind_tap - drop(at_.filter);
    return {.gauges = {{words::tank_outlet, outlet, 0.0, 250.0}, // behind the screen
                       {words::hose_end, hose_end, 0.0, 250.0},  // at the needle's seat
                       {words::bowl, bowl, -50.0, 150.0},
                       {words::nozzle, nozzle, -200.0, 50.0}},
            .stations = {{words::tank, tank, tank},
                         {words::screen, tank, outlet},
                         {words::tap, outlet, behind_tap},
                         {words::filter, behind_tap, behind_filter},
                         {words::hose, behind_filter, hose_end},
                         {words::needle, hose_end, bowl},
                         {words::main_jet, bowl, nozzle},
                         {words::lip, nozzle, nozzle}},
            .lip = head(0.0, foot + lip_ * up.z),
            .lip_name = words::lip,
            .low = -160.0,
            .high = 240.0};
}

} // namespace

std::unique_ptr<const FuelPath> float_path(const sim::Simulator& machine)
{
    return std::make_unique<FloatPath>(machine);
}

} // namespace scenes
