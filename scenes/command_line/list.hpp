#pragma once

#include <string>

namespace scenes {

/// Asks what there is.
struct ListRequest {
    enum class What { rigs, faults, readings, commands };
    What what = What::rigs;
    std::string rig; ///< empty for the list of rigs
    bool as_json = false;
};

/// The list as aligned text, or as JSON for machines.
///
/// throws:  RequestError when there is no such rig; AssetError when an asset is wrong
std::string list_text(const ListRequest& request);

} // namespace scenes
