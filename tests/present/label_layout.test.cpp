#include "scenes/present/label_layout.hpp"

#include <doctest/doctest.h>

#include <random>

using namespace scenes;

namespace {

constexpr LabelBox page{100.0, 50.0, 660.0, 400.0};
constexpr LabelMeasures measures{};

/// Parts at random in the middle of a page that is partly covered.
std::vector<LabelWish> random_wishes(unsigned seed, int count)
{
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> x(page.left, page.right());
    std::uniform_real_distribution<double> y(page.top, page.bottom());
    std::uniform_real_distribution<double> width(30.0, 130.0);
    std::vector<LabelWish> wishes;
    for (int i = 0; i < count; ++i) {
        wishes.push_back({{x(random), y(random)}, width(random), 18.0, 1 + i % 3});
    }
    return wishes;
}

double side(LabelPoint p, LabelPoint q, LabelPoint r)
{
    return (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
}

} // namespace

TEST_SUITE_BEGIN("present");

TEST_CASE("labels stay on the page and clear of each other, with leaders that do not cross")
{
    for (unsigned seed = 1; seed <= 20; ++seed) {
        CAPTURE(seed);
        LabelGround ground(page, 3.0);
        ground.cover(LabelBox{250.0, 150.0, 300.0, 200.0}, LabelGround::Cover::solid);
        ground.cover(LabelBox{300.0, 180.0, 120.0, 90.0}, LabelGround::Cover::inner);
        ground.settle();
        const std::vector<LabelWish> wishes = random_wishes(seed, 35);
        const std::vector<LabelPlace> places = lay_out_labels(ground, wishes, measures);
        REQUIRE(places.size() == wishes.size());
        for (std::size_t i = 0; i < places.size(); ++i) {
            if (!places[i].is_shown) {
                continue;
            }
            CHECK(ground.share(places[i].box, LabelGround::Cover::words) == 0.0);
            for (std::size_t k = 0; k < i; ++k) {
                if (places[k].is_shown) {
                    CAPTURE(i);
                    CAPTURE(k);
                    CHECK_FALSE(places[i].box.overlaps(places[k].box));
                    const LabelPoint a = wishes[i].part;
                    const LabelPoint b = places[i].foot;
                    const LabelPoint c = wishes[k].part;
                    const LabelPoint d = places[k].foot;
                    const bool crosses = (side(a, b, c) > 0.0) != (side(a, b, d) > 0.0) &&
                                         (side(c, d, a) > 0.0) != (side(c, d, b) > 0.0);
                    CHECK_FALSE(crosses);
                }
            }
        }
    }
}

TEST_CASE("a label alone on paper stands next to its part")
{
    LabelGround ground(page, 3.0);
    ground.settle();
    const LabelWish wish{{400.0, 200.0}, 80.0, 18.0, 1};
    const LabelPlace place = lay_out_labels(ground, {&wish, 1}, measures).front();
    REQUIRE(place.is_shown);
    CHECK(std::hypot(place.foot.x - 400.0, place.foot.y - 200.0) ==
          doctest::Approx(measures.nearest));
    CHECK(place.solid + place.inner == 0.0);
}

TEST_CASE("a label leaves a machine for the paper beside it, and covers no other words")
{
    LabelGround ground(page, 3.0);
    ground.cover(LabelBox{350.0, 150.0, 100.0, 100.0}, LabelGround::Cover::inner);
    ground.cover(LabelBox{450.0, 50.0, 310.0, 400.0}, LabelGround::Cover::words);
    ground.settle();
    const LabelWish wish{{400.0, 200.0}, 80.0, 18.0, 1};
    const LabelPlace place = lay_out_labels(ground, {&wish, 1}, measures).front();
    REQUIRE(place.is_shown);
    CHECK(place.solid + place.inner < 0.1);
    CHECK(ground.share(place.box, LabelGround::Cover::words) == 0.0);
}

TEST_CASE("a label hides nothing that matters: it stands on paper or within one material")
{
    for (unsigned seed = 1; seed <= 20; ++seed) {
        CAPTURE(seed);
        LabelGround ground(page, 2.0);
        ground.cover(LabelBox{200.0, 100.0, 400.0, 300.0}, LabelGround::Cover::solid);
        ground.cover(LabelBox{220.0, 180.0, 300.0, 60.0}, LabelGround::Cover::inner);
        ground.settle();
        const std::vector<LabelWish> wishes = random_wishes(seed, 35);
        std::size_t shown = 0;
        for (const LabelPlace& place : lay_out_labels(ground, wishes, measures)) {
            if (place.is_shown) {
                CHECK(place.inner < 0.01);
                CHECK(std::min(place.solid, 1.0 - place.solid) < 0.01);
                ++shown;
            }
        }
        CHECK(shown > 5);
    }
}

TEST_CASE("a label with nothing but contents around it is left out, or hides some where it may")
{
    LabelGround ground(page, 2.0);
    ground.cover(page, LabelGround::Cover::inner);
    ground.settle();
    const LabelWish wish{{400.0, 200.0}, 80.0, 18.0, 1};
    LabelMeasures enlarged = measures;
    CHECK_FALSE(lay_out_labels(ground, {&wish, 1}, enlarged).front().is_shown);
    enlarged.reach = 220.0;
    enlarged.may_hide = true;
    CHECK(lay_out_labels(ground, {&wish, 1}, enlarged).front().is_shown);
}

TEST_CASE("a leader keeps off other words")
{
    LabelGround ground(page, 2.0);
    ground.cover(LabelBox{415.0, 50.0, 10.0, 300.0}, LabelGround::Cover::words);
    ground.cover(LabelBox{0.0, 0.0, 400.0, 500.0}, LabelGround::Cover::inner);
    ground.settle();
    const LabelWish wish{{405.0, 200.0}, 80.0, 18.0, 1};
    CHECK_FALSE(lay_out_labels(ground, {&wish, 1}, measures).front().is_shown);
}

TEST_CASE(
    "of two labels with room for one the higher rank is shown, and none for parts off the page")
{
    constexpr LabelBox strip{0.0, 0.0, 100.0, 22.0};
    LabelGround ground(strip, 2.0);
    ground.settle();
    const LabelWish wishes[] = {
        {{6.0, 11.0}, 60.0, 18.0, 3}, {{8.0, 11.0}, 60.0, 18.0, 1}, {{200.0, 11.0}, 10.0, 18.0, 1}};
    const std::vector<LabelPlace> places = lay_out_labels(ground, wishes, measures);
    CHECK_FALSE(places[0].is_shown);
    CHECK(places[1].is_shown);
    CHECK_FALSE(places[2].is_shown);
}

TEST_CASE("a polygon covers the cells inside it, and the last to cover wins")
{
    LabelGround ground({0.0, 0.0, 100.0, 100.0}, 1.0);
    const LabelPoint triangle[] = {{0.0, 0.0}, {100.0, 0.0}, {0.0, 100.0}};
    ground.cover(triangle, LabelGround::Cover::solid);
    ground.cover(LabelBox{0.0, 0.0, 10.0, 10.0}, LabelGround::Cover::inner);
    ground.settle();
    const LabelBox all{0.0, 0.0, 100.0, 100.0};
    CHECK(ground.share(all, LabelGround::Cover::inner) == doctest::Approx(0.01).epsilon(0.25));
    CHECK(ground.share(all, LabelGround::Cover::solid) == doctest::Approx(0.49).epsilon(0.03));
    CHECK(ground.share({70.0, 70.0, 20.0, 20.0}, LabelGround::Cover::solid) == 0.0);
}

TEST_SUITE_END();
