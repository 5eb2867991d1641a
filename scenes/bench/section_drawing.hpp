#pragma once

#include "scenes/bench/section_flow.hpp"
#include "scenes/bench/section_marks.hpp"
#include "scenes/present/machine_view.hpp"
#include "scenes/view/camera.hpp"
#include "scenes/view/mesh.hpp"
#include "scenes/view/text.hpp"
#include "scenes/view/theme.hpp"

#include "sim/rig.hpp"

#include <memory>
#include <optional>

namespace scenes {

class SectionPieces;

/// The machine's fuel path as an engineering section, to the scale of the rig's own numbers.
///
/// Sizes come from the rig's parts (boxes, points, bores); what moves or is worn comes from
/// readings and parameters. Nothing here knows a fault.
class SectionDrawing {
public:
    explicit SectionDrawing(const sim::Rig& rig);
    ~SectionDrawing();

    /// What it is drawn with.
    struct Canvas {
        Mesh& mesh;
        Text& text;
        const Look& look;
        const Camera& camera;
        sf::FloatRect page; ///< pixels
    };
    /// What is shown of it.
    struct State {
        const MachineView& machine;
        double seconds = 0.0; ///< moves the flow marks
        bool is_open = true;  ///< cut open; else only its outside shows
    };

    /// A rectangle of the drawing, metres.
    struct Bounds {
        Place low;
        Place high;
    };
    [[nodiscard]] Bounds bounds() const;

    /// Castings and pipes: what stands still between changes of camera or look.
    void draw_still(const Canvas& canvas, bool is_open) const;
    /// Liquids, float, needle, plates, bulb, cord, flow marks.
    void draw_moving(const Canvas& canvas, const State& state) const;
    /// Tells what of the page the drawing covers, for the places of names.
    void cover(LabelGround& ground, const Canvas& canvas, const State& state) const;

    [[nodiscard]] const std::vector<Mark>& marks() const;
    /// Where a mark is now; nothing when it does not show.
    [[nodiscard]] std::optional<Place> place_of(const Mark& mark, const State& state) const;

private:
    [[nodiscard]] Look pen_of(const Canvas& canvas) const;

    std::unique_ptr<const SectionPieces> pieces_;
    mutable FlowClock clock_; ///< only where flow marks stand depends on it
};

} // namespace scenes
