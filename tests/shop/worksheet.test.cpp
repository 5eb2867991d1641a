#include "scenes/shop/worksheet.hpp"

#include "scenes/present/phrase.hpp"
#include "scenes/shop/class_sheet.hpp"
#include "tests/shop/tools.hpp"

#include <doctest/doctest.h>

#include <cctype>

using namespace shop;

TEST_SUITE_BEGIN("shop");

namespace {

/// What is wrong with a page as XML: tags that do not close, text that is not escaped; empty when
/// nothing is.
///
/// source:  W3C, Extensible Markup Language 1.0, 5th ed., sections 2.4, 3.1
std::string fault_of(const std::string& page)
{
    std::vector<std::string> open;
    std::size_t at = page.find("<html");
    while (at < page.size()) {
        const std::size_t tag = page.find('<', at);
        const std::string text = page.substr(at, tag - at);
        for (std::size_t amp = text.find('&'); amp != std::string::npos;
             amp = text.find('&', amp + 1)) {
            if (text.find(';', amp) > amp + 6) {
                return "a bare & in: " + text;
            }
        }
        if (text.find('>') != std::string::npos && (open.empty() || open.back() != "style")) {
            return "a bare > in: " + text;
        }
        if (tag == std::string::npos) {
            break;
        }
        const std::size_t end = page.find('>', tag);
        const std::string inside = page.substr(tag + 1, end - tag - 1);
        if (inside.find('<') != std::string::npos) {
            return "a tag in a tag: " + inside;
        }
        const std::string name = inside.substr(0, inside.find_first_of(" /", 1));
        if (inside.starts_with('/')) {
            if (open.empty() || "/" + open.back() != inside) {
                return "closes what is not open: " + inside;
            }
            open.pop_back();
        } else if (!inside.ends_with('/')) {
            open.push_back(name);
        }
        at = end + 1;
    }
    return open.empty() ? "" : "stays open: " + open.back();
}

std::shared_ptr<const Order> order_with(const std::string& what, const std::string& with)
{
    return parse_order(tests::order_text(what, with), "order", tests::workshops());
}

/// A review as good work would leave it, without any simulation.
Review reviewed(const Order& order)
{
    Review review;
    const Check& check = *order.workshop->find_check("bowl_drain_crack");
    JobLine line{DoCheck{check.id, check.cautions}, {}, check.minutes, check.money, false};
    for (const Reading& reading : check.procedure.readings) {
        line.observations.push_back(observe_exactly(reading, 0.0));
    }
    review.good.lines = {
        {Predict{check.id, check.procedure.readings.front().id, "lower"}, {}, 0.0, 0.0, false},
        line,
        {Suspect{{"bowl_vent_plugged"}}, {}, 0.0, 0.0, false},
        {DoRepair{"clear_vents", {}}, {}, 11.0, 2.5, false},
        {Finding{{"bowl_vent_plugged"}, Advice::clean, 11.0, 2.5, ""}, {}, 0.0, 0.0, false},
        {HandIn{}, {}, 0.0, 0.0, false}};
    review.good.minutes = 37.0;
    review.alike = {"float_level_low", "tap_part_shut"};
    review.unmeant = {"tap_part_shut"};
    return review;
}

bool says(const std::string& page, std::string_view text)
{
    return page.find(html_text(text)) != std::string::npos;
}

} // namespace

TEST_CASE("the test of pages finds what is wrong with them")
{
    CHECK(fault_of("<html><p>a</p></html>").empty());
    CHECK(!fault_of("<html><p>a</html>").empty());
    CHECK(!fault_of("<html>a & b</html>").empty());
    CHECK(!fault_of("<html>a > b</html>").empty());
    CHECK(!fault_of("<html>").empty());
}

TEST_CASE("a worksheet is a whole page and holds all that may be done")
{
    const auto order = tests::small_order();
    const std::string page = worksheet_html(*order);
    CHECK(fault_of(page) == "");
    CHECK(says(page, order->title));
    CHECK(says(page, order->complaint));
    CHECK(says(page, order->customer));
    for (const std::string& id : order->checks) {
        CAPTURE(id);
        CHECK(says(page, order->workshop->find_check(id)->title));
        for (const std::string& caution : order->workshop->find_check(id)->cautions) {
            CHECK(says(page, order->workshop->find_caution(caution)->says));
        }
    }
    for (const std::string& id : order->repairs) {
        CAPTURE(id);
        CHECK(says(page, order->workshop->find_repair(id)->title));
    }
    CHECK(!says(page, order->workshop->find_check("squirt_start")->title)); // not permitted
    CHECK(says(page, "licensed practice"));
    CHECK(page.find("<script") == std::string::npos);
    CHECK(page.find("http") == std::string::npos);
}

TEST_CASE("a worksheet is the same whatever is hidden")
{
    const std::string page = worksheet_html(*tests::small_order());
    for (const auto& [what, with] : std::initializer_list<std::pair<const char*, const char*>>{
             {"\"bowl_vent_plugged\", \"severity\": 1", "\"main_jet_plugged\", \"severity\": 0.4"},
             {"\"look_alikes\": []", "\"look_alikes\": [\"tap_part_shut\"]"},
             {"\"causes\": []", "\"causes\": [\"tap_part_shut\"]"},
             {"\"advice\": \"clean\"", "\"advice\": \"replace\""},
             {"The bowl's vent was shut.", "Something else."},
             {"\"seed\": 3", "\"seed\": 4"},
             {"\"solved\": [\"start_cold\", \"look_round\"]", "\"solved\": [\"look_round\"]"}}) {
        CAPTURE(what);
        CHECK(worksheet_html(*order_with(what, with)) == page);
    }
}

TEST_CASE("what people write stands on paper as they wrote it")
{
    const auto order = order_with("It does not run well.", "<b>5 < 6 & \\\"no\\\"</b>");
    const std::string page = worksheet_html(*order);
    CHECK(fault_of(page) == "");
    CHECK(page.find("&lt;b&gt;5 &lt; 6 &amp; &quot;no&quot;&lt;/b&gt;") != std::string::npos);
}

TEST_CASE("an answer key is a whole page and holds what the instructor needs")
{
    const auto order = tests::small_order();
    const Review review = reviewed(*order);
    const std::string page = answer_key_html(*order, review);
    CHECK(fault_of(page) == "");
    const sim::Rig& rig = *order->workshop->rig;
    CHECK(says(page, rig.find_fault("bowl_vent_plugged")->title));
    CHECK(says(page, rig.find_fault("bowl_vent_plugged")->found));
    CHECK(says(page, order->answer.finding));
    CHECK(says(page, rig.find_fault("tap_part_shut")->title));
    CHECK(says(page, order->workshop->find_repair("clear_vents")->title));
    for (const Reading& reading :
         order->workshop->find_check("bowl_drain_crack")->procedure.readings) {
        CHECK(says(page, reading.title));
    }
    for (const std::string& id : order->solved) {
        CHECK(says(page, order->workshop->find_check(id)->title));
    }
    CHECK(says(page, "37"));
}

TEST_CASE("worksheets are printed in the chosen language")
{
    scenes::choose_language("es");
    const std::string page = worksheet_html(*tests::small_order());
    scenes::choose_language("en");
    CHECK(fault_of(page) == "");
    CHECK(page.find("lang=\"es\"") != std::string::npos);
    CHECK(!says(page, "Checks that may be done"));
}

TEST_SUITE_END();
