#include "tools.hpp"

#include "scenes/shop/belief.hpp"

#include <cmath>

using namespace shop;

namespace {

/// A table of a made-up check whose one reading shows "Low" or "High": what it shows with each of
/// the first faults of the mower is given; the instrument is wrong with a chance that can be told.
struct Made {
    Instrument tool{"gauge", "Gauge", sim::Unit{}};
    Check check;
    Table table;

    explicit Made(const std::vector<double>& values, double noise = 0.5)
    {
        tool.high = 100.0;
        tool.noise = noise;
        Reading reading;
        reading.id = "reading";
        reading.instrument = &tool;
        reading.words = {{0.0, "Low"}, {1e300, "High"}};
        check.id = "made";
        check.minutes = 1.0;
        check.procedure.readings.push_back(reading);
        const auto& rig = *tests::workshop("mower").rig;
        table.workshop = tests::workshops().of("mower");
        table.checks.push_back(&check);
        for (std::size_t i = 0; i < values.size(); ++i) {
            table.hypotheses.push_back({rig.faults[i].id, {{rig.faults[i].id, 1.0}}});
            table.rows.push_back({{values[i]}});
        }
    }
    Made(const Made&) = delete;
    Made& operator=(const Made&) = delete;
    Made(Made&&) = delete;
    Made& operator=(Made&&) = delete;
    ~Made() = default;
};

} // namespace

TEST_SUITE_BEGIN("shop");

TEST_CASE("readings change chances by Bayes' rule, as in the textbook's urn")
{
    // A medical test right in 95 of 100 cases, of one condition in two: after a positive result
    // its chance is 0.95; after two, .95^2 / (.95^2 + .05^2). W. Feller, An Introduction to
    // Probability Theory and Its Applications, vol. 1, chapter V (from memory).
    constexpr double at_95_percent = 1.6448536; // deviations: Abramowitz, Stegun, table 26.5
    const Made made({at_95_percent, -at_95_percent}, 1.0);
    Belief belief(made.table);
    const std::vector<Observation> high{{{}, 1}};
    belief.learn(0, high);
    CHECK(belief.chance(0) == doctest::Approx(0.95).epsilon(2e-3));
    belief.learn(0, high);
    CHECK(belief.chance(0) ==
          doctest::Approx(0.95 * 0.95 / (0.95 * 0.95 + 0.05 * 0.05)).epsilon(2e-3));
}

TEST_CASE(
    "a check that splits four equal causes in halves tells one bit, one that splits none tells "
    "nothing")
{
    // C. Shannon, A Mathematical Theory of Communication, 1948, section 6.
    const Made halves({-50.0, -50.0, 50.0, 50.0});
    const Belief of_halves(halves.table);
    CHECK(of_halves.entropy() == doctest::Approx(2.0));
    CHECK(of_halves.information(0) == doctest::Approx(1.0).epsilon(0.02));
    const Made same({50.0, 50.0, 50.0, 50.0});
    CHECK(Belief(same.table).information(0) == doctest::Approx(0.0));
    const Made one_of_four({-50.0, 50.0, 50.0, 50.0});
    // 2 - (3/4) log2 3 bits.
    CHECK(Belief(one_of_four.table).information(0) ==
          doctest::Approx(2.0 - 0.75 * std::log2(3.0)).epsilon(0.02));
}

TEST_CASE("separation is how far two normal readings lie apart")
{
    // Two normal distributions of equal deviation s, d apart, read as above or below the middle:
    // their distance is 2 Phi(d / 2 s) - 1; Phi(1) = .841345, Abramowitz, Stegun, table 26.1.
    const Made made({1.0, -1.0}, 1.0);
    CHECK(separation(made.table, 0, 1) == doctest::Approx(2.0 * 0.841345 - 1.0).epsilon(0.01));
    CHECK(look_alikes(made.table, 0).size() == 2);
    const Made far({5.0, -5.0}, 1.0);
    CHECK(look_alikes(far.table, 0).size() == 1);
}

TEST_SUITE_END();
