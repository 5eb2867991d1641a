#pragma once

#include "scenes/present/engine_sound.hpp"

#include <vector>

namespace scenes {

/// Tells from an engine's speed when it fires, and which charges do not light.
///
/// Speed runs evenly from moment to moment. Where the crank angle is known the count of turns is
/// held to it, and firings fall on top dead centre. Which charges fail is a seeded sequence: the
/// same speeds and shares give the same misfires.
class FiringClock {
public:
    /// valid:   turns_per_firing 2 of a four-stroke, 1 of a two-stroke
    explicit FiringClock(double turns_per_firing, std::uint64_t seed = 1)
        : turns_per_firing_(turns_per_firing), seed_(seed)
    {
    }

    /// Goes on to a moment and adds the firings on the way.
    ///
    /// valid:   moments in order of time
    void take(const EngineMoment& moment, std::vector<Firing>& firings);
    /// Forgets the last moment, so that a gap in time makes no firings; the seed's sequence goes
    /// on.
    void leave_gap() { has_last_ = false; }

private:
    [[nodiscard]] double turned_by(const EngineMoment& moment) const;

    double turns_per_firing_;
    std::uint64_t seed_;
    std::uint64_t count_ = 0;
    double turns_ = 0.0; ///< since the last firing
    EngineMoment last_;
    bool has_last_ = false;
};

} // namespace scenes
