#pragma once

namespace sim {

/// How closely the stepper follows the equations.
///
/// relative: of a state's own size; absolute: in units of the state's `scale`
struct Tolerance {
    double relative = 5e-8;
    double absolute = 5e-8;
};

} // namespace sim
