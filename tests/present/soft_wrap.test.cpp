#include "scenes/present/soft_wrap.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>

using namespace scenes;

TEST_SUITE_BEGIN("present");

namespace {

/// Wrapped to lines of so many characters.
std::string wrapped(std::string text, std::size_t width)
{
    wrap_softly(text, static_cast<float>(width),
                [](std::string_view piece) { return static_cast<float>(piece.size()); });
    return text;
}

} // namespace

TEST_CASE("a text is broken at the last space that fits")
{
    CHECK(wrapped("it starts and then dies", 10) == "it starts\nand then\ndies");
    CHECK(wrapped("it starts and then dies", 9) == "it starts\nand then\ndies");
    CHECK(wrapped("it starts", 9) == "it starts");
    CHECK(wrapped("", 9).empty());
}

TEST_CASE("a word wider than a line stands on one of its own")
{
    CHECK(wrapped("an unbelievable day", 6) == "an\nunbelievable\nday");
    CHECK(wrapped("unbelievable", 6) == "unbelievable");
}

TEST_CASE("whatever the width every character keeps its place and words stay whole")
{
    const std::string text =
        "It  starts, runs for ten minutes on the lawn, then\ndies; a rest helps. ";
    for (std::size_t width = 1; width < text.size() + 2; ++width) {
        CAPTURE(width);
        std::string once = wrapped(text, width);
        CHECK(wrapped(once, width) == once);
        std::string plain = text;
        std::ranges::replace(once, '\n', ' ');
        std::ranges::replace(plain, '\n', ' ');
        CHECK(once == plain);
    }
}

TEST_SUITE_END();
