#include "tests/reference/sheets.hpp"

#include <cmath>

using namespace sim;

namespace tests {

namespace {
Tick tick_at(double seconds)
{
    return std::llround(seconds / tick_length);
}
} // namespace

std::shared_ptr<const Rig> mower()
{
    static const auto rig = std::make_shared<const Rig>(load_rig("mower"));
    return rig;
}

std::shared_ptr<const Rig> mower_with(Fault fault)
{
    auto rig = std::make_shared<Rig>(*mower());
    rig->faults.push_back(std::move(fault));
    return rig;
}

TimedCommand set(double seconds, std::string control, double to)
{
    return {tick_at(seconds), SetControl{std::move(control), to}};
}

TimedCommand act(double seconds, std::string doing, double to)
{
    return {tick_at(seconds), Do{std::move(doing), to}};
}

TimedCommand break_at(double seconds, std::string fault, double severity)
{
    return {tick_at(seconds), SetFault{std::move(fault), severity}};
}

std::vector<TimedCommand> cold_start()
{
    return {set(1.0, "tap", 1.0),   set(30.0, "choke", 1.0), act(30.0, "pull_cord"),
            act(33.0, "pull_cord"), set(38.0, "choke", 0.5), set(45.0, "choke", 0.0)};
}

std::vector<TimedCommand> after_cold_start(std::vector<TimedCommand> more)
{
    auto sheet = cold_start();
    sheet.insert(sheet.end(), more.begin(), more.end());
    return sheet;
}

} // namespace tests
