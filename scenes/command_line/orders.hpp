#pragma once

#include <optional>
#include <ostream>
#include <string>
#include <vector>

namespace scenes {

/// Asks something about a work order.
struct OrderRequest {
    enum class What { check, play, seal, worksheet };
    What what = What::check;
    std::string file; ///< or the id of one that is shipped or a person's own
    std::optional<std::string> actions;
    std::optional<std::string> record;
    std::optional<std::string> student;
    std::optional<std::string> out;
    std::optional<std::string> key;
    std::string language = "en"; ///< of a worksheet
};

/// Tries an order out, plays a file of actions on it, seals its answer, or writes it as a worksheet
/// to print and the answer key to that.
///
/// check gives false when the order cannot be given to students, play when the actions end before
/// the work is handed in, all when interrupted.
/// throws:  RequestError, AssetError
bool do_order(const OrderRequest& request, std::ostream& out, std::ostream& progress);

/// Asks for records to be replayed and marked.
struct MarkRequest {
    std::vector<std::string> records;
    std::optional<std::string> csv;
    std::optional<std::string> html;
    std::optional<std::string> xapi;
};

/// Replays and marks records, and prints each one's marks. A record that is refused is told on
/// `progress`, and the others are marked; false then, or when interrupted.
bool mark_records(const MarkRequest& request, std::ostream& out, std::ostream& progress);

} // namespace scenes
