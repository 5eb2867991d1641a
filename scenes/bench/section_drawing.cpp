#include "scenes/bench/section_drawing.hpp"

#include "scenes/bench/section_pieces.hpp"
#include "scenes/present/part_finder.hpp"

#include <array>
#include <numbers>

namespace scenes {
namespace {

/// A family of machines whose section can be drawn, told by the kind of one of its parts.
struct Family {
    std::string_view kind;
    std::unique_ptr<const SectionPieces> (*make)(const sim::Rig&);
};
constexpr std::array families{Family{"float_needle", float_section},
                              Family{"metering_needle", trimmer_section}};

std::unique_ptr<const SectionPieces> pieces_of(const sim::Rig& rig)
{
    for (const Family& family : families) {
        if (has_kind(rig, family.kind)) {
            return family.make(rig);
        }
    }
    throw sim::AssetError(rig.file, "/parts",
                          "the section drawing needs a carburetor, with a float_needle or a "
                          "metering_needle");
}

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

SectionDrawing::SectionDrawing(const sim::Rig& rig) : pieces_(pieces_of(rig)) {}

SectionDrawing::~SectionDrawing() = default;

SectionOutlines outlines_of(const sim::Rig& rig)
{
    return pieces_of(rig)->outlines();
}

SectionDrawing::Bounds SectionDrawing::bounds() const
{
    return {to_place(pieces_->low()), to_place(pieces_->high())};
}

void SectionDrawing::draw_still(Mesh& mesh, Text& text, const Look& look,
                                const Camera& camera) const
{
    pieces_->draw_still({mesh, text, look, camera});
}

void SectionDrawing::draw_moving(Mesh& mesh, Text& text, const Look& look, const Camera& camera,
                                 const MachineView& machine, double seconds) const
{
    pieces_->draw_moving({mesh, text, look, camera}, {machine, seconds, up_of(machine)});
}

} // namespace scenes
