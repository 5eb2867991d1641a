#include "tests/reference/agreement.hpp"
#include "tests/reference/sheets.hpp"

#include <doctest/doctest.h>

using namespace sim;
using namespace tests;

// Outside check: SUNDIALS CVODE on the same equations, at relative tolerance 1e-11. Ours runs at a
// tolerance far under the rig's: what is looked at is the equations' solution, not the looser one
// for class.

namespace {

void compare(const std::vector<TimedCommand>& commands, double until)
{
    constexpr Tick stride = 7;
    const auto rig = std::make_shared<const Rig>(load_rig("trimmer"));
    const auto errors = differences_from_cvode(rig, commands, until, stride, {2e-8, 2e-8});
    CAPTURE(worst_of(errors, tick_length * stride));
    CHECK(errors.front().share < 1e-3);
    MESSAGE("largest difference: " << 100.0 * errors.front().share << " % of the range of "
                                   << errors.front().reading);
}

} // namespace

TEST_SUITE_BEGIN("reference");

TEST_CASE("purging the trimmer agrees with CVODE in every reading")
{
    compare({act(0.5, "squeeze_bulb"), act(1.0, "release_bulb"), act(1.7, "squeeze_bulb"),
             act(2.2, "release_bulb"), break_at(2.9, "primer_line_plugged", 0.9),
             act(2.9, "squeeze_bulb"), act(3.4, "release_bulb")},
            5.0);
}

TEST_CASE("a pull of the trimmer's cord agrees with CVODE in every reading")
{
    compare({set(0.0, "choke", 1.0), set(0.0, "throttle", 0.5), act(0.1, "squeeze_bulb"),
             act(0.5, "release_bulb"), act(1.0, "pull_cord")},
            1.6);
}

TEST_SUITE_END();

TEST_SUITE_BEGIN("long");

TEST_CASE("a start of the trimmer agrees with CVODE in every reading")
{
    const auto rig = std::make_shared<const Rig>(load_rig("trimmer"));
    compare(rig->default_sheet.commands, 14.6);
}

TEST_SUITE_END();
