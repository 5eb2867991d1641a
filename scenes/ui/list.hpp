#pragma once

#include "scenes/ui/interface.hpp"

#include <cstddef>
#include <functional>
#include <span>
#include <string>
#include <string_view>

namespace scenes {

struct ListColumn {
    std::string_view title;
    float share = 1.0F;     ///< of the width; 0 gives the first a line of its own above the others
    bool is_figure = false; ///< set to the right
};

struct List {
    std::string_view name;
    std::span<const ListColumn> columns;
    std::size_t row_count = 0;
    std::function<std::string(std::size_t row, std::size_t column)> cell; ///< its text
    float height = 0.0F;              ///< pixels; 0 takes what is left of the panel
    bool has_head = true;             ///< shows the titles
    std::string_view empty_text = {}; ///< shown when there are no rows
};

/// What a person did with a list in this frame.
struct ListAction {
    bool has_selected = false;  ///< another row is selected now
    bool has_activated = false; ///< Enter or a double click on the selected row
};

/// Draws a table whose rows can be selected: by the pointer, or with the arrow, page, Home and End
/// keys. One stop of the Tab key, however long. `selected` may be `row_count` or more for none.
ListAction list(Interface& ui, const List& spec, std::size_t& selected);

} // namespace scenes
