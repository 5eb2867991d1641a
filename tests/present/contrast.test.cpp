#include "scenes/view/theme.hpp"

#include <doctest/doctest.h>

#include <string>

TEST_SUITE("present")
{
    TEST_CASE("contrast is what the guidelines' own definition gives")
    {
        // W3C, WCAG 2.2, definition of contrast ratio: black on white is 21, equal colours 1.
        CHECK(scenes::contrast_ratio({0, 0, 0}, {255, 255, 255}) == doctest::Approx(21.0));
        CHECK(scenes::contrast_ratio({90, 90, 90}, {90, 90, 90}) == doctest::Approx(1.0));
        // The grey that just passes on white, 4.54 : 1; from memory of W3C's teaching pages.
        CHECK(scenes::contrast_ratio({0x76, 0x76, 0x76}, {255, 255, 255}) ==
              doctest::Approx(4.54).epsilon(0.002));
        // Luminance of the pure primaries: the coefficients of the definition themselves.
        CHECK(scenes::relative_luminance({255, 0, 0}) == doctest::Approx(0.2126));
        CHECK(scenes::relative_luminance({0, 255, 0}) == doctest::Approx(0.7152));
        CHECK(scenes::relative_luminance({0, 0, 255}) == doctest::Approx(0.0722));
    }

    TEST_CASE("every pair of colours that meets on screen has the contrast it owes")
    {
        // WCAG 2.2, success criteria 1.4.3 (text, 4.5) and 1.4.11 (graphics, 3.0), level AA.
        for (const scenes::Theme& theme : {scenes::paper_theme, scenes::board_theme}) {
            const auto claims = scenes::contrast_claims(theme);
            REQUIRE(claims.size() > 45);
            for (const scenes::ContrastClaim& claim : claims) {
                CAPTURE(std::string(theme.id));
                CAPTURE(std::string(claim.what));
                CHECK(claim.at_least >= 3.0);
                CHECK(claim.front.alpha == 255);
                CHECK(claim.ground.alpha == 255);
                CHECK(scenes::contrast_ratio(claim.front, claim.ground) >= claim.at_least);
            }
        }
    }

    TEST_CASE("names and leaders of the section drawing stand out from what they lie on")
    {
        for (const scenes::Theme& theme : {scenes::paper_theme, scenes::board_theme}) {
            CAPTURE(std::string(theme.id));
            for (const scenes::Rgba name : {theme.ink, theme.ink_soft, theme.accent}) {
                CHECK(scenes::contrast_ratio(name, theme.ground) >= 4.5);
            }
            CHECK(scenes::contrast_ratio(theme.ink, theme.section) >= 4.5);
            for (const scenes::Rgba under :
                 {theme.section, theme.air, theme.vapour, theme.fuel, theme.ground}) {
                CHECK(scenes::contrast_ratio(theme.ink_soft, under) >= 3.0);
            }
            // The shades of the machine from outside against its outlines.
            CHECK(scenes::contrast_ratio(theme.ink, theme.sheet) >= 3.0);
        }
    }
}
