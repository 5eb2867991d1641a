#include "scenes/command_line/csv.hpp"
#include "scenes/command_line/table.hpp"

#include <doctest/doctest.h>

#include <limits>

using namespace scenes;

TEST_SUITE_BEGIN("command_line");

TEST_CASE("a cell is quoted only where it must be")
{
    // RFC 4180, section 2, rules 5 to 7.
    CHECK(csv_cell("tank.pressure [kPa]") == "tank.pressure [kPa]");
    CHECK(csv_cell("") == "");
    CHECK(csv_cell("a,b") == "\"a,b\"");
    CHECK(csv_cell("say \"rich\"") == "\"say \"\"rich\"\"\"");
    CHECK(csv_cell("two\r\nlines") == "\"two\r\nlines\"");
    CHECK(csv_cell("\n") == "\"\n\"");
    CHECK(csv_cell("\"") == "\"\"\"\"");
}

TEST_CASE("a line ends in CRLF and keeps its empty cells")
{
    // RFC 4180, section 2, rules 1 and 4.
    CHECK(csv_line({"a", "b,c", "d"}) == "a,\"b,c\",d\r\n");
    CHECK(csv_line({"", "", ""}) == ",,\r\n");
    CHECK(csv_line({"a"}) == "a\r\n");
}

TEST_CASE("a number has nine digits at most, and none when there is no number")
{
    CHECK(csv_number(0.1) == "0.1");
    CHECK(csv_number(3000.0) == "3000");
    CHECK(csv_number(1.0 / 3.0) == "0.333333333");
    CHECK(csv_number(-2.5e-12) == "-2.5e-12");
    CHECK(csv_number(864'000.001) == "864000.001");
    CHECK(csv_number(-0.0) == "0");
    CHECK(csv_number(std::numeric_limits<double>::infinity()).empty());
    CHECK(csv_number(std::numeric_limits<double>::quiet_NaN()).empty());
    CHECK(csv_number(std::numeric_limits<double>::lowest()) == "-1.79769313e+308");
}

TEST_CASE("columns of a table begin below each other, also after wide letters")
{
    CHECK(aligned({{"a", "first", "x"}, {"äöü", "", "y"}, {"bb", "2", ""}}) == "a    first  x\n"
                                                                               "äöü         y\n"
                                                                               "bb   2\n");
    CHECK(aligned({}).empty());
    CHECK(aligned({{"\x1b[2J", "x"}}) == "\\x1b[2J  x\n");
}

TEST_SUITE_END();
