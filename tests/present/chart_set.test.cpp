#include "scenes/present/chart_set.hpp"
#include "scenes/present/bench_model.hpp"
#include "scenes/present/command_text.hpp"

#include <doctest/doctest.h>

#include <algorithm>

namespace {

using scenes::ChartChoice;
using scenes::ChartSet;

std::shared_ptr<const sim::Rig> mower()
{
    static const auto rig = std::make_shared<const sim::Rig>(sim::load_rig("mower"));
    return rig;
}

} // namespace

TEST_SUITE("present")
{
    TEST_CASE("a chart takes three lines in two units, and the oldest make room")
    {
        const sim::Simulator machine(mower());
        ChartSet set(machine);
        REQUIRE(set.charts().size() == 3);
        const std::size_t speed = machine.reading_index("engine.speed");
        const std::size_t level = machine.reading_index("bowl.level");
        const std::size_t lift = machine.reading_index("needle.lift");
        const std::size_t flow = machine.reading_index("main_jet.flow");
        set.toggle(0, speed); // the last line stays
        CHECK(set.charts()[0].lines.size() == 1);
        set.toggle(0, level);
        set.toggle(0, lift);
        const ChartChoice& chart = set.charts()[0];
        REQUIRE(chart.lines.size() == 3);
        CHECK(chart.lines[0].axis == 0);
        CHECK(chart.lines[1].axis == 1);
        CHECK(chart.lines[2].axis == 1);
        CHECK(chart.axis(0)->unit == "rpm");
        CHECK(chart.axis(1)->unit == "mm");
        set.toggle(0, flow); // a third unit, a fourth line
        CHECK_FALSE(chart.has(speed));
        CHECK(chart.has(flow));
        CHECK(chart.lines.size() == 3);
        CHECK(chart.axis(0)->unit == "mm");
        set.toggle(0, level);
        set.toggle(0, lift);
        CHECK(chart.axis(0)->unit == "mL/min");
        CHECK(chart.axis(1) == nullptr);
    }

    TEST_CASE("charts are added up to six and removed down to one")
    {
        const sim::Simulator machine(mower());
        ChartSet set(machine);
        while (set.can_add()) {
            set.add_chart(0);
        }
        CHECK(set.charts().size() == ChartSet::most_charts);
        set.add_chart(0);
        CHECK(set.charts().size() == ChartSet::most_charts);
        for (std::size_t i = 0; i < 10; ++i) {
            set.remove_chart(0);
        }
        CHECK(set.charts().size() == 1);
    }

    TEST_CASE("a reading that no chart shows takes the last chart's place")
    {
        const sim::Simulator machine(mower());
        ChartSet set(machine);
        const std::size_t pressure = machine.reading_index("bowl.pressure");
        CHECK(set.show(machine.reading_index("engine.speed")) == 0);
        CHECK(set.show(pressure) == 2);
        CHECK(set.charts()[2].lines.size() == 1);
        CHECK(set.charts()[2].has(pressure));
    }

    TEST_CASE("an exported span holds times, the machine's and the twin's values in shown units")
    {
        scenes::BenchModel model(mower());
        model.go_ahead_to(1.0);
        model.finish_replay();
        ChartSet set(model.run().machine());
        const std::string text = scenes::chart_csv(set.charts()[1], model.run(), 0.5, 0.6);
        const std::string head = "time (s),bowl level (mm),\"bowl level, healthy twin (mm)\","
                                 "needle lift (mm),\"needle lift, healthy twin (mm)\"\r\n";
        CHECK(text.substr(0, head.size()) == head);
        CHECK(std::ranges::count(text, '\n') == 7); // the head, and 0.5 to 0.6 s by 20 ms
        CHECK(text.find("\r\n0.5,") != std::string::npos);
        CHECK(text.find("\r\n0.6,") != std::string::npos);
        CHECK(text.find("\r\n0.62,") == std::string::npos);
        const double level =
            model.run().history().fine().at(model.run().machine().reading_index("bowl.level"), 25);
        const std::size_t row = text.find("\r\n0.5,") + 6;
        CHECK(std::stod(text.substr(row)) == doctest::Approx(level * 1000.0));
    }

    TEST_CASE("commands are told in a person's words")
    {
        const sim::Rig& rig = *mower();
        CHECK(scenes::command_text(rig, sim::SetControl{"load", 0.5}) == "Load: 50 %");
        CHECK(scenes::command_text(rig, sim::Do{"pull_cord", 0.0}) == "Pull the cord");
        CHECK(scenes::command_text(rig, sim::SetFault{"bowl_vent_plugged", 1.0}) ==
              "Bowl vent plugged: 100 %");
        CHECK(scenes::command_text(rig, sim::SetControl{"tilt_side", -20.0})
                  .ends_with(": \u221220 \u00B0"));
    }
}
