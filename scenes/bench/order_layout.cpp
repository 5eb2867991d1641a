#include "scenes/bench/order_layout.hpp"

#include <algorithm>
#include <cmath>

// Sizes are pixels at text scale 1, chosen for looks.

namespace scenes {
namespace {

constexpr float margin = 8.0F;
constexpr float least_column = 330.0F;
constexpr float line = 20.0F;

bool is_small(sf::Vector2f window, const Look& look)
{
    return window.x / look.scale < 3.0F * least_column || window.y / look.scale < 500.0F;
}

void lay_out_pages(OrderLayout& layout, sf::Vector2f window, const Look& look, OrderPage page,
                   bool has_message)
{
    const float gap = look.whole(margin);
    const float rows = window.x / look.scale < 800.0F ? 2.0F : 1.0F;
    layout.pages = {gap, gap, window.x - 2.0F * gap, look.whole(24.0F) + rows * look.whole(32.0F)};
    const bool has_status = has_message || page == OrderPage::machine;
    const float status = has_status ? look.whole(2.0F * line + 4.0F) : 0.0F;
    layout.status = {gap, window.y - gap - status, window.x - 2.0F * gap, status};
    const float top = layout.pages.top + layout.pages.height + gap;
    const sf::FloatRect body{gap, top, window.x - 2.0F * gap,
                             layout.status.top - (has_status ? gap : 0.0F) - top};
    switch (page) {
    case OrderPage::order:
        layout.card = body;
        break;
    case OrderPage::machine:
        layout.machine = body;
        break;
    case OrderPage::sheet:
        layout.sheet = body;
        break;
    case OrderPage::checks:
    case OrderPage::repairs:
    case OrderPage::suspects:
    case OrderPage::finding:
    case OrderPage::marks:
        layout.work = body;
        break;
    }
}

void lay_out_all(OrderLayout& layout, sf::Vector2f window, const Look& look)
{
    const float gap = look.whole(margin);
    const float room = window.x - 4.0F * gap;
    const float height = window.y - 2.0F * gap;
    const float side = std::round(std::clamp(0.32F * room, look.px(least_column), 0.36F * room));
    const float left = room - 2.0F * side;
    layout.work = {window.x - gap - side, gap, side, height};
    layout.sheet = {layout.work.left - gap - side, gap, side, height};
    const float status = look.whole(3.0F * line + 6.0F);
    layout.status = {gap, window.y - gap - status, left, status};
    const float card = std::round(std::clamp(0.5F * height, look.px(250.0F), look.px(420.0F)));
    layout.card = {gap, gap, left, card};
    const float top = gap + card + gap;
    layout.machine = {gap, top, left, layout.status.top - gap - top};
}

} // namespace

OrderLayout lay_out_order(sf::Vector2f window, const Look& look, OrderPage page, bool has_message)
{
    OrderLayout layout;
    layout.is_compact = is_small(window, look);
    if (layout.is_compact) {
        lay_out_pages(layout, window, look, page, has_message);
    } else {
        lay_out_all(layout, window, look);
    }
    return layout;
}

ShelfLayout lay_out_shelf(sf::Vector2f window, const Look& look)
{
    const float gap = look.whole(margin);
    const sf::Vector2f room{window.x - 2.0F * gap, window.y - 2.0F * gap};
    const bool is_compact = window.x / look.scale < 2.0F * least_column + 3.0F * margin;
    if (is_compact) {
        const float list = std::round(0.42F * room.y);
        return {
            true, {gap, gap, room.x, list}, {gap, gap + list + gap, room.x, room.y - list - gap}};
    }
    const float card = std::round(std::max(0.42F * room.x, look.px(least_column)));
    return {
        false, {gap, gap, room.x - card - gap, room.y}, {gap + room.x - card, gap, card, room.y}};
}

} // namespace scenes
