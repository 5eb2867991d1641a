#include "scenes/bench/builder_view.hpp"

#include "scenes/present/builder_words.hpp"
#include "scenes/present/order_words.hpp"
#include "scenes/ui/controls.hpp"
#include "scenes/ui/form.hpp"
#include "scenes/ui/panel.hpp"
#include "scenes/view/number.hpp"

#include <algorithm>
#include <array>

// Who brings the machine and says what; how the work is marked; the budget.

namespace scenes {
namespace {

constexpr std::array weights{&shop::Order::Weights::solved,  &shop::Order::Weights::cause,
                             &shop::Order::Weights::minutes, &shop::Order::Weights::money,
                             &shop::Order::Weights::order,   &shop::Order::Weights::verified,
                             &shop::Order::Weights::harm,    &shop::Order::Weights::cautions};

} // namespace

void show_builder_customer(BuilderTable& table)
{
    Interface& ui = table.ui();
    entry(table, {.name = words::customer_field, .hint = words::customer_hint, .lines = 4},
          table.next.customer);
    entry(table, {.name = words::complaint_field, .hint = words::complaint_hint, .lines = 4},
          table.next.complaint);
    rule(ui);
    entry(table,
          {.name = words::machine_worth,
           .low = 0.0,
           .high = std::max(800.0, table.next.worth),
           .step = 10.0,
           .rest = 300.0},
          table.next.worth);
    entry(table,
          {.name = words::labour_price,
           .low = 0.0,
           .high = std::max(150.0, table.next.labour),
           .step = 5.0,
           .rest = 90.0},
          table.next.labour);
}

void show_builder_marks(BuilderTable& table)
{
    Interface& ui = table.ui();
    heading(ui, words::budget_head);
    entry(table,
          {.name = words::budget_minutes,
           .low = 5.0,
           .high = std::max(240.0, table.next.minutes),
           .step = 5.0,
           .unit = words::minutes_unit},
          table.next.minutes);
    entry(table,
          {.name = words::budget_money,
           .low = 0.0,
           .high = std::max(300.0, table.next.money),
           .step = 5.0},
          table.next.money);
    rule(ui);
    heading(ui, words::page_marks);
    for (std::size_t i = 0; i < weights.size(); ++i) {
        double& weight = table.next.weights.*weights.at(i);
        entry(table,
              {.name = words::mark_titles.at(i),
               .low = 0.0,
               .high = std::max(50.0, weight),
               .step = 5.0},
              weight);
    }
    reading(ui, words::marks_total, fixed_text(table.next.weights.sum(), 0));
    if (button(ui, {.name = words::usual_marks})) {
        table.next.weights = {};
    }
}

} // namespace scenes
