#pragma once

#include "scenes/shop/order.hpp"

#include <ctime>
#include <string>
#include <vector>

// What lies on the shelf of work orders, and the records of attempts at them.

namespace scenes {

/// A work order to choose from; without an order, why its file cannot be used.
struct ShelfOrder {
    std::string path;
    std::string id;
    std::shared_ptr<const shop::Order> order;
    std::string trouble;
    bool is_begun = false; ///< there is a record of it that can be gone on with
};

/// A record of an attempt that was begun.
struct ShelfRecord {
    std::string path;
    std::string student; ///< may be empty
    std::size_t actions = 0;
    bool is_handed_in = false;
    std::string begun;   ///< date and time, from the file's name
    std::string trouble; ///< why it cannot be gone on with; empty when it can
};

/// Work orders from their files, easy ones first, and whether a folder of records, if one
/// is named, has an attempt at them that waits.
std::vector<ShelfOrder> orders_on_shelf(shop::Workshops& workshops,
                                        const std::vector<std::string>& files,
                                        const std::string& records = "");

/// The records of a folder that belong to an order, the latest first.
std::vector<ShelfRecord> records_of(const shop::Order& order, const std::string& folder);

/// A path in a folder for the record of an attempt begun now: order, date, time of day, and a
/// number where that name is taken.
std::string new_record_path(const std::string& folder, const std::string& order, std::time_t now);

} // namespace scenes
