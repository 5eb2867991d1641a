#include "tools.hpp"

#include "scenes/shop/observation.hpp"
#include "scenes/shop/procedure_run.hpp"

using namespace shop;
using tests::procedure;

namespace {

constexpr const char* flow_of_the_hose = R"([{"set": "tap", "to": 1},
 {"watch": "10 s", "read": [
   {"id": "rise", "title": "Rise", "of": "bowl.fuel", "as": "change", "instrument": "graduated_cup"},
   {"id": "least", "title": "Least", "of": "bowl.fuel", "as": "least", "instrument": "graduated_cup"},
   {"id": "most", "title": "Most", "of": "bowl.fuel", "as": "most", "instrument": "graduated_cup"},
   {"id": "half", "title": "Half", "of": "bowl.fuel", "as": "time", "above": "5 mL",
    "instrument": "watch"}]}])";

sim::Simulator machine()
{
    return sim::Simulator(tests::workshop("mower").rig);
}

std::string refusal(const std::string& steps)
{
    return tests::refusal_of([&] { procedure(steps); });
}

} // namespace

TEST_SUITE_BEGIN("shop");

TEST_CASE("a watch reads change, least, most and the time to a limit from the live machine")
{
    const Procedure steps = procedure(flow_of_the_hose);
    sim::Simulator live = machine();
    ProcedureRun run(steps);
    run.finish(live);
    sim::Simulator plain = machine();
    plain.post(sim::SetControl{"tap", 1.0});
    plain.advance(10000);
    CHECK(live.now() == 10000);
    CHECK(run.values()[0] == doctest::Approx(plain.read("bowl.fuel")));
    CHECK(run.values()[1] == doctest::Approx(0.0));
    CHECK(run.values()[2] == doctest::Approx(plain.read("bowl.fuel")));
    // Found every 25 ms.
    const double at = run.values()[3].value();
    sim::Simulator until = machine();
    until.post(sim::SetControl{"tap", 1.0});
    until.advance(static_cast<sim::Tick>(1000.0 * at));
    CHECK(until.read("bowl.fuel") > 5e-6);
    until = machine();
    until.post(sim::SetControl{"tap", 1.0});
    until.advance(static_cast<sim::Tick>(1000.0 * at) - 30);
    CHECK(until.read("bowl.fuel") < 5e-6);
}

TEST_CASE("how a procedure is divided changes nothing")
{
    const Procedure steps = procedure(flow_of_the_hose);
    sim::Simulator whole = machine();
    ProcedureRun run(steps);
    run.finish(whole);
    sim::Simulator pieces = machine();
    ProcedureRun piecewise(steps);
    int count = 0;
    while (!piecewise.advance(pieces, 37)) {
        ++count;
    }
    CHECK(count > 200);
    CHECK(piecewise.values() == run.values());
    CHECK(pieces.now() == whole.now());
}

TEST_CASE("a repeat goes on until its condition holds, and counts its rounds")
{
    const auto rounds = [](const char* limit) {
        const Procedure steps = procedure(
            std::string(R"([{"set": "tap", "to": 1}, {"repeat": 5, "until": {"reading": "bowl.fuel",
              "above": ")") +
            limit + R"("}, "steps": [{"wait": "2 s"}],
              "count": {"id": "n", "title": "Rounds", "instrument": "count"}}])");
        sim::Simulator live = machine();
        ProcedureRun run(steps);
        run.finish(live);
        return run.values()[0].value();
    };
    CHECK(rounds("-1 mL") == 0.0);
    CHECK(rounds("0.1 mL") == 1.0);
    CHECK(rounds("400 mL") == 6.0); // never: one more than there are
}

TEST_CASE("a reading on the way not taken is not read")
{
    const Procedure steps = procedure(
        R"([{"if": {"reading": "engine.speed", "above": "100 rpm"}, "steps": [{"read": [
             {"id": "a", "title": "A", "of": "engine.speed", "instrument": "tachometer"}]}],
            "else": [{"read": [
             {"id": "b", "title": "B", "measures": "main_jet.bore", "instrument": "plug_gauges"}]}]}])");
    sim::Simulator live = machine();
    ProcedureRun run(steps);
    run.finish(live);
    CHECK(!run.values()[0].has_value());
    CHECK(run.values()[1] == live.parameter("main_jet", "bore"));
    CHECK(observation_text(steps.readings[0], observe_exactly(steps.readings[0], {})) ==
          "not read");
}

TEST_CASE("what is wrong with a step is said with its place and what would be right")
{
    CHECK(refusal(R"([{"jump": 1}])") ==
          "steps at /0: is no step; allowed: set, do, wait, watch, read, repeat, if, restore, "
          "alter, leaps");
    CHECK(refusal(R"([{"set": "tapp", "to": 1}])")
              .starts_with("steps at /0/set: there is no control \"tapp\"; did you mean \"tap\"?"));
    CHECK(refusal(R"([{"set": "tap", "to": 2}])")
              .starts_with("steps at /0/to: 2 is out of range; allowed: 0 to 1"));
    CHECK(refusal(R"([{"wait": "20 day"}])") ==
          "steps at /0/wait: \"20 day\" is out of range; allowed: 1 ms to 10 day");
    CHECK(refusal(R"([{"restore": "main_jet"}])") ==
          "steps at /0/restore: the rig mower has no parameter \"main_jet\"; allowed: "
          "part.parameter");
    CHECK(refusal(R"([{"watch": "1 s", "read": [{"id": "a", "title": "A", "of": "bowl.fuell",
                      "instrument": "graduated_cup"}]}])") ==
          "steps at /0/read/0/of: there is no reading \"bowl.fuell\"; did you mean \"bowl.fuel\"?");
    CHECK(refusal(R"([{"read": [{"id": "a", "title": "A", "of": "bowl.fuel",
                      "instrument": "watch"}]}])")
              .find("reads a duration, but this is a volume") != std::string::npos);
    CHECK(refusal(R"([{"read": [{"id": "a", "title": "A", "of": "bowl.fuel", "as": "mean",
                      "instrument": "graduated_cup"}]}])") ==
          "steps at /0/read/0/as: what is read at once can only be last");
    CHECK(refusal(R"([{"alter": "main_jet.bore", "scale": 1.1, "add": "1 mm"}])") ==
          "steps at /0: wants exactly one of scale, add, set");
}

TEST_CASE("steps cannot be nested or multiplied without end")
{
    std::string deep = R"([{"wait": "1 s"}])";
    for (int i = 0; i < 8; ++i) {
        deep = R"([{"if": {"reading": "engine.speed", "above": "1 rpm"}, "steps": )" + deep + "}]";
    }
    CHECK(refusal(deep).ends_with("steps are nested too deep; allowed: 6"));
    std::string many = "[";
    for (int i = 0; i < 2001; ++i) {
        many += std::string(i == 0 ? "" : ",") + R"({"wait": "1 s"})";
    }
    CHECK(refusal(many + "]").ends_with("too many steps; allowed: 2000"));
}

TEST_SUITE_END();
