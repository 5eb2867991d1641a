#include "sim/printable.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace sim;
using namespace std::string_literals;

TEST_SUITE_BEGIN("sim");

TEST_CASE("a printable text stays as it is")
{
    for (const auto* text : {"", "needle seat, 0.5 mm", "Größe 5 µm", "燃料", "\xf0\x9f\x9b\xa2"}) {
        CHECK(printable(text) == text);
    }
}

TEST_CASE("what could break a line or command a terminal comes out as an escape")
{
    CHECK(printable("a\nb\tc") == "a\\x0ab\\x09c");
    CHECK(printable("\x1b[31mred") == "\\x1b[31mred");
    CHECK(printable("nothing\0here"s) == "nothing\\x00here");
    CHECK(printable("\x7f") == "\\x7f");
    CHECK(printable("\xc2\x9b") == "\\u009b");     // a control character of two bytes
    CHECK(printable("\xe2\x80\xae") == "\\u202e"); // turns the direction of writing
    CHECK(printable("\xe2\x80\xa8") == "\\u2028"); // line separator
}

TEST_CASE("bytes that are not UTF-8 come out as escapes")
{
    // RFC 3629, sections 3, 4 and 10: stray and missing continuations, overlong forms, surrogates,
    // what lies beyond U+10FFFF.
    CHECK(printable("\x80") == "\\x80");
    CHECK(printable("\xc3") == "\\xc3");
    CHECK(printable("\xc3(") == "\\xc3(");
    CHECK(printable("\xc0\xaf") == "\\xc0\\xaf");
    CHECK(printable("\xe0\x80\xaf") == "\\xe0\\x80\\xaf");
    CHECK(printable("\xed\xa0\x80") == "\\xed\\xa0\\x80");
    CHECK(printable("\xf4\x90\x80\x80") == "\\xf4\\x90\\x80\\x80");
    CHECK(printable("\xff") == "\\xff");
}

TEST_CASE("a long text is quoted by its beginning, never by half a character")
{
    CHECK(in_quotes("choke") == "\"choke\"");
    CHECK(in_quotes(std::string(60, 'a')) == '"' + std::string(60, 'a') + '"');
    CHECK(in_quotes(std::string(61, 'a')) == '"' + std::string(60, 'a') + "...\"");
    CHECK(in_quotes(std::string(59, 'a') + "\xc3\xa4" + "b") ==
          '"' + std::string(59, 'a') + "...\"");
}

TEST_SUITE_END();
