#include "scenes/present/gathered.hpp"

#include <doctest/doctest.h>

using namespace scenes;
using Notes = std::vector<std::string>;

TEST_SUITE_BEGIN("present");

TEST_CASE("notes that begin alike are told as one and the others stand as they are")
{
    CHECK(gathered({}).empty());
    CHECK(gathered({"One.", "Two: a.", "Three", "Two: b.", "Two: c."}) ==
          Notes{"One.", "Two: a; b; c.", "Three"});
    CHECK(gathered({"At 10:30.", "At 10:40."}) == Notes{"At 10:30.", "At 10:40."});
}

TEST_SUITE_END();
