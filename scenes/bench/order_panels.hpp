#pragma once

#include "scenes/bench/order_view.hpp"
#include "scenes/ui/panel.hpp"

// The panels and dialogs of work orders.

namespace scenes {

/// The list of orders, and the card of the one chosen: complaint, attempts begun, a new one.
void show_shelf(OrderTable& table, sf::Vector2f window);
/// Reads the shelf anew.
void read_shelf(OrderTable& table);
/// Goes on with an order as somebody who has just begun or resumed it.
void take_up(OrderTable& table);

/// The customer's card.
void show_card(OrderTable& table, const sf::FloatRect& box);
void show_job_sheet(OrderTable& table, const sf::FloatRect& box);
/// The row of pages of a small window.
void show_order_pages(OrderTable& table, const sf::FloatRect& box);
/// The panel whose part the page chooses.
void show_work(OrderTable& table, const OrderLayout& layout);

void show_checks(OrderTable& table);
void show_repairs(OrderTable& table);
void show_suspects(OrderTable& table);
void show_finding(OrderTable& table);
void show_marks(OrderTable& table);

/// Begins a check or repair: first the guess it asks for, then its cautions, then the work.
void begin_check(OrderTable& table, const std::string& check);
void begin_repair(OrderTable& table, const std::string& repair);
void show_order_dialogs(OrderTable& table);

/// Does an action, and says why when it cannot be done.
bool act(OrderTable& table, const shop::Action& action);

/// Puts the machine of the order on the bench, cut open, as it came in.
void look_inside(OrderTable& table);

} // namespace scenes
