#include "scenes/present/widget_check.hpp"

#include <doctest/doctest.h>

using namespace scenes;

TEST_SUITE_BEGIN("present");

namespace {

Widget widget(const char* name, const char* role, WidgetBox box)
{
    Widget made;
    made.name = name;
    made.role = role;
    made.panel = "p";
    made.box = box;
    return made;
}

std::size_t troubles(std::vector<Widget> widgets)
{
    return widget_troubles(widgets, 200.0F, 100.0F).size();
}

} // namespace

TEST_CASE("widgets side by side are well and those on each other are told")
{
    const Widget a = widget("a", "button", {10, 10, 50, 20});
    CHECK(troubles({a, widget("b", "button", {60, 10, 50, 20})}) == 0);
    CHECK(troubles({a, widget("b", "button", {50, 10, 50, 20})}) == 1);
    CHECK(troubles({a, widget("b", "text", {10, 29, 50, 20})}) == 0);
    CHECK(troubles({a, widget("b", "text", {10, 25, 50, 20})}) == 1);
    // What holds others lies under them.
    CHECK(troubles({a, widget("b", "choice", {0, 0, 100, 50})}) == 0);
    CHECK(troubles({widget("f", "text field", {0, 0, 100, 30}),
                    widget("clear", "button", {70, 0, 30, 30})}) == 0);
}

TEST_CASE("cut words and widgets beyond the window are told unless out of sight")
{
    Widget cut = widget("a", "button", {10, 10, 50, 20});
    cut.fits = false;
    CHECK(troubles({cut}) == 1);
    cut.is_visible = false;
    CHECK(troubles({cut}) == 0);
    CHECK(troubles({widget("a", "button", {180, 10, 50, 20})}) == 1);
    CHECK(troubles({widget("a", "button", {-20, 10, 50, 20})}) == 1);
}

TEST_SUITE_END();
