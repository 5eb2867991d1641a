#include "scenes/bench/section_parts.hpp"
#include "scenes/bench/section_shared.hpp"
#include "scenes/bench/section_wear.hpp"

namespace scenes {
namespace {

class FloatSection final : public SectionPieces {
public:
    explicit FloatSection(const sim::Rig& rig)
        : plan_(rig), outlines_(outlines_of(plan_)), marks_(marks_of(plan_))
    {
        outlines_.keep_parts_of(rig);
    }

    [[nodiscard]] Spot low() const override { return plan_.low(); }
    [[nodiscard]] Spot high() const override { return plan_.high(); }
    [[nodiscard]] const std::vector<Mark>& marks() const override { return marks_; }
    [[nodiscard]] std::optional<Spot> spot_of(const Mark& mark,
                                              const Moment& moment) const override;
    [[nodiscard]] SectionOutlines outlines() const override { return outlines_; }
    void draw_still(const Sheet& sheet) const override;
    void draw_moving(const Sheet& sheet, const Moment& moment) const override;
    void draw_outside_still(const Sheet& sheet) const override
    {
        draw_floor_still(sheet, plan_);
        draw_outside(sheet, outlines_);
        draw_scales(sheet, plan_);
    }
    void draw_outside_moving(const Sheet& sheet, const Moment& moment) const override
    {
        draw_outside_parts(sheet, plan_, moment);
    }

private:
    SectionPlan plan_;
    SectionOutlines outlines_;
    std::vector<Mark> marks_;
};

void FloatSection::draw_still(const Sheet& sheet) const
{
    draw_floor_still(sheet, plan_);
    draw_throat_still(sheet, plan_);
    draw_body_still(sheet, plan_);
    draw_circuits_still(sheet, plan_);
    draw_bulb_still(sheet, plan_);
    draw_tank_still(sheet, plan_);
    draw_hose_still(sheet, plan_);
    draw_cord_still(sheet, plan_);
    draw_detail_still(sheet, plan_);
    draw_scales(sheet, plan_);
}

std::optional<Spot> FloatSection::spot_of(const Mark& mark, const Moment& moment) const
{
    if (mark.name == bowl_water_name.english() &&
        moment.machine.reading("bowl.water") < least_water) {
        return {};
    }
    return mark.spot;
}

void FloatSection::draw_moving(const Sheet& sheet, const Moment& moment) const
{
    draw_tank_moving(sheet, plan_, moment);
    draw_hose_moving(sheet, plan_, moment);
    draw_bowl_moving(sheet, plan_, moment);
    draw_circuits_moving(sheet, plan_, moment);
    draw_float_moving(sheet, plan_, moment);
    draw_throat_moving(sheet, plan_, moment);
    draw_bulb_moving(sheet, plan_, moment);
    draw_cord_moving(sheet, plan_, moment);
    draw_wear(sheet, plan_, moment);
    draw_floor_moving(sheet, plan_, moment);
    draw_detail_moving(sheet, plan_, moment);
    // The cord's own words stand at the right of the plumb line's.
    draw_plumb_line(sheet, {plan_.mouth + 2.0, plan_.high().y - 2.5}, plan_.end - 26.0, moment);
}

} // namespace

std::unique_ptr<const SectionPieces> float_section(const sim::Rig& rig)
{
    return std::make_unique<FloatSection>(rig);
}

} // namespace scenes
