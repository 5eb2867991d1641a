#include "scenes/bench/section_trimmer_parts.hpp"
#include "scenes/bench/section_wear.hpp"

namespace scenes {
namespace {

class TrimmerSection final : public SectionPieces {
public:
    explicit TrimmerSection(const sim::Rig& rig)
        : plan_(rig), outlines_(outlines_of(plan_)), marks_(marks_of(plan_))
    {
        outlines_.keep_parts_of(rig);
    }

    [[nodiscard]] Spot low() const override { return plan_.low() - beside; }
    [[nodiscard]] Spot high() const override { return plan_.high() + beside; }
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
    static constexpr Spot beside{3.5, 0.0}; ///< room for names

    TrimmerPlan plan_;
    SectionOutlines outlines_;
    std::vector<Mark> marks_;
};

void TrimmerSection::draw_still(const Sheet& sheet) const
{
    draw_floor_still(sheet, plan_);
    draw_engine_still(sheet, plan_);
    draw_throat_still(sheet, plan_);
    draw_circuits_still(sheet, plan_);
    draw_block_still(sheet, plan_);
    draw_hoses_still(sheet, plan_);
    draw_bulb_still(sheet, plan_);
    draw_tank_still(sheet, plan_);
    draw_detail_still(sheet, plan_);
    draw_scales(sheet, plan_);
    draw_travels_note(sheet, plan_);
}

std::optional<Spot> TrimmerSection::spot_of(const Mark& mark, const Moment& moment) const
{
    return mark.name == pickup_name.english() ? pickup_place(plan_, moment.machine) : mark.spot;
}

void TrimmerSection::draw_moving(const Sheet& sheet, const Moment& moment) const
{
    draw_tank_moving(sheet, plan_, moment);
    draw_hoses_moving(sheet, plan_, moment);
    draw_bulb_moving(sheet, plan_, moment);
    draw_throat_moving(sheet, plan_, moment);
    draw_engine_moving(sheet, plan_, moment);
    draw_pump_moving(sheet, plan_, moment);
    draw_metering_moving(sheet, plan_, moment);
    draw_circuits_moving(sheet, plan_, moment);
    draw_wear(sheet, plan_, moment);
    draw_detail_moving(sheet, plan_, moment);
    draw_plumb_line(sheet, {plan_.wall + 9.0, plan_.high().y - 1.4}, -10.0, moment);
}

} // namespace

std::unique_ptr<const SectionPieces> trimmer_section(const sim::Rig& rig)
{
    return std::make_unique<TrimmerSection>(rig);
}

} // namespace scenes
