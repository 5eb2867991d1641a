#pragma once

#include "scenes/bench/section_room.hpp"

#include "sim/rig.hpp"

namespace scenes {

/// A jet with the well or passage it feeds.
struct CircuitPlan {
    Spot jet; ///< its mouth
    double jet_bore = 1.0;
    double jet_length = 1.0;
    double bore = 2.0;
    double lip = 0.0; ///< height of the outlet over the jet
    double outlet_bore = 1.0;
    [[nodiscard]] double outlet() const { return jet.y + lip; }
};

/// All sizes of the section, from the rig's own numbers, and where its parts stand.
///
/// The bowl stands where it stands in the machine. The throat is turned into the plane beside it
/// with its true heights: level and lip compare along a straight line. The tank is reduced.
struct SectionPlan {
    /// throws:  AssetError when the rig lacks a part the section is made of
    explicit SectionPlan(const sim::Rig& rig);

    RoomPlan bowl;
    RoomPlan tank;
    Reduction tank_view;
    CircuitPlan main;
    CircuitPlan idle;

    Spot seat; ///< middle of the seat's edge
    double seat_bore = 2.0;
    double lever_ratio = 3.0;
    Spot float_point; ///< of the float, at its waterline with the needle just shut
    double float_half = 6.0;
    Spot hinge;

    double gasket = 27.0; ///< height of the bowl's gasket
    Spot bowl_vent;
    double bowl_vent_bore = 1.0;
    Spot primer_hole;
    double primer_bore = 2.0;
    double main_bleed_bore = 1.1;
    double idle_bleed_bore = 0.8;
    double drain_bore = 2.8;
    double cap_vent_bore = 1.0;
    double tap_bore = 4.0;
    double hose_bore = 6.0;
    double bulb_volume = 5000.0; ///< cubic millimetres
    double bulb_radius = 13.0;
    double bulb_hole_bore = 1.0;
    double cord_length = 750.0;

    double horn_bore = 21.0;
    double venturi_bore = 16.0;
    double horn_axis = 27.0; ///< height of the horn's centre line
    double choke_relief = 0.3;
    double idle_stop = 0.25;

    // Where things stand that the rig has no place for.
    double left = 0.0; ///< outer face of the body
    double wall = 0.0; ///< right face of the wall between bowl and air
    double base = 0.0; ///< underside of the body
    double lid_top = 0.0;
    double inlet = 0.0;    ///< height of the fuel inlet
    double mouth = 0.0;    ///< where the horn begins
    double choke = 0.0;    ///< shaft of the choke plate
    double nozzle = 0.0;   ///< middle of nozzle and venturi
    double throttle = 0.0; ///< shaft of the throttle plate
    double flange = 0.0;   ///< joint of carburetor and runner
    double end = 0.0;      ///< where the runner is cut off
    double feed = 0.0;     ///< centre line of tank outlet, tap and filter
    double filter_foot = 0.0;
    double tap_foot = 0.0;
    double neck_foot = 0.0;
    double floor = 0.0;
    Outline hose_line; ///< centre line, from the filter to the inlet

    [[nodiscard]] double horn_floor() const { return horn_axis - horn_bore / 2.0; }
    [[nodiscard]] double horn_roof() const { return horn_axis + horn_bore / 2.0; }
    [[nodiscard]] double idle_riser() const { return bowl.high.x + 4.5; }
    /// Path of the fuel from a jet to its outlet, along the middle of the passage.
    [[nodiscard]] Outline main_passage() const;
    [[nodiscard]] Outline idle_passage() const;
    /// From the throat's bore upstream of the venturi to the well.
    [[nodiscard]] Outline main_bleed() const;
    /// From the throat's bore into the idle passage.
    [[nodiscard]] Outline idle_bleed() const;
    /// Where the starter's cord leaves its housing.
    [[nodiscard]] Spot cord_eye() const;
    [[nodiscard]] Spot low() const { return {tank_view(tank.low).x - 3.0, floor - 1.5}; }
    [[nodiscard]] Spot high() const { return {end + 1.5, tank_view(tank.high).y + 5.5}; }
};

} // namespace scenes
