#include "scenes/shop/class_sheet.hpp"
#include "tools.hpp"

#include <nlohmann/json.hpp>

#include <regex>
#include <set>

using namespace shop;
using nlohmann::json;

namespace {

/// What marking makes of a short attempt, its marks put in by hand.
Marked some_work(std::string student)
{
    Marked marked;
    marked.student = std::move(student);
    marked.file = "small_order-2026-01-02-030405.jsonl";
    marked.order = tests::small_order();
    Attempt attempt(marked.order, 3);
    attempt.finish();
    attempt.perform(DoCheck{"look_round", {}});
    attempt.perform(DoRepair{"clear_vents", {}});
    attempt.perform(Finding{{"bowl_vent_plugged"}, Advice::clean, 8.0, 0.0, "<vent>, \"shut\""});
    attempt.perform(HandIn{});
    marked.work = {attempt.lines(), {3.0, 1.5, 1.5, 1.5, 1.5}};
    marked.good = {{attempt.lines().front()}, {3.0, 0.25}};
    marked.marks.marks = {{"solved", 30.0, 30.0, {{scenes::phrase("It has to pass all.")}}},
                          {"cause", 12.5, 20.0, {{scenes::phrase("Your estimate was fair.")}}}};
    return marked;
}

/// source:  RFC 3987: an identifier begins with a scheme
bool is_iri(const json& value)
{
    return std::regex_match(value.get<std::string>(), std::regex("[a-z][a-z0-9+.-]*:[^\\s<>]+"));
}

} // namespace

TEST_SUITE_BEGIN("shop");

TEST_CASE("a student's name stands in the class sheet as it was written and does no harm there")
{
    const std::vector<Marked> all{some_work("Bench <2>, \"left\"")};
    // RFC 4180: a field with a comma or a quote is quoted, quotes doubled.
    CHECK(class_csv(all).find("\"Bench <2>, \"\"left\"\"\"") != std::string::npos);
    const std::string page = class_html(all);
    CHECK(page.find("Bench &lt;2&gt;, &quot;left&quot;") != std::string::npos);
    CHECK(page.find("<2>") == std::string::npos);
    CHECK(page.find("It has to pass all.") != std::string::npos);
}

TEST_CASE("a student's path is drawn to scale beside good work's")
{
    const Marked work = some_work("");
    const std::string svg = course_svg(work.work, work.good);
    const auto count = [&](const std::string& what) {
        std::size_t found = 0;
        for (auto at = svg.find(what); at != std::string::npos; at = svg.find(what, at + 1)) {
            ++found;
        }
        return found;
    };
    CHECK(count("<rect") == 3); // a check and a repair here, a check there; writing takes no time
    CHECK(count("class=repair") == 1);
    // Both begin at the same doubt, the top, and good work's falls to a twelfth of it.
    CHECK(count("d=\"M92.0 22.0H") == 2);
    CHECK(count("V139.3\"") == 1); // 150 - 128 / 12
    // The longer work ends at the right edge; writing the finding and handing in take no time.
    CHECK(count("H884.0V86.0") == 3);
}

TEST_CASE("what goes to a learning system keeps the rules of its statements")
{
    // Rules of xAPI 1.0.3, part two, sections 2.4.1 to 2.4.6 (from memory).
    const std::vector<Marked> all{some_work("Bench 2"), some_work("")};
    const json statements = json::parse(xapi_statements(all));
    REQUIRE(statements.size() == all[0].work.lines.size() + all[1].work.lines.size() + 2);
    std::set<std::string> ids;
    for (const json& statement : statements) {
        const auto id = statement.at("id").get<std::string>();
        CAPTURE(id);
        CHECK(std::regex_match(
            id, std::regex("[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}")));
        ids.insert(id);
        const json& actor = statement.at("actor");
        CHECK(actor.at("objectType") == "Agent");
        CHECK_FALSE(actor.contains("mbox")); // one identity, not two
        CHECK(actor.at("account").at("homePage").get<std::string>().starts_with("https://"));
        CHECK_FALSE(actor.at("account").at("name").get<std::string>().empty());
        CHECK(is_iri(statement.at("verb").at("id")));
        CHECK(statement.at("verb").at("display").contains("en"));
        const json& object = statement.at("object");
        CHECK(object.at("objectType") == "Activity");
        CHECK(is_iri(object.at("id")));
        CHECK(is_iri(object.at("definition").at("type")));
        CHECK(std::regex_match(statement.at("result").at("duration").get<std::string>(),
                               std::regex("PT[0-9]+S")));
    }
    CHECK(ids.size() == statements.size());
    CHECK(xapi_statements(all) == xapi_statements(all)); // taken once, however often it is sent

    const json& result = statements[all[0].work.lines.size()].at("result");
    const json& score = result.at("score");
    CHECK(score.at("raw") == 42.5);
    CHECK(score.at("min") <= score.at("raw"));
    CHECK(score.at("raw") <= score.at("max"));
    CHECK(score.at("scaled").get<double>() == doctest::Approx(0.85));
    CHECK(result.at("success") == true);
    for (const auto& [key, value] : result.at("extensions").items()) {
        CHECK(is_iri(key));
        CHECK_FALSE(value.at("says").get<std::string>().empty());
    }
    CHECK(statements.back().at("actor") != statements.front().at("actor"));
}

TEST_SUITE_END();
