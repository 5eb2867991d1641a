#include "flow_law.hpp"

#include <cmath>

namespace sim {

double pipe_friction_factor(double reynolds, double relative_roughness)
{
    const double wall = std::pow(7.0 / reynolds, 0.9) + 0.27 * relative_roughness;
    const double turbulent = std::pow(-2.457 * std::log(wall), 16.0);
    const double transition = std::pow(37530.0 / reynolds, 16.0);
    const double laminar = std::pow(8.0 / reynolds, 12.0);
    return 8.0 * std::pow(laminar + std::pow(turbulent + transition, -1.5), 1.0 / 12.0);
}

double long_hole_discharge(double reynolds, double length_over_diameter)
{
    const double ultimate = 0.827 - 0.0085 * length_over_diameter;
    const double viscous = 20.0 / reynolds * (1.0 + 2.25 * length_over_diameter);
    const double decades = std::log10(0.00015 * reynolds);
    const double dip = 0.005 * length_over_diameter / (1.0 + 7.5 * decades * decades);
    return 1.0 / (1.0 / ultimate + viscous - dip);
}

} // namespace sim
