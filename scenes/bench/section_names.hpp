#pragma once

#include "scenes/bench/section_drawing.hpp"

#include <SFML/Graphics/RenderTarget.hpp>

#include <optional>
#include <string>
#include <vector>

namespace scenes {

/// The names of a drawing on their leaders, and the card of the part pointed at.
///
/// Names are given places when the drawing stands still; while it moves there are none.
class SectionNames {
public:
    explicit SectionNames(const Fonts& fonts)
        : text_(fonts), card_text_(fonts), scratch_text_(fonts)
    {
    }

    /// Finds places anew; to be called when camera, look or machine have changed.
    void lay_out(const SectionDrawing& section, const SectionDrawing::Canvas& canvas,
                 const SectionDrawing::State& state);
    /// Whether names are there or gone that were not when places were found.
    [[nodiscard]] bool is_stale(const SectionDrawing& section,
                                const SectionDrawing::State& state) const;
    /// Lets leaders follow their parts; `pointed` is the part whose name stands out.
    void refresh(const SectionDrawing& section, const SectionDrawing::Canvas& canvas,
                 const SectionDrawing::State& state, std::optional<std::size_t> pointed);
    void draw(sf::RenderTarget& target) const;

    /// Draws name and figures of a part beside a pixel, inside the page; of a machine that is shut
    /// the name alone, since the figures would tell what is wrong inside.
    void draw_card(sf::RenderTarget& target, const SectionDrawing::Canvas& canvas,
                   const SectionDrawing::State& state, const Mark& mark, Point at);

    /// The boxes of the names shown, for tests.
    struct Shown {
        std::string_view name;
        sf::FloatRect box;
    };
    [[nodiscard]] std::vector<Shown> shown(const SectionDrawing& section) const;

private:
    void place_count(const LabelGround& ground, const Look& look, int left_out);

    std::vector<std::size_t> wanted_; ///< indices of the marks that asked for a place
    std::vector<LabelPlace> places_;  ///< theirs
    std::string more_;                ///< how many names had no place
    std::optional<Point> more_at_;    ///< middle of its left edge
    Mesh mesh_;
    Text text_;
    Mesh card_;
    Text card_text_;
    Mesh scratch_;
    Text scratch_text_;
};

} // namespace scenes
