#pragma once

#include "scenes/bench/section_sheet.hpp"

namespace scenes {

/// A room in which liquid and gas are spread alike: bubbles in fuel, or drops in gas.
struct Mix {
    Spot low; ///< the box that bubbles keep to
    Spot high;
    double liquid = 0.0; ///< its share of the volume
    double drift = 0.0;  ///< moves the bubbles, in millimetres to the right
};
/// Fills a space with a mix, bubbles or drops covering as much of it as their share.
void draw_mix(const Sheet& sheet, const Outline& space, const Mix& mix);

/// A thin sheet clamped at both ends, from left to right, its middle risen.
///
/// unit:    half, plane and rise in millimetres
Outline sheet_line(double half, double plane, double rise);

/// That sheet cut, with its clamped rims as wide as the castings.
void draw_sheet(const Sheet& sheet, const Outline& line, double wall);

/// A thin flap on its seat, hinged at one end and lifted by a share of how far it can go.
struct Flap {
    Spot hinge;
    double length = 2.3;
    double open = 0.0;
    double most = 0.5; ///< angle when wide open, positive anticlockwise
};
void draw_flap(const Sheet& sheet, const Flap& flap);

/// How far a flap stands open for a flow.
///
/// unit: flow and full in cubic metres per second; their root, as an orifice's area would go
double flap_share(double flow, double full);

} // namespace scenes
