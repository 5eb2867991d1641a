#pragma once

#include "scenes/present/machine_view.hpp"
#include "scenes/view/camera.hpp"
#include "scenes/view/mesh.hpp"
#include "scenes/view/text.hpp"
#include "scenes/view/theme.hpp"

#include "sim/rig.hpp"

#include <memory>

namespace scenes {

class SectionPieces;

/// The machine's fuel path as an engineering section, to the scale of the rig's own numbers.
///
/// Sizes come from the rig's parts (boxes, points, bores); what moves comes from readings. Nothing
/// here knows a fault.
class SectionDrawing {
public:
    explicit SectionDrawing(const sim::Rig& rig);
    ~SectionDrawing();

    /// The rectangle of the rig, metres, that holds the whole drawing.
    struct Bounds {
        Place low;
        Place high;
    };
    [[nodiscard]] Bounds bounds() const;

    /// Castings, pipes and names: what stands still between changes of camera or look.
    void draw_still(Mesh& mesh, Text& text, const Look& look, const Camera& camera) const;
    /// Liquids, float, needle, plates, bulb, cord, flow marks; `seconds` moves the flow marks.
    void draw_moving(Mesh& mesh, Text& text, const Look& look, const Camera& camera,
                     const MachineView& machine, double seconds) const;

private:
    std::unique_ptr<const SectionPieces> pieces_;
};

} // namespace scenes
