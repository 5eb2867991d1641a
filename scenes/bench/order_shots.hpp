#pragma once

#include "scenes/bench/bench_scene.hpp"

#include <functional>
#include <string>
#include <vector>

// What pictures of work orders show.

namespace scenes {

/// An order as it is shown in pictures: under way, and handed in with its marks.
struct OrderScenery {
    std::shared_ptr<const shop::Attempt> under_way;
    std::shared_ptr<const shop::Attempt> handed_in;
    std::shared_ptr<const MarkingWork::Result> result;
};

/// Plays the actions of a file on an order, or good work without one.
///
/// Good work and marks want the order's table, which takes minutes where it is not stored yet.
/// throws:  RequestError, AssetError
OrderScenery play_order(const std::shared_ptr<const shop::Order>& order,
                        const std::optional<std::string>& actions, bool wants_marks);

/// A screen of the work orders.
struct OrderShot {
    std::string name;
    bool is_compact_only = false; ///< in a large window it is part of the others
    std::function<void(BenchScene&)> stage;
};

/// All screens of an order, and the shelf.
std::vector<OrderShot> order_shots(OrderScenery scenery);
/// The shelf of the orders that come with the program.
OrderShot shelf_shot();

} // namespace scenes
