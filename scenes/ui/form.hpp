#pragma once

#include "scenes/ui/controls.hpp"

#include <span>
#include <string_view>

// Printed forms: ruled rows of words that are only read, and boxes to tick.

namespace scenes {

enum class FormType { small, body, bold, heading };

/// A cell of a form's row; what is too long for it goes on in further lines.
struct FormCell {
    std::string_view text;
    float share = 1.0F; ///< of the row's width
    FormType type = FormType::body;
    Tone tone = Tone::plain;
    float align = 0.0F; ///< 0 left, 1 right; a cell set to the right has one line
};

struct FormRow {
    std::span<const FormCell> cells;
    bool is_head = false;   ///< on a darker ground
    bool has_rule = true;   ///< a line below it
    bool is_double = false; ///< a second line above it, as over a sum
};

/// Writes a row of a form; rows stand on each other without a gap.
void form_row(Interface& ui, const FormRow& row);

/// Writes what somebody said, set in behind a bar.
void quotation(Interface& ui, std::string_view text);

struct TickBox {
    std::string_view name;      ///< beside the box; goes on in further lines
    std::string_view note = {}; ///< under it, smaller
    bool is_enabled = true;
};
/// Draws a box to tick and returns whether it was ticked or cleared.
bool tick_box(Interface& ui, const TickBox& spec, bool& is_ticked);

} // namespace scenes
