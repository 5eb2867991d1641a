#include "scenes/present/phrase.hpp"
#include "scenes/present/catalogue.hpp"
#include "scenes/present/readout.hpp"
#include "scenes/view/number.hpp"
#include "sim/error.hpp"
#include "tests/temporary_folder.hpp"

#include <doctest/doctest.h>

using namespace scenes;

TEST_SUITE_BEGIN("present");

namespace {

/// Speaks a language while it lives.
struct Speaking {
    explicit Speaking(std::string_view id) { choose_language(id); }
    ~Speaking()
    {
        choose_decimal_sign(DecimalSign::of_language);
        choose_language("en");
    }
    Speaking(const Speaking&) = delete;
    Speaking& operator=(const Speaking&) = delete;
};

} // namespace

TEST_CASE("a phrase is read in the language that is chosen and English otherwise")
{
    constexpr Phrase pull = phrase("Pull the cord");
    CHECK(std::string(pull) == "Pull the cord");
    const std::string_view before = pull;
    {
        const Speaking spanish("es");
        CHECK(chosen_language() == "es");
        CHECK(std::string_view(pull) == "Tirar de la cuerda");
        CHECK(translated("Pull the cord") == "Tirar de la cuerda");
        CHECK(translated("no such text anywhere") == "no such text anywhere");
        CHECK(before == "Pull the cord"); // what was given out stays as it is
        CHECK(reading_title("main_jet.flow") == "surtidor principal: caudal");
    }
    CHECK(std::string_view(pull) == "Pull the cord");
    CHECK(reading_title("main_jet.flow") == "main jet flow");
}

TEST_CASE("the sense of a phrase is for translators only")
{
    constexpr Phrase open = phrase("Open|a file");
    CHECK(std::string_view(open) == "Open");
    CHECK(translated("It idles | it stalls") == "It idles | it stalls"); // somebody's own text
    const Speaking spanish("es");
    CHECK(std::string_view(open) == "Abrir");
}

TEST_CASE("places to fill take their pieces in any order and leave other braces alone")
{
    CHECK(filled("{1} of {0}", {"two", "one"}) == "one of two");
    CHECK(filled("{0}{0}", {"ab"}) == "abab");
    CHECK(filled("{} {x} {2} {", {"a"}) == "{} {x} {2} {");
    CHECK(filled("plain", {}) == "plain");
    CHECK(places_of("a {1} and {0}, {1}") == "{0}{1}");
}

TEST_CASE("numbers have the decimal sign of the language unless a point is asked for")
{
    CHECK(fixed_text(1.5, 2) == "1.50");
    const Speaking spanish("es");
    CHECK(fixed_text(-1.5, 1) == "\u22121,5");
    CHECK(clock_text(61.5) == "1:01,50");
    const int age = wording_age();
    choose_decimal_sign(DecimalSign::point);
    CHECK(wording_age() > age);
    CHECK(fixed_text(1.5, 1) == "1.5");
}

TEST_CASE("a language that is not there is refused with those that are")
{
    CHECK_THROWS_WITH_AS(choose_language("ex"), doctest::Contains("did you mean \"en\""),
                         sim::RequestError);
    CHECK(chosen_language() == "en");
    REQUIRE(languages().size() >= 2);
    CHECK(languages()[0].id == "en");
    CHECK(languages()[1].title == "Espa\u00f1ol");
}

TEST_CASE("a catalogue with a fault in it says where")
{
    const TemporaryFolder folder;
    const auto load = [&](const std::string& phrases, const std::string& sign = ".") {
        return load_catalogue(folder.with("xx.json", R"({"format": 1, "id": "xx", "title": "X", )"
                                                     R"("decimal_sign": ")" +
                                                         sign + R"(", "phrases": )" + phrases +
                                                         "}"));
    };
    CHECK(load(R"({"a {0}": "b {0}"})").phrases.at("a {0}") == "b {0}");
    CHECK_THROWS_WITH_AS(load(R"({"a {0}": "b"})"), doctest::Contains("/phrases/a {0}"),
                         sim::AssetError);
    CHECK_THROWS_AS(load(R"({"a": "b {0}"})"), sim::AssetError);
    CHECK_THROWS_AS(load(R"({"a": ""})"), sim::AssetError);
    CHECK_THROWS_AS(load(R"({"a": 1})"), sim::AssetError);
    CHECK_THROWS_AS(load(R"({})", ";"), sim::AssetError);
}

TEST_SUITE_END();
