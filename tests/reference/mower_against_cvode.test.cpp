#include "tests/reference/agreement.hpp"
#include "tests/reference/sheets.hpp"

#include <doctest/doctest.h>

using namespace sim;
using namespace tests;

namespace {

void compare(const std::vector<TimedCommand>& commands, double until)
{
    constexpr Tick stride = 50;
    const auto errors = differences_from_cvode(mower(), commands, until, stride, Tolerance{});
    CAPTURE(worst_of(errors, tick_length * stride));
    CHECK(errors.front().share < 1e-3);
    MESSAGE("largest difference: " << 100.0 * errors.front().share << " % of the range of "
                                   << errors.front().reading);
}

} // namespace

// Outside check: SUNDIALS CVODE on the same equations, at relative tolerance 1e-11: at 1e-9 its own
// error in the air flow of the bowl's vent is 0.4 % of that reading's range.

TEST_SUITE_BEGIN("reference");

TEST_CASE("a cold start agrees with CVODE in every reading")
{
    compare(cold_start(), 60.0);
}

TEST_CASE("load steps agree with CVODE in every reading")
{
    compare(
        after_cold_start({set(60.0, "load", 0.5), set(70.0, "load", 1.0), set(80.0, "load", 0.2)}),
        90.0);
}

TEST_CASE("a bowl vent that plugs under load agrees with CVODE in every reading")
{
    compare(after_cold_start({set(60.0, "load", 0.7), break_at(70.0, "bowl_vent_plugged", 1.0),
                              break_at(85.0, "bowl_vent_plugged", 0.0)}),
            95.0);
}

TEST_CASE("a hot soak agrees with CVODE in every reading")
{
    compare(after_cold_start({set(60.0, "load", 1.0), act(180.0, "stop")}), 900.0);
}

TEST_SUITE_END();
