#include "scenes/present/label_layout.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <numeric>

namespace scenes {
namespace {

// Costs are in pixels of distance: a label goes that much farther to spare what it would cover.
constexpr double solid_cost = 75.0;   ///< of section lines that stop short of the words
constexpr double crossing_cost = 0.7; ///< per pixel of leader over something inner
constexpr double material_cost = 0.3; ///< per pixel of leader over material
constexpr double inner_cost = 180.0;  ///< of hiding it, where that may be
constexpr double too_much = 1e6;
constexpr double slant_cost = 6.0; ///< for a leader that meets its words from above or below
constexpr double rank_reach = 0.8; ///< how much less far the next rank may go

bool is_crossing(LabelPoint a, LabelPoint b, LabelPoint c, LabelPoint d)
{
    const auto side = [](LabelPoint p, LabelPoint q, LabelPoint r) {
        return (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
    };
    return (side(a, b, c) > 0.0) != (side(a, b, d) > 0.0) &&
           (side(c, d, a) > 0.0) != (side(c, d, b) > 0.0);
}

bool is_inside(LabelPoint p, const LabelBox& box, double gap)
{
    return p.x > box.left - gap && p.x < box.right() + gap && p.y > box.top - gap &&
           p.y < box.bottom() + gap;
}

bool is_crossing(LabelPoint a, LabelPoint b, const LabelBox& box, double gap)
{
    const LabelBox wide{box.left - gap, box.top - gap, box.width + 2.0 * gap,
                        box.height + 2.0 * gap};
    return is_inside(a, wide, 0.0) || is_inside(b, wide, 0.0) ||
           is_crossing(a, b, {wide.left, wide.top}, {wide.right(), wide.bottom()}) ||
           is_crossing(a, b, {wide.right(), wide.top}, {wide.left, wide.bottom()});
}

/// The raster is coarser than a pixel: a box may seem to touch so much, share of itself.
constexpr double slack = 0.004;

struct Candidate {
    LabelBox box;
    LabelPoint foot;
    double distance = 0.0;
    bool is_level = true; ///< the leader meets the words at one of their ends
    double solid = 0.0;
    double inner = 0.0;
    double cost = 0.0;
};

/// A box around the part in a direction, the nearest point of it at a distance.
Candidate candidate(const LabelWish& wish, double angle, double distance)
{
    const LabelPoint way{std::cos(angle), -std::sin(angle)};
    const LabelPoint foot{wish.part.x + way.x * distance, wish.part.y + way.y * distance};
    Candidate made;
    made.distance = distance;
    if (std::abs(way.x) > 0.3) {
        made.box = {way.x > 0.0 ? foot.x : foot.x - wish.width, foot.y - wish.height / 2.0,
                    wish.width, wish.height};
    } else { // above or below, its near end over the part
        const double lean = way.x > 0.0 ? 0.15 : 0.85;
        made.box = {foot.x - wish.width * lean, way.y < 0.0 ? foot.y - wish.height : foot.y,
                    wish.width, wish.height};
        made.is_level = false;
    }
    made.box.left = std::round(made.box.left);
    made.box.top = std::round(made.box.top);
    made.foot = foot;
    return made;
}

class Layout {
public:
    Layout(const LabelGround& ground, std::span<const LabelWish> wishes,
           const LabelMeasures& measures)
        : ground_(ground),
          wishes_(wishes),
          measures_(measures),
          places_(wishes.size()),
          known_(wishes.size())
    {
    }

    std::vector<LabelPlace> run()
    {
        std::vector<std::size_t> order(wishes_.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        std::ranges::stable_sort(order, {}, [&](std::size_t i) { return wishes_[i].rank; });
        constexpr int rounds = 3; // later rounds take places that others have left
        for (int round = 0; round < rounds; ++round) {
            for (const std::size_t i : order) {
                place(i);
            }
            for (const std::size_t i : order) {
                if (!places_[i].is_shown) {
                    make_room(i);
                }
            }
        }
        return std::move(places_);
    }

private:
    /// All boxes that a label could have on the page, cheapest first.
    [[nodiscard]] std::vector<Candidate> candidates(std::size_t i) const
    {
        const LabelWish& wish = wishes_[i];
        std::vector<Candidate> all;
        if (!is_inside(wish.part, ground_.page(), 0.0)) {
            return all;
        }
        const double most = measures_.reach * std::pow(rank_reach, wish.rank - 1);
        constexpr int directions = 28;
        for (const double ring : {1.0, 1.5, 2.2, 3.1, 4.2, 5.5, 7.0, 8.7, 10.6, 12.7, 15.0}) {
            for (int k = 0; k < directions; ++k) {
                const double angle = 2.0 * std::numbers::pi * (k + 0.5) / directions;
                Candidate made = candidate(wish, angle, measures_.nearest * ring);
                if (is_clear(made)) {
                    set_cost(i, made);
                    if (made.cost < most) {
                        all.push_back(made);
                    }
                }
            }
        }
        std::ranges::stable_sort(all, {}, &Candidate::cost);
        return all;
    }

    const std::vector<Candidate>& known(std::size_t i)
    {
        if (known_[i].empty()) {
            known_[i] = candidates(i);
        }
        return known_[i];
    }

    bool place(std::size_t i)
    {
        places_[i].is_shown = false;
        for (const Candidate& made : known(i)) {
            if (in_the_way(i, made, 0).empty()) {
                take(i, made);
                return true;
            }
        }
        return false;
    }

    void take(std::size_t i, const Candidate& made)
    {
        places_[i] = {true, made.box, made.foot, made.solid, made.inner};
    }

    /// Moves up to three labels of no higher rank that are in the way, if they find other places.
    void make_room(std::size_t i)
    {
        constexpr std::size_t most_moved = 3;
        constexpr std::size_t tries = 200;
        std::size_t tried = 0;
        for (const Candidate& made : known(i)) {
            if (++tried > tries) {
                return;
            }
            const std::vector<std::size_t> moved = in_the_way(i, made, most_moved);
            const bool may_move = std::ranges::all_of(moved, [&](std::size_t k) {
                return k != fixed && wishes_[k].rank >= wishes_[i].rank;
            });
            if (moved.size() > most_moved || !may_move) {
                continue;
            }
            const std::vector<LabelPlace> before = places_;
            for (const std::size_t k : moved) {
                places_[k].is_shown = false;
            }
            take(i, made);
            const bool all_found = std::ranges::all_of(moved, [&](std::size_t k) {
                return place(k) || wishes_[k].rank > wishes_[i].rank;
            });
            if (all_found) {
                return;
            }
            places_ = before;
        }
    }

    /// Words stand on free paper, or within one piece of material: never over an outline, a
    /// passage or what moves in it.
    [[nodiscard]] bool is_clear(Candidate& made) const
    {
        made.solid = ground_.share(made.box, LabelGround::Cover::solid);
        made.inner = ground_.share(made.box, LabelGround::Cover::inner);
        const bool hides_nothing =
            made.inner <= slack && (made.solid <= slack || made.solid >= 1.0 - slack);
        return ground_.share(made.box, LabelGround::Cover::words) == 0.0 &&
               (hides_nothing || measures_.may_hide);
    }

    /// Gives the cost of a place, and `too_much` to one whose leader would run through other words.
    void set_cost(std::size_t i, Candidate& made) const
    {
        made.cost = made.distance + solid_cost * made.solid + inner_cost * made.inner +
                    (made.is_level ? 0.0 : slant_cost);
        constexpr double step = 4.0;
        const LabelPoint a = wishes_[i].part;
        const LabelPoint way{made.foot.x - a.x, made.foot.y - a.y};
        const int steps = static_cast<int>(std::hypot(way.x, way.y) / step);
        for (int k = 1; k <= steps; ++k) {
            const double t = static_cast<double>(k) / (steps + 1);
            switch (ground_.cover_at({a.x + way.x * t, a.y + way.y * t})) {
            case LabelGround::Cover::paper:
                break;
            case LabelGround::Cover::solid:
                made.cost += material_cost * step;
                break;
            case LabelGround::Cover::inner:
                made.cost += crossing_cost * step;
                break;
            case LabelGround::Cover::words:
                made.cost += too_much;
                break;
            }
        }
    }

    /// The labels that a box and its leader would touch, and `fixed` for a part it would hide; no
    /// more than one over `most`.
    [[nodiscard]] std::vector<std::size_t> in_the_way(std::size_t i, const Candidate& made,
                                                      std::size_t most) const
    {
        std::vector<std::size_t> found;
        const LabelPoint part = wishes_[i].part;
        for (std::size_t k = 0; k < wishes_.size() && found.size() <= most; ++k) {
            if (k == i) {
                continue;
            }
            // A name must not hide what another points at.
            if (is_inside(wishes_[k].part, made.box, 2.0)) {
                return {fixed};
            }
            const LabelPlace& other = places_[k];
            if (other.is_shown &&
                (made.box.overlaps(other.box, measures_.gap) ||
                 is_crossing(part, made.foot, other.box, measures_.gap / 2.0) ||
                 is_crossing(wishes_[k].part, other.foot, made.box, measures_.gap / 2.0) ||
                 is_crossing(part, made.foot, wishes_[k].part, other.foot))) {
                found.push_back(k);
            }
        }
        return found;
    }

    static constexpr std::size_t fixed = std::numeric_limits<std::size_t>::max();

    const LabelGround& ground_;
    std::span<const LabelWish> wishes_;
    LabelMeasures measures_;
    std::vector<LabelPlace> places_;
    std::vector<std::vector<Candidate>> known_; ///< candidates that were worked out
};

} // namespace

std::vector<LabelPlace> lay_out_labels(const LabelGround& ground, std::span<const LabelWish> wishes,
                                       const LabelMeasures& measures)
{
    return Layout(ground, wishes, measures).run();
}

} // namespace scenes
