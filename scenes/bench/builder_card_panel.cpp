#include "scenes/bench/builder_view.hpp"

#include "scenes/present/builder_words.hpp"
#include "scenes/present/job_sheet.hpp"
#include "scenes/present/order_words.hpp"
#include "scenes/present/readout.hpp"
#include "scenes/ui/controls.hpp"
#include "scenes/ui/form.hpp"
#include "scenes/ui/panel.hpp"
#include "scenes/view/number.hpp"

// What the student gets, as far as it is put down: the customer's card, and how much may be done.

namespace scenes {

void show_builder_card(BuilderTable& table)
{
    Interface& ui = table.ui();
    const DraftValues& draft = table.next;
    const ScrollArea area(ui, words::students_card);
    heading(ui, draft.title.empty() ? std::string_view(words::order_columns_title)
                                    : translated(draft.title));
    const std::string_view machine = translated(table.workshop().rig->title);
    paragraph(ui,
              std::string(machine.substr(0, machine.find(','))) + ", " +
                  filled(words::level, {std::to_string(draft.level)}),
              Tone::soft);
    heading(ui, words::complaint_head);
    quotation(ui,
              draft.complaint.empty() ? std::string_view("\u2026") : translated(draft.complaint));
    gap(ui, 6.0F);
    heading(ui, words::customer_head);
    paragraph(ui, draft.customer.empty() ? std::string_view("\u2026") : translated(draft.customer));
    rule(ui);
    reading(ui, words::weather_now,
            filled(words::weather_value, {readout_of("degC").text(draft.temperature),
                                          readout_of("kPa").text(draft.pressure)}));
    reading(ui, words::budget_minutes, filled(words::some_minutes, {fixed_text(draft.minutes, 0)}));
    reading(ui, words::budget_money, money_text(draft.money));
    reading(ui, words::page_checks, std::to_string(draft.checks.size()));
    reading(ui, words::page_repairs, std::to_string(draft.repairs.size()));
}

} // namespace scenes
