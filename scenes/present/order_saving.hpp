#pragma once

#include "scenes/present/order_draft.hpp"

// Where an instructor's order is kept, and under which name.

namespace scenes {

/// An id made of a title: small letters without accents, figures, and underscores between words.
std::string id_of_title(std::string_view title);

/// Under which id an order would be saved, and what already has it.
struct OrderName {
    std::string id;
    std::string path;
    bool is_shipped = false; ///< an order that comes with the program has it: it cannot be taken
    bool is_taken = false;   ///< another order of one's own has it: it would be replaced
    std::string free_id;     ///< the id itself, or one like it that nothing has
};

/// unit:    `own_path` the file that the draft came from; empty for a new one
OrderName name_of(const DraftValues& values, const std::string& folder,
                  const std::string& own_path);

/// What must be put down before an order can be tried out, in the chosen language.
std::vector<std::string> still_missing(const DraftValues& values);

/// Writes an order's file, sealed, and makes its folder where there is none. What stands there is
/// replaced.
///
/// throws:  RequestError when it cannot be written; AssetError when the order could not be read
///          again
void save_order(const shop::Order& order, const std::string& path, shop::Workshops& workshops);

} // namespace scenes
