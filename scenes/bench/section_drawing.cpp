#include "scenes/bench/section_drawing.hpp"

#include "scenes/bench/section_pieces.hpp"
#include "scenes/present/part_finder.hpp"

#include <algorithm>
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
    return {scenes::place_of(pieces_->low()), scenes::place_of(pieces_->high())};
}

/// Lines and textures keep their measure to the drawing: in a small one with large type they would
/// run together.
Look SectionDrawing::pen_of(const Canvas& canvas) const
{
    constexpr float usual = 1.8F;    // pixels at scale 1, as of Look::medium
    constexpr float share = 0.0052F; // of the drawing's width
    const auto width = static_cast<float>(pieces_->high().x - pieces_->low().x) * 1e-3F;
    const float most = std::max(usual, share * canvas.camera.to_pixels(width));
    Look pen = canvas.look;
    pen.weight = std::clamp(most / (usual * pen.scale), 1.0F, std::max(1.0F, pen.weight));
    pen.scale = std::min(pen.scale, most / (usual * pen.weight));
    return pen;
}

void SectionDrawing::draw_still(const Canvas& canvas, bool is_open) const
{
    const Look pen = pen_of(canvas);
    const Sheet sheet{canvas.mesh, canvas.text, pen, canvas.look, canvas.camera, canvas.page};
    if (is_open) {
        pieces_->draw_still(sheet);
    } else {
        pieces_->draw_outside_still(sheet);
    }
}

void SectionDrawing::draw_moving(const Canvas& canvas, const State& state) const
{
    const Look pen = pen_of(canvas);
    const Sheet sheet{canvas.mesh, canvas.text, pen, canvas.look, canvas.camera, canvas.page};
    const Moment moment{state.machine, state.seconds, &clock_, up_of(state.machine)};
    if (state.is_open) {
        pieces_->draw_moving(sheet, moment);
    } else {
        pieces_->draw_outside_moving(sheet, moment);
    }
}

void SectionDrawing::cover(LabelGround& ground, const Canvas& canvas, const State& state) const
{
    const Look pen = pen_of(canvas);
    const Sheet sheet{canvas.mesh,   canvas.text, pen,    canvas.look,
                      canvas.camera, canvas.page, &ground};
    const Moment moment{state.machine, state.seconds, &clock_, up_of(state.machine)};
    if (state.is_open) {
        pieces_->draw_still(sheet);
        pieces_->draw_moving(sheet, moment);
    } else {
        pieces_->draw_outside_still(sheet);
        pieces_->draw_outside_moving(sheet, moment);
    }
    for (const sf::FloatRect& words : canvas.text.boxes()) {
        constexpr double rim = 3.0; // the raster is coarser than a pixel
        const LabelPoint low{static_cast<double>(words.left) - rim,
                             static_cast<double>(words.top) - rim};
        ground.cover(LabelBox{low.x, low.y, static_cast<double>(words.width) + 2.0 * rim,
                              static_cast<double>(words.height) + 2.0 * rim},
                     LabelGround::Cover::words);
    }
}

const std::vector<Mark>& SectionDrawing::marks() const
{
    return pieces_->marks();
}

std::optional<Place> SectionDrawing::place_of(const Mark& mark, const State& state) const
{
    if (!state.is_open && !mark.shows_outside) {
        return {};
    }
    const Moment moment{state.machine, state.seconds, &clock_, up_of(state.machine)};
    const std::optional<Spot> spot = pieces_->spot_of(mark, moment);
    return spot ? std::optional(scenes::place_of(*spot)) : std::nullopt;
}

} // namespace scenes
