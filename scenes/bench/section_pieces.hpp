#pragma once

#include "scenes/bench/section_flow.hpp"
#include "scenes/bench/section_liquid.hpp"
#include "scenes/bench/section_marks.hpp"
#include "scenes/bench/section_outlines.hpp"
#include "scenes/bench/section_sheet.hpp"
#include "scenes/present/machine_view.hpp"

#include "sim/rig.hpp"

#include <memory>
#include <optional>
#include <string_view>

namespace scenes {

/// What the moving pieces follow.
struct Moment {
    const MachineView& machine;
    double seconds = 0.0; ///< moves the flow marks
    FlowClock* clock = nullptr;
    sim::Vector up{0.0, 0.0, 1.0};

    /// How far what flows at a place has come.
    ///
    /// unit:    millimetres, and per second, of the drawing
    [[nodiscard]] double travelled(std::string_view what, double speed) const
    {
        return clock->travelled(what, speed, seconds);
    }
};

/// The section of one family of machines, put together from its pieces.
class SectionPieces {
public:
    SectionPieces() = default;
    SectionPieces(const SectionPieces&) = delete;
    SectionPieces& operator=(const SectionPieces&) = delete;
    SectionPieces(SectionPieces&&) = delete;
    SectionPieces& operator=(SectionPieces&&) = delete;
    virtual ~SectionPieces() = default;

    [[nodiscard]] virtual Spot low() const = 0;
    [[nodiscard]] virtual Spot high() const = 0;
    /// What can be named, pointed at and framed.
    [[nodiscard]] virtual const std::vector<Mark>& marks() const = 0;
    /// Where a mark is now; nothing when it is not there.
    [[nodiscard]] virtual std::optional<Spot> spot_of(const Mark& mark, const Moment&) const
    {
        return mark.spot;
    }
    /// Outsides, leaks and floor.
    [[nodiscard]] virtual SectionOutlines outlines() const = 0;
    virtual void draw_still(const Sheet& sheet) const = 0;
    virtual void draw_moving(const Sheet& sheet, const Moment& moment) const = 0;
    /// The same machine shut: nothing that is inside shows.
    virtual void draw_outside_still(const Sheet& sheet) const = 0;
    virtual void draw_outside_moving(const Sheet& sheet, const Moment& moment) const = 0;
};

/// throws:  AssetError when the rig lacks a part the section is made of
std::unique_ptr<const SectionPieces> float_section(const sim::Rig& rig);
std::unique_ptr<const SectionPieces> trimmer_section(const sim::Rig& rig);

} // namespace scenes
