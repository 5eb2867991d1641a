#include "scenes/bench/section_drawing.hpp"

#include "scenes/bench/section_parts.hpp"

#include "sim/error.hpp"

#include <numbers>

namespace scenes {
namespace {

Place to_place(Spot spot)
{
    return {spot.x * 1e-3, spot.y * 1e-3};
}

sim::Vector up_of(const MachineView& machine)
{
    constexpr double degree = std::numbers::pi / 180.0;
    return sim::tilted_up({machine.control("tilt_forward") * degree},
                          {machine.control("tilt_side") * degree});
}

} // namespace

struct SectionDrawing::Parts {
    SectionPlan plan;
};

SectionDrawing::SectionDrawing(const sim::Rig& rig)
    : parts_(std::make_unique<const Parts>(Parts{SectionPlan(rig)}))
{
}

SectionDrawing::~SectionDrawing() = default;

SectionDrawing::Bounds SectionDrawing::bounds() const
{
    return {to_place(parts_->plan.low()), to_place(parts_->plan.high())};
}

void SectionDrawing::draw_still(Mesh& mesh, Text& text, const Look& look,
                                const Camera& camera) const
{
    const Sheet sheet{mesh, text, look, camera};
    const SectionPlan& plan = parts_->plan;
    draw_floor_still(sheet, plan);
    draw_throat_still(sheet, plan);
    draw_body_still(sheet, plan);
    draw_circuits_still(sheet, plan);
    draw_bulb_still(sheet, plan);
    draw_tank_still(sheet, plan);
    draw_hose_still(sheet, plan);
    draw_cord_still(sheet, plan);
    draw_detail_still(sheet, plan);
    draw_names(sheet, plan, NamePass::words);
}

void SectionDrawing::draw_moving(Mesh& mesh, Text& text, const Look& look, const Camera& camera,
                                 const MachineView& machine, double seconds) const
{
    const Sheet sheet{mesh, text, look, camera};
    const SectionPlan& plan = parts_->plan;
    const Moment moment{machine, seconds, up_of(machine)};
    draw_tank_moving(sheet, plan, moment);
    draw_hose_moving(sheet, plan, moment);
    draw_bowl_moving(sheet, plan, moment);
    draw_circuits_moving(sheet, plan, moment);
    draw_float_moving(sheet, plan, moment);
    draw_throat_moving(sheet, plan, moment);
    draw_bulb_moving(sheet, plan, moment);
    draw_cord_moving(sheet, plan, moment);
    draw_floor_moving(sheet, plan, moment);
    draw_detail_moving(sheet, plan, moment);
    draw_names(sheet, plan, NamePass::lines);
    draw_plumb_line(sheet, plan, moment);
}

Place SectionDrawing::tap(std::string_view name) const
{
    const SectionPlan& plan = parts_->plan;
    if (name == "tank outlet") {
        return to_place({plan.feed, plan.neck_foot + 1.0});
    }
    if (name == "hose end") {
        return to_place({plan.left - 1.0, plan.inlet});
    }
    if (name == "bowl") {
        return to_place({plan.bowl.low.x, plan.bowl.low.y + 8.0});
    }
    if (name == "nozzle") {
        return to_place({plan.nozzle, plan.main.outlet()});
    }
    throw sim::RequestError("the section has no tap point \"" + std::string(name) + "\"");
}

} // namespace scenes
