#pragma once

#include "scenes/bench/section_room.hpp"

#include "sim/rig.hpp"

#include <algorithm>

namespace scenes {

/// A flat chamber on one side of a diaphragm.
struct FlatRoom {
    double half = 8.0;  ///< half its width
    double plane = 0.0; ///< height of the diaphragm at rest
    double depth = 1.0; ///< from the diaphragm to the opposite wall
};

/// All sizes of the hand-held machine's section, from the rig's own numbers, and where its parts
/// stand.
///
/// The carburetor's two diaphragms are drawn at the size that their areas and travels give, with
/// the needle between them at its true height. Throat, hoses, engine, bulb and tank, of which less
/// must be seen, are reduced. Level zero is the metering diaphragm at rest.
struct TrimmerPlan {
    /// throws:  AssetError when the rig lacks a part the section is made of
    explicit TrimmerPlan(const sim::Rig& rig);

    // How much smaller things are drawn than the carburetor's diaphragms.
    static constexpr double throat_scale = 0.5;
    static constexpr double hose_scale = 0.5;
    static constexpr double bulb_scale = 0.5;
    static constexpr double engine_scale = 1.0 / 6.0;
    static constexpr double tank_scale = 0.2;
    static constexpr double travel_scale = 6.0; ///< of diaphragms, lever and needle
    static constexpr double cord_scale = 0.05;

    FlatRoom metering; ///< above the diaphragm
    FlatRoom dry;      ///< below it
    FlatRoom pump;     ///< below its diaphragm
    FlatRoom pulse;    ///< above it
    double dry_hole = 1.0;
    double pulse_bore = 1.5;

    Spot seat; ///< middle of the seat's edge
    double seat_bore = 1.4;
    double most_lift = 0.25;
    double lever_ratio = 2.3;
    double lever_gap = 0.1; ///< free height between diaphragm and lever
    double screen_bore = 2.8;
    double flap_bore = 1.2;
    double outlet_flap = 2.5; ///< x of its hole
    double inlet_flap = 6.9;

    RoomPlan tank;
    Reduction tank_view;
    Spot cap;
    Spot vent;
    Spot felt; ///< half width and half height of the weighted pick-up, as drawn
    double hose_bore = 1.2;
    Outline suction; ///< centre line, from the tank to the pump
    Outline bulb_line;
    Outline return_line;
    Outline crossed_bulb_line; ///< both with their ends on each other's nipples of the bulb
    Outline crossed_return_line;

    double bulb_volume = 2500.0; ///< cubic millimetres
    double bulb_radius = 5.3;
    Spot bulb; ///< middle of the dome's foot

    double horn_bore = 6.0;
    double venturi_bore = 4.2;
    double idle_stop = 0.1;
    double choke_relief = 0.15;
    double high_turns = 4.0; ///< of the screws, from shut to the end of the control's range
    double low_turns = 4.0;

    double stroke = 5.0;
    double piston_half = 2.6;
    double rod = 8.0;
    Spot crank; ///< middle of the crankshaft
    double crank_room = 4.0;
    double cord_length = 800.0;

    // Where things stand that the rig has no place for.
    double wall = 14.7;     ///< half the carburetor's width
    double roof = 2.3;      ///< of the metering chamber
    double base = -4.4;     ///< underside of the metering cover
    double gallery = 9.5;   ///< centre line
    double entry = 12.0;    ///< centre line of the pump's inlet
    double top = 18.0;      ///< of the pump cover
    double axis = 11.7;     ///< of the throat
    double high_line = 5.2; ///< centre line of the high-speed passage
    double low_line = 3.4;
    double mouth = -18.2;
    double choke = -20.1;
    double nozzle = -23.2;
    double throttle = -26.6;
    double flange = -29.2;  ///< joint of carburetor and adapter
    double adapter = -31.8; ///< joint of adapter and cylinder
    double floor = -19.2;

    /// A diaphragm's travel as drawn: enlarged, and ever less so towards the wall that it nears.
    ///
    /// Tenths of a millimetre would not be seen. The lever is drawn with the same law, so that it
    /// and the diaphragm touch when they do.
    /// unit:    millimetres; room is the way to the wall
    [[nodiscard]] static double shown_travel(double travel, double room);
    /// How far the lever's long end, and the needle's tip, stand from where they rest.
    [[nodiscard]] double shown_lever(double lift) const;
    [[nodiscard]] double shown_lift(double lift) const { return shown_lever(lift) / lever_ratio; }

    [[nodiscard]] double horn_floor() const { return axis - horn_bore / 2.0; }
    [[nodiscard]] double horn_roof() const { return axis + horn_bore / 2.0; }
    [[nodiscard]] double pump_floor() const { return pump.plane - pump.depth; }
    /// The way the metering diaphragm has from rest to the chamber's roof, its button kept clear.
    [[nodiscard]] double metering_room() const { return roof - 1.0; }
    [[nodiscard]] double hinge() const { return seat.x * lever_ratio / (1.0 + lever_ratio); }
    /// Over the spark plug, with the piston's pin two strokes over the crank at its highest.
    [[nodiscard]] double engine_top() const { return crank.y + 2.0 * stroke + 5.6; }
    [[nodiscard]] Spot low() const { return {-47.6, floor - 0.8}; }
    [[nodiscard]] Spot high() const { return {wall + 9.6, std::max(top + 8.8, engine_top())}; }
};

} // namespace scenes
