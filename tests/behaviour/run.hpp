#pragma once

#include "sim/simulator.hpp"

#include <cmath>
#include <memory>
#include <string_view>

namespace tests {

/// A machine in a test: commands at seconds, readings in the units people use.
class Run {
public:
    explicit Run(double celsius = 20.0, std::string_view rig = "mower")
        : Run(std::make_shared<const sim::Rig>(sim::load_rig(rig)), celsius)
    {
    }
    /// A machine with something added, such as a doing.
    explicit Run(std::shared_ptr<const sim::Rig> rig, double celsius = 20.0)
        : machine_(std::move(rig), {{101325.0}, {273.15 + celsius}})
    {
    }

    Run& set(double at, const char* control, double to)
    {
        return post(at, sim::SetControl{control, to});
    }
    Run& act(double at, const char* doing, double to = 0.0) { return post(at, sim::Do{doing, to}); }
    Run& fault(double at, const char* id, double severity = 1.0)
    {
        return post(at, sim::SetFault{id, severity});
    }
    Run& post(double at, sim::Command command)
    {
        machine_.post(std::move(command), tick(at));
        return *this;
    }

    /// Taps open at once, the bowl fills; choke shut, then a pull every three seconds until the
    /// engine runs by itself; choke open after. Gives how many pulls it took, 0 for no start.
    int start(double at, double choke = 1.0, int most_pulls = 6)
    {
        set(at, "tap", 1.0).set(at, "choke", choke);
        double now = at + 35.0;
        for (int pull = 1; pull <= most_pulls; ++pull) {
            act(now, "pull_cord");
            now += 4.0;
            if (to(now).speed() > 600.0) {
                set(now + 1.0, "choke", 0.0).to(now + 2.0);
                return pull;
            }
        }
        return 0;
    }

    Run& to(double at)
    {
        machine_.advance(tick(at));
        return *this;
    }

    [[nodiscard]] double now() const { return machine_.seconds(); }
    double speed() { return read("engine.speed"); }
    /// A reading in its own unit.
    double read(std::string_view name)
    {
        const sim::Network::Reading& reading = machine_.readings()[machine_.reading_index(name)];
        const double si = machine_.read(name);
        if (const auto* unit = sim::find_unit(reading.unit)) {
            return (si - unit->offset) / unit->factor;
        }
        return si;
    }
    /// Mean of a reading over the next seconds.
    double mean(std::string_view name, double seconds) { return over(name, seconds).mean; }
    /// Least, greatest and mean of a reading over the next seconds, seen every 20 ms.
    struct Spread {
        double low = 1e300;
        double high = -1e300;
        double mean = 0.0;
    };
    Spread over(std::string_view name, double seconds)
    {
        Spread spread;
        const int count = static_cast<int>(seconds / 0.02);
        const double from = now();
        for (int i = 1; i <= count; ++i) {
            const double value = to(from + 0.02 * i).read(name);
            spread.low = std::min(spread.low, value);
            spread.high = std::max(spread.high, value);
            spread.mean += value / count;
        }
        return spread;
    }

    sim::Simulator& machine() { return machine_; }

private:
    static sim::Tick tick(double seconds)
    {
        return static_cast<sim::Tick>(std::llround(seconds / sim::tick_length));
    }
    sim::Simulator machine_;
};

} // namespace tests
