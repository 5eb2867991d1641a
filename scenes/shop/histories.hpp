#pragma once

#include <string>
#include <vector>

namespace shop {

/// What may have happened to a machine before it is brought in.
struct History {
    enum class Kind { shelf, has_run, overnight };
    Kind kind = Kind::shelf;
    std::string steps; ///< JSON text, as in an order
};

/// Ready-made histories of a rig, made of the beginnings its workshop has: fresh from the shelf,
/// run and left standing for half an hour, the same and left for a night.
///
/// throws:  AssetError when the beginnings' file is wrong
std::vector<History> ready_histories(const std::string& assets, const std::string& rig);

/// The rigs that have a workshop, and so can have work orders.
std::vector<std::string> rigs_with_workshop(const std::string& assets);

} // namespace shop
