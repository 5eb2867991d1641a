#include "sim/veil.hpp"

#include "sim/error.hpp"
#include "sim/run_sheet.hpp"

#include <doctest/doctest.h>

// What a file is not to tell at a glance.

namespace {

const sim::Rig& mower()
{
    static const sim::Rig rig = sim::load_rig("mower");
    return rig;
}

std::string complaint(const std::string& text)
{
    try {
        (void)sim::parse_run_sheet(text, "run.json", mower());
    } catch (const sim::AssetError& error) {
        return error.what();
    }
    return "";
}

} // namespace

TEST_SUITE("sim")
{
    TEST_CASE("what is veiled comes back, and a change in any place is seen")
    {
        for (const std::string text : {"", "a", "bowl_vent_plugged"}) {
            const std::string veiled = sim::veil(text);
            CHECK(sim::unveil(veiled) == text);
            for (std::size_t i = 0; i < veiled.size(); ++i) {
                std::string changed = veiled;
                changed[i] = changed[i] == '0' ? '1' : '0';
                CHECK_THROWS_AS((void)sim::unveil(changed), sim::RequestError);
            }
            CHECK_THROWS_AS((void)sim::unveil(veiled + "00"), sim::RequestError);
            CHECK_THROWS_AS((void)sim::unveil(veiled.substr(2)), sim::RequestError);
        }
        CHECK_THROWS_AS((void)sim::unveil("not it at all"), sim::RequestError);
    }

    TEST_CASE("the veil begins with the published FNV-1a sum of the text")
    {
        // source: FNV-1a, 64 bits, of "a": af63dc4c8601ec8c (from memory); lowest byte first
        CHECK(sim::veil("a").starts_with("8cec01864cdc63af"));
    }

    TEST_CASE("a hidden fault is not named in a saved sheet and opens again")
    {
        const sim::RunSheet sheet{"mower",
                                  {{0, sim::SetFault{"cap_vent_plugged", 1.0}},
                                   {0, sim::SetFault{"bowl_vent_plugged", 0.8}},
                                   {2000, sim::SetFault{"bowl_vent_plugged", 0.3}}}};
        const std::vector<std::string> hidden{"bowl_vent_plugged"};
        const std::string text = sim::write_run_sheet(sheet, mower(), hidden);
        CHECK(text.find("bowl_vent") == std::string::npos);
        CHECK(text.find("0.8") == std::string::npos);
        CHECK(text.find("cap_vent_plugged") != std::string::npos);
        const sim::RunSheet again = sim::parse_run_sheet(text, "run.json", mower());
        CHECK(again.commands == sheet.commands);
        REQUIRE(again.hidden.size() == 2);
        CHECK(again.hidden[0] == hidden[0]);
    }

    TEST_CASE("a hidden fault that was edited or moved is refused in one line")
    {
        const sim::RunSheet sheet{"mower", {{5000, sim::SetFault{"bowl_vent_plugged", 0.8}}}};
        const std::vector<std::string> hidden{"bowl_vent_plugged"};
        const std::string text = sim::write_run_sheet(sheet, mower(), hidden);
        std::string edited = text;
        const std::size_t at = edited.find("what") + 20;
        edited[at] = edited[at] == '7' ? '8' : '7';
        std::string moved = text;
        moved.replace(moved.find("5 s"), 3, "6 s");
        for (const std::string& wrong : {edited, moved}) {
            const std::string said = complaint(wrong);
            CAPTURE(said);
            CHECK(said.find("run.json") != std::string::npos);
            CHECK(said.find("/commands/0/what") != std::string::npos);
            CHECK(said.find("allowed: ") != std::string::npos);
            CHECK(said.find('\n') == std::string::npos);
            CHECK(said.find("bowl_vent") == std::string::npos);
        }
    }
}
