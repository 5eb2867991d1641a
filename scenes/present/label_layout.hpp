#pragma once

#include <span>
#include <utility>
#include <vector>

namespace scenes {

/// Plain geometry of labels, so that tests need no display.
///
/// unit: pixels, y downwards
struct LabelPoint {
    double x = 0.0;
    double y = 0.0;
};
struct LabelBox {
    double left = 0.0;
    double top = 0.0;
    double width = 0.0;
    double height = 0.0;
    [[nodiscard]] double right() const { return left + width; }
    [[nodiscard]] double bottom() const { return top + height; }
    [[nodiscard]] bool overlaps(const LabelBox& other, double gap = 0.0) const
    {
        return left < other.right() + gap && other.left < right() + gap &&
               top < other.bottom() + gap && other.top < bottom() + gap;
    }
};

/// What of a page is covered by what, as a raster: labels go where little is lost.
class LabelGround {
public:
    enum class Cover : unsigned char {
        paper, ///< nothing yet
        solid, ///< cut material, section lines only
        inner, ///< passages, contents, moving parts
        words, ///< other text: never covered
    };

    /// unit: cell is the raster's pitch
    LabelGround(const LabelBox& page, double cell);

    /// Covers the inside of a polygon, also what lay there before.
    void cover(std::span<const LabelPoint> polygon, Cover cover);
    void cover(const LabelBox& box, Cover cover);
    /// Sums up; to be called between the last `cover` and the first question.
    void settle();

    [[nodiscard]] const LabelBox& page() const { return page_; }
    /// The share of a box that is covered so, 0 to 1; what sticks out of the page counts as words.
    [[nodiscard]] double share(const LabelBox& box, Cover cover) const;

    /// What lies at a point; `words` off the page.
    [[nodiscard]] Cover cover_at(LabelPoint point) const;

private:
    [[nodiscard]] std::size_t index(int row, int column) const;

    LabelBox page_;
    double cell_;
    int rows_;
    int columns_;
    std::vector<Cover> cells_;
    std::vector<int> sums_[3]; ///< solid, inner, words, from the upper left corner
};

/// A label that wants a place.
struct LabelWish {
    LabelPoint part; ///< what it points at
    double width = 0.0;
    double height = 0.0;
    int rank = 1; ///< 1 is served first and may go farther for a place
};

/// Where a label came to stand, or that it has no place.
struct LabelPlace {
    bool is_shown = false;
    LabelBox box;
    LabelPoint foot;    ///< where its leader meets the box
    double solid = 0.0; ///< share of the box that covers material
    double inner = 0.0; ///< share that covers what is inside it
};

/// Measures of the layout.
///
/// unit: pixels
struct LabelMeasures {
    double gap = 4.0;    ///< between boxes
    double nearest = 14; ///< from the part to the box
    double reach = 170;  ///< how far a label of rank 1 may be from its part
    /// Whether labels may stand over what matters where nothing else is left: for a drawing
    /// enlarged until it fills the page.
    bool may_hide = false;
};

/// Gives labels places: on the page, clear of each other, leaders uncrossed, near their parts, on
/// free paper or else within one piece of material; never over outlines, nor over what is inside
/// them, but for `may_hide`.
///
/// Parts that lie off the page get no label.
std::vector<LabelPlace> lay_out_labels(const LabelGround& ground, std::span<const LabelWish> wishes,
                                       const LabelMeasures& measures);

} // namespace scenes
