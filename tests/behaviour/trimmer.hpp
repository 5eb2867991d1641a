#pragma once

#include "run.hpp"

namespace tests {

/// The trimmer in a test, and its operator.
class Trimmer : public Run {
public:
    explicit Trimmer(double celsius = 20.0) : Run(celsius, "trimmer") {}
    explicit Trimmer(std::shared_ptr<const sim::Rig> rig) : Run(std::move(rig)) {}

    /// Squeezes the bulb every 1.2 s; gives after how many squeezes fuel, not air, comes back to
    /// the tank: a tenth of the return hose is liquid. 0 when it never does.
    int purge(int squeezes = 8)
    {
        int first = 0;
        for (int i = 1; i <= squeezes; ++i) {
            const double at = now();
            act(at, "squeeze_bulb").act(at + 0.5, "release_bulb").to(at + 1.2);
            if (first == 0 && read("return_hose.liquid") > 10.0) {
                first = i;
            }
        }
        return first;
    }

    /// Choke shut and throttle half open, then a pull every two seconds. At the first pop the choke
    /// goes half open, and all the way two seconds after the engine has come to run by itself.
    /// Gives the pulls it took, 0 for no start.
    int pull_until_it_runs(double choke = 1.0, int most_pulls = 10)
    {
        set(now(), "choke", choke).set(now(), "throttle", 0.5);
        for (int pull = 1; pull <= most_pulls; ++pull) {
            const double at = now();
            act(at, "pull_cord").to(at + 0.3);
            for (int look = 0; look < 5; ++look) {
                if (speed() > 2000.0) { // faster than an arm
                    set(now(), "choke", 0.5 * choke);
                }
                to(now() + 0.1);
            }
            if (to(at + 2.0).speed() > 2000.0) {
                set(now(), "choke", 0.0).to(now() + 2.0);
                return speed() > 2000.0 ? pull : 0;
            }
        }
        return 0;
    }

    /// Purged and started, throttle as given for some seconds.
    Trimmer& running(double throttle, double seconds)
    {
        to(now() + 0.5);
        purge();
        pull_until_it_runs();
        return at_throttle(throttle, seconds);
    }

    /// Choke shut, throttle half open, one pull; whether it fires.
    bool fires_at_a_pull()
    {
        set(now(), "choke", 1.0).set(now(), "throttle", 0.5).act(now(), "pull_cord");
        bool fired = false;
        for (int look = 0; look < 12 && !fired; ++look) {
            fired = to(now() + 0.05).speed() > 1400.0; // an arm comes to 1,150 rpm
        }
        set(now(), "choke", fired ? 0.5 : 1.0).to(now() + 1.5);
        return fired;
    }

    /// Choke half open for so many seconds more, then open; whether it still runs after ten.
    bool runs_on_after(double half_choked)
    {
        to(now() + half_choked).set(now(), "choke", 0.0).to(now() + 10.0);
        return speed() > 2000.0;
    }

    /// Choke and trigger as given, one pull; whether it runs two seconds later.
    bool starts_at_one_pull(double choke, double throttle)
    {
        set(now(), "choke", choke).set(now(), "throttle", throttle).act(now(), "pull_cord");
        to(now() + 0.5);
        const bool fired = speed() > 2000.0;
        set(now(), "choke", 0.5 * choke).to(now() + 1.5);
        return fired && speed() > 2000.0;
    }

    Trimmer& at_throttle(double throttle, double seconds)
    {
        set(now(), "throttle", throttle).to(now() + seconds);
        return *this;
    }
};

} // namespace tests
